"""Finished PDFs read back by libraries unrelated to the writer, in points from the top left."""

import ctypes
from collections.abc import Iterator
from io import BytesIO

import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
from PIL import Image

Point = tuple[float, float]
Box = tuple[float, float, float, float]  # left, top, right, bottom


def paths(pdf: bytes, page: int = 0) -> list[list[Point]]:
    """Return the points of every path on a page, control points and all."""
    with pypdfium2.PdfDocument(pdf) as document:
        sheet = document[page]
        found = sheet.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH])
        return [list(_points(each, sheet.get_height())) for each in found]


def _points(path: pypdfium2.PdfObject, height: float) -> Iterator[Point]:
    matrix, form = path.get_matrix(), path.container
    while form is not None:  # whose place on the page is not in its paths' own
        matrix, form = matrix.multiply(form.get_matrix()), form.container
    x, y = ctypes.c_float(), ctypes.c_float()
    for k in range(pdfium.FPDFPath_CountSegments(path.raw)):
        segment = pdfium.FPDFPath_GetPathSegment(path.raw, k)
        pdfium.FPDFPathSegment_GetPoint(segment, x, y)
        right, up = matrix.on_point(x.value, y.value)
        yield right, height - up


def box(points: list[Point]) -> Box:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def boxes(pdf: bytes, page: int = 0) -> list[Box]:
    """Return the box of every path on a page."""
    return [box(points) for points in paths(pdf, page)]


def page_image(pdf: bytes, dpi: int, page: int = 0) -> Image.Image:
    with pypdfium2.PdfDocument(pdf) as document:
        picture = document[page].render(scale=dpi / 72).to_pil()
        assert isinstance(picture, Image.Image)
        return picture.convert("L")


def text(pdf: bytes, page: int = 0) -> str:
    with pypdfium2.PdfDocument(pdf) as document:
        return str(document[page].get_textpage().get_text_range())


def operators(pdf: bytes) -> list[bytes]:
    """Return the words of all drawing on all pages, forms included."""
    reader = pypdf.PdfReader(BytesIO(pdf))
    streams = [page.get_contents() for page in reader.pages]
    for page in reader.pages:
        forms = page["/Resources"].get("/XObject", {})  # type: ignore[attr-defined]
        streams += [form.get_object() for form in forms.values()]
    return b" ".join(stream.get_data() for stream in streams if stream is not None).split()


def is_grey_only(pdf: bytes) -> bool:
    """Whether all ink is DeviceGray: no other colour operator stands in the drawing."""
    words = set(operators(pdf))
    others = {b"rg", b"RG", b"k", b"K", b"cs", b"CS", b"sc", b"SC", b"scn", b"SCN", b"sh"}
    return bool(words & {b"g", b"G"}) and words.isdisjoint(others)


def page_colours(pdf: bytes, dpi: int, page: int = 0) -> Image.Image:
    with pypdfium2.PdfDocument(pdf) as document:
        picture = document[page].render(scale=dpi / 72).to_pil()
        assert isinstance(picture, Image.Image)
        return picture.convert("RGB")
