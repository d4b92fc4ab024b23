"""The first page of a PDF is shown as it stands there, or refused."""

from collections.abc import Callable
from io import BytesIO

import pypdf
import pytest
from PIL import Image, ImageChops
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, RectangleObject
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from tagend.fonts import OURS
from tagend.layouts.logo.logo import BadLogo
from tagend.layouts.logo.logo_page import read_page
from tagend.layouts.paper.face import Face, Path, Picture, rectangle
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import page_colours, text

SIZE = (120, 60)


def ours() -> bytes:
    """Return a page with text in an embedded font, a path and, three times, a form."""
    frame, box = Path(rectangle(2, 2, 116, 56), line=1), Path(rectangle(90, 10, 20, 10), fill=0.5)
    face = Face("face", *SIZE, (*set_line("Wrack", OURS.bold, 20).at(8, 30), frame, box))
    return write_pdf([Sheet(*SIZE, (Placed(face, 0, 0),) * 3)], title="", creator="")


def coloured() -> bytes:
    """Return a page with a picture that has a mask, and colours."""
    out = BytesIO()
    canvas = Canvas(out, SIZE, invariant=1)
    canvas.setFillColorCMYK(0.8, 0.1, 0, 0.2)
    canvas.rect(70, 10, 40, 40, stroke=0, fill=1)
    layer = Image.new("RGBA", (40, 40), (200, 0, 0, 255))
    layer.paste((0, 0, 0, 0), (0, 0, 20, 20))
    canvas.drawInlineImage(layer.convert("RGB"), 5, 5, 20, 20)
    file = BytesIO()
    layer.save(file, "PNG")
    canvas.drawImage(ImageReader(file), 30, 10, 30, 30, mask="auto")
    canvas.save()
    return out.getvalue()


def changed(data: bytes, rotate: int = 0, crop: tuple[float, ...] | None = None) -> bytes:
    writer = pypdf.PdfWriter(clone_from=BytesIO(data))
    page = writer.pages[0]
    page.rotate(rotate)
    if crop:
        page.cropbox = RectangleObject(crop)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def shown(data: bytes) -> bytes:
    """Return a PDF whose page, as large as the logo's, it fills."""
    logo = read_page(data)
    face = Face("face", logo.width, logo.height, (Picture(0, 0, logo.width, logo.height, logo),))
    sheet = Sheet(logo.width, logo.height, (Placed(face, 0, 0),))
    return write_pdf([sheet], title="", creator="")


@pytest.mark.parametrize("rotate", [0, 90, 180, 270])
@pytest.mark.parametrize("crop", [None, (10, 5, 100, 50), (-20, -20, 60, 200)])
@pytest.mark.parametrize("made", [ours, coloured])
def test_the_page_is_shown_as_a_viewer_shows_it(
    made: Callable[[], bytes], crop: tuple[float, ...] | None, rotate: int
) -> None:
    data = changed(made(), rotate, crop)
    page, logo = page_colours(data, 288), page_colours(shown(data), 288)
    assert page.size == logo.size
    assert min(page.convert("L").tobytes()) < 128
    apart = ImageChops.difference(page, logo).convert("L")
    assert sum(n for at, n in enumerate(apart.histogram()) if at > 32) < 0.001 * (
        page.width * page.height
    )


def test_text_stays_text() -> None:
    assert "Wrack" in text(shown(ours()))


def test_nothing_shows_outside_its_box() -> None:
    logo = read_page(changed(ours(), crop=(30, 0, 90, 60)))
    face = Face("face", 200, 100, (Picture(70, 20, 60, 60, logo),))
    sheet = Sheet(200, 100, (Placed(face, 0, 0),))
    page = page_colours(write_pdf([sheet], title="", creator=""), 72).convert("L")
    dark = page.point(lambda value: 255 * (value < 250))
    box = dark.getbbox()
    assert box is not None
    assert (box[0], box[2]) == (70, 130)
    assert box[1] >= 20
    assert box[3] <= 80


def test_the_same_file_gives_the_same_bytes() -> None:
    data = changed(coloured(), 90)
    assert read_page(data) == read_page(bytes(data))
    assert shown(data) == shown(data)


def bare() -> bytes:
    out = BytesIO()
    writer = pypdf.PdfWriter()
    writer.add_blank_page(100, 100)
    writer.write(out)
    return out.getvalue()


def pageless() -> bytes:
    out = BytesIO()
    pypdf.PdfWriter().write(out)
    return out.getvalue()


def encrypted() -> bytes:
    out = BytesIO()
    writer = pypdf.PdfWriter(clone_from=BytesIO(ours()))
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(out)
    return out.getvalue()


def unembedded() -> bytes:
    out = BytesIO()
    canvas = Canvas(out, SIZE, invariant=1)
    canvas.drawString(10, 10, "Wrack")
    canvas.save()
    return out.getvalue()


def layered() -> bytes:
    writer = pypdf.PdfWriter(clone_from=BytesIO(ours()))
    layer = writer._add_object(DictionaryObject({NameObject("/Type"): NameObject("/OCG")}))
    state = DictionaryObject({NameObject("/OFF"): ArrayObject([layer])})
    writer.root_object[NameObject("/OCProperties")] = DictionaryObject(
        {NameObject("/OCGs"): ArrayObject([layer]), NameObject("/D"): state}
    )
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


REFUSED: dict[str, Callable[[], bytes]] = {
    "this PDF is encrypted; save it without a password": encrypted,
    "this PDF has no page; give one with the logo on its first page": pageless,
    "the first page of this PDF is empty; put the logo on its first page": bare,
    "this PDF has hidden layers; save it without them": layered,
    "a font of this PDF is not inside it; convert its text to paths": unembedded,
    "this PDF is damaged or cut off; save it again": lambda: ours()[:300],
    "the first page of this PDF has no size; save it again": lambda: changed(
        ours(), crop=(500, 500, 600, 600)
    ),
}


@pytest.mark.parametrize("told", REFUSED)
@pytest.mark.filterwarnings("ignore")
def test_a_pdf_that_cannot_serve_is_refused(told: str) -> None:
    with pytest.raises(BadLogo) as refusal:
        read_page(REFUSED[told]())
    assert str(refusal.value) == told
