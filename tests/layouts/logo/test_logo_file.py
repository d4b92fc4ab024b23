"""A logo is what its file shows, as a raster on white paper, or it is refused."""

import sys
from base64 import b64encode
from collections.abc import Callable, Sequence
from io import BytesIO
from zlib import decompress

import pypdf
import pytest
from PIL import Image, ImageChops
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, RectangleObject
from reportlab.pdfgen.canvas import Canvas

from tagend.fonts import OURS
from tagend.layouts.logo.logo_file import LARGEST, raster_of, read_logo
from tagend.layouts.logo.size import BOX
from tagend.layouts.paper.face import Face, Path, Picture, rectangle, shifted
from tagend.layouts.paper.raster import Raster
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import ink
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable
from tests.layouts.drawn import page_colours, page_image
from tests.pictures import file_of
from tests.tree import SAMPLES

SVG_HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30">'
SVG = f'{SVG_HEAD}<path d="M0 0h40v30H0z"/></svg>'.encode()
SIZE = (120, 60)


def svg(body: str) -> bytes:
    return f"{SVG_HEAD}{body}</svg>".encode()


def of(data: bytes) -> Raster:
    """Return the raster of a file, read here and not in a process of its own."""
    return Raster(*raster_of(data))


def filled() -> bytes:
    face = Face("face", 40, 30, (Path(rectangle(0, 0, 40, 30), fill=0),))
    return write_pdf([Sheet(40, 30, (Placed(face, 0, 0),))], title="", creator="")


KINDS = {
    "png": file_of(Image.new("L", (40, 30))),
    "jpeg": file_of(Image.new("RGB", (40, 30)), "JPEG"),
    "svg": SVG,
    "svg with a byte order mark": b"\xef\xbb\xbf" + SVG,
    "svg after its declaration": b"<?xml version='1.0' encoding='UTF-8'?>\n" + SVG,
    "svg in mm": SVG.replace(b"<svg ", b'<svg width="200mm" height="150mm" '),
    "pdf": filled(),
}


def page_of(logo: Raster, times: int = 1) -> bytes:
    pictures = tuple(Picture(20 + 5 * n, 15, 80, 60, logo) for n in range(times))
    sheet = Sheet(200, 120, (Placed(Face("face", 200, 120, pictures), 0, 0),))
    return write_pdf([sheet], title="", creator="")


def shown(data: bytes, size: tuple[float, float] = (40, 30), dpi: int = 72) -> Image.Image:
    """Return what a printer would set of a logo that fills a page."""
    face = Face("face", *size, (Picture(0, 0, *size, of(data)),))
    sheet = Sheet(*size, (Placed(face, 0, 0),))
    return page_colours(write_pdf([sheet], title="", creator=""), dpi)


@pytest.mark.parametrize("data", KINDS.values(), ids=KINDS.keys())
def test_each_kind_fills_its_box_and_no_more(data: bytes) -> None:
    logo = read_logo(data)
    assert logo.within(100, 300) == pytest.approx((100, 75), rel=0.002)
    assert logo.within(400, 75) == pytest.approx((100, 75), rel=0.002)
    dark = page_image(page_of(logo), 288).point(lambda value: 255 * (value < 128)).getbbox()
    assert dark is not None
    assert [edge / 4 for edge in dark] == pytest.approx((20, 15, 100, 75), abs=0.26)  # a dot


@pytest.mark.parametrize("data", KINDS.values(), ids=KINDS.keys())
def test_a_logo_that_is_shown_often_is_stored_once(data: bytes) -> None:
    once, often = (len(pypdf.PdfReader(BytesIO(page_of(of(data), n))).xref[0]) for n in (1, 50))
    assert once == often


@pytest.mark.parametrize("times", [1, 3])  # often enough, a face is a form that holds the logo's
def test_it_shows_on_every_face(times: int) -> None:
    face = Face("face", 60, 40, (Picture(10, 10, 40, 20, of(SVG)),))
    placed = tuple(Placed(face, 60 * n, 0) for n in range(times))
    page = page_image(write_pdf([Sheet(180, 40, placed)], title="", creator=""), 72)
    assert [page.getpixel((60 * n + 30, 20)) for n in range(times)] == [0] * times


def test_a_picture_is_moved_with_its_face_and_has_the_ink_of_its_box() -> None:
    logo = of(SVG)
    (moved,) = shifted([Picture(1, 2, 40, 30, logo)], 10, 20)
    assert moved == Picture(11, 22, 40, 30, logo)
    assert ink([moved]) == (11, 22, 51, 52)


def test_the_sample_is_black_alone_and_fine() -> None:
    logo = of((SAMPLES / "wrack-line.png").read_bytes())
    assert logo.width == BOX[0] or logo.height == BOX[1]
    assert logo.bits == 8
    shades = Image.frombytes("L", (logo.width, logo.height), decompress(logo.packed)).histogram()
    assert shades[0] > 0.9 * sum(shades[:200])


def quarters(mode: str, colours: Sequence[object]) -> Image.Image:
    """Return a picture of four colours, row by row."""
    picture = Image.new(mode, (40, 30))
    for place, colour in enumerate(colours):
        x, y = 20 * (place % 2), 15 * (place // 2)
        picture.paste(colour, (x, y, x + 20, y + 15))  # type: ignore[arg-type]
    return picture


def at_quarters(picture: Image.Image) -> Sequence[object]:
    return [picture.getpixel(place) for place in ((10, 7), (30, 7), (10, 22), (30, 22))]


RGB = [(200, 20, 30), (0, 0, 0), (255, 255, 255), (10, 90, 160)]
PAINTED = '<path fill="#c8141e" d="M0 0h20v15H0z"/><path d="M20 0h20v15H20z"/>'


@pytest.mark.parametrize(
    "data",
    [
        file_of(quarters("RGB", RGB)),
        file_of(quarters("RGB", RGB), "JPEG"),
        svg(PAINTED + '<path style="fill:rgb(10,90,160)" d="M20 15h20v15H20z"/>'),
    ],
)
def test_colours_stand_where_they_do_in_the_file(data: bytes) -> None:
    for one, other in zip(at_quarters(shown(data)), RGB, strict=True):
        assert one == pytest.approx(other, abs=8)


def test_what_is_clear_is_white_and_what_is_half_clear_half_as_dark() -> None:
    clear = [(0, 0, 0, 255), (0, 0, 0, 0), (0, 0, 0, 128), (255, 0, 0, 128)]
    seen = at_quarters(shown(file_of(quarters("RGBA", clear))))
    assert seen == [(0,) * 3, (255,) * 3, (127,) * 3, (255, 127, 127)]


@pytest.mark.parametrize(
    ("mode", "colours", "bits"),
    [
        ("1", [0, 1, 1, 0], 1),
        ("L", [0, 255, 128, 64], 8),
        ("LA", [(0, 255), (0, 0), (128, 255), (64, 255)], 8),
        ("I;16", [0, 65535, 0x8080, 0x4040], 8),
        ("RGB", [(0,) * 3, (255,) * 3, (128,) * 3, (64,) * 3], 8),
    ],
)
def test_a_picture_without_colour_takes_black_alone(
    mode: str, colours: Sequence[object], bits: int
) -> None:
    data = file_of(quarters(mode, colours))
    expected = [0, 255, 255, 0] if mode == "1" else [0, 255, 128, 64]
    assert at_quarters(shown(data)) == [(grey,) * 3 for grey in expected]
    assert of(data).bits == bits


def test_the_black_of_a_press_is_black() -> None:
    canvas = Canvas("", (40, 30), invariant=1)
    for x, black in ((0, 1), (20, 0.5)):
        canvas.setFillColorCMYK(0, 0, 0, black)
        canvas.rect(x, 0, 20, 30, stroke=0, fill=1)
    data = bytes(canvas.getpdfdata())
    assert of(data).bits == 8
    full, half, *_ = at_quarters(shown(data).convert("L"))
    assert full == pytest.approx(0, abs=3)
    assert half == pytest.approx(128, abs=13)


def test_a_camera_that_was_turned_is_heeded() -> None:
    out = BytesIO()
    exif = Image.Exif()
    exif[0x0112] = 6  # orientation: a quarter turn
    Image.new("L", (200, 50)).save(out, "JPEG", exif=exif)
    logo = of(out.getvalue())
    assert (logo.width, logo.height) == (50, 200)


@pytest.mark.parametrize("kind", ["png", "jpeg", "svg", "pdf"])
def test_the_same_file_gives_the_same_bytes(kind: str) -> None:
    one, other = of(KINDS[kind]), of(bytes(KINDS[kind]))
    assert one == other
    assert page_of(one) == page_of(other)


def ours() -> bytes:
    """Return a page with text in an embedded font, a path and, three times, a form."""
    frame, box = Path(rectangle(2, 2, 116, 56), line=1), Path(rectangle(90, 10, 20, 10), fill=0.5)
    face = Face("face", *SIZE, (*set_line("Wrack", OURS.bold, 20).at(8, 30), frame, box))
    return write_pdf([Sheet(*SIZE, (Placed(face, 0, 0),) * 3)], title="", creator="")


def changed(data: bytes, rotate: int = 0, crop: tuple[float, ...] | None = None) -> bytes:
    writer = pypdf.PdfWriter(clone_from=BytesIO(data))
    page = writer.pages[0]
    page.rotate(rotate)
    if crop:
        page.cropbox = RectangleObject(crop)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


@pytest.mark.parametrize("rotate", [0, 90])
@pytest.mark.parametrize("crop", [None, (10, 5, 100, 50)])
def test_the_first_page_is_shown_as_a_viewer_shows_it(
    crop: tuple[float, ...] | None, rotate: int
) -> None:
    data = changed(ours(), rotate, crop)
    logo = of(data)
    seen = Image.frombytes("L", (logo.width, logo.height), decompress(logo.packed))
    page = page_image(data, 72)
    off = ImageChops.difference(page, seen.resize(page.size, Image.Resampling.BOX)).histogram()
    assert sum(off[128:]) < 0.02 * sum(off)  # of small letters, an edge here and there


def hidden() -> bytes:
    """Return a page whose only content stands in a hidden layer."""
    writer = pypdf.PdfWriter(clone_from=BytesIO(filled()))
    layer = writer._add_object(DictionaryObject({NameObject("/Type"): NameObject("/OCG")}))
    state = DictionaryObject({NameObject("/OFF"): ArrayObject([layer])})
    writer.root_object[NameObject("/OCProperties")] = DictionaryObject(
        {NameObject("/OCGs"): ArrayObject([layer]), NameObject("/D"): state}
    )
    page = writer.pages[0]
    properties = DictionaryObject({NameObject("/Layer"): layer})
    page["/Resources"][NameObject("/Properties")] = properties  # type: ignore[index]
    contents = page.get_contents()
    assert contents is not None
    contents.set_data(b"/OC /Layer BDC\n" + contents.get_data() + b"\nEMC")
    page.replace_contents(contents)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def encrypted() -> bytes:
    out = BytesIO()
    writer = pypdf.PdfWriter(clone_from=BytesIO(ours()))
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(out)
    return out.getvalue()


def unembedded() -> bytes:
    canvas = Canvas("", SIZE, invariant=1)
    canvas.drawString(10, 10, "Wrack")
    return bytes(canvas.getpdfdata())


def blank() -> bytes:
    canvas = Canvas("", SIZE, invariant=1)
    canvas.showPage()
    return bytes(canvas.getpdfdata())


def large(side: int) -> bytes:
    return file_of(Image.new("1", (side, side)))


REFUSED: dict[str, tuple[str, Callable[[], bytes]]] = {
    "another kind": ("no picture of a kind known here", lambda: b"GIF89a"),
    "nothing": ("no picture of a kind known here", lambda: b""),
    "HTML": ("this is no SVG file", lambda: b"<html><body/></html>"),
    "a white picture": ("it is all white", lambda: file_of(Image.new("L", (9, 9), 253))),
    "a clear picture": ("it is all white", lambda: file_of(Image.new("RGBA", (9, 9), (0,) * 4))),
    "an SVG with nothing": ("it is all white", lambda: svg("")),
    "an empty page": ("it is all white", blank),
    "a hidden layer": ("it is all white", hidden),
    "many pixels": ("it has 4500 × 4500 pixels; make it smaller", lambda: large(4500)),
    "far too many pixels": ("it has more than 20,000,000 pixels", lambda: large(14_000)),
    "text": ("convert its text to paths", lambda: svg("<g><text>Wr<tspan>ack</tspan></text></g>")),
    "another file": ("'mark.png'; put that", lambda: svg('<image href="mark.png"/>')),
    "an SVG inside": ("put that", lambda: svg('<image href="data:image/svg+xml;base64,AA"/>')),
    "half an SVG": ("damaged or cut off at line 1", lambda: SVG[:60]),
    "an SVG of no size": ("cannot be drawn", lambda: SVG.replace(b"svg ", b"svg width='0' ")),
    "a locked PDF": ("save it without a password", encrypted),
    "a font not in it": ("convert its text to paths", unembedded),
    "a page of no size": ("has no size", lambda: changed(ours(), crop=(500, 500, 600, 600))),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_serve_is_refused(case: str) -> None:
    told, data = REFUSED[case]
    with pytest.raises(Unreadable) as refusal:
        raster_of(data())
    assert told in str(refusal.value)
    assert "\n" not in str(refusal.value)


def test_text_that_is_not_drawn_does_no_harm() -> None:
    data = svg(f'<title>Wrack</title><text/><path d="M0 0h40v30H0z"/><image href="{PNG}"/>')
    assert of(data).bits == 1


PNG = f"data:image/png;base64,{b64encode(file_of(Image.new('L', (2, 2)))).decode()}"


@pytest.mark.parametrize(("name", "data"), [("resvg_py", SVG), ("pypdfium2", filled())])
def test_without_the_extra_it_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch, name: str, data: bytes
) -> None:
    monkeypatch.setitem(sys.modules, name, None)
    with pytest.raises(Unreadable, match=r"write: pip install 'tagend\[logo\]'"):
        raster_of(data)


def bomb(depth: int) -> bytes:
    """Return an SVG in which each of so many groups uses the one before ten times."""
    groups = "".join(
        f'<g id="a{k + 1}">' + 10 * f'<use href="#a{k}" x="1"/>' + "</g>" for k in range(depth)
    )
    return svg(f'<defs><path id="a0" d="M0 0h5v5z"/>{groups}</defs><use href="#a{depth}"/>')


def turbulent() -> bytes:
    """Return an SVG that asks for more noise than is drawn in hours."""
    noise = '<feTurbulence baseFrequency="9" numOctaves="999999"/>' * 9
    return svg(f'<filter id="f">{noise}</filter><path filter="url(#f)" d="M0 0h40v30H0z"/>')


def wide_page() -> bytes:
    """Return a page of 5 by 5 m, the most that a PDF may say, with a rectangle."""
    canvas = Canvas("", (14_400, 14_400), invariant=1)
    canvas.rect(0, 0, 14_400, 7_200, fill=1)
    return bytes(canvas.getpdfdata())


HARMFUL = {
    "an SVG of a billion shapes": bomb(9),
    "a PNG of 400 million pixels": file_of(Image.new("1", (20_000, 20_000))),
    "a PNG cut short": KINDS["png"][:-30],
    "a JPEG cut short": KINDS["jpeg"][:-30],
    "a PDF cut short": KINDS["pdf"][:300],
    "too large a file": b"%PDF-" + b" " * LARGEST,
}


@pytest.mark.parametrize("data", HARMFUL.values(), ids=HARMFUL.keys())
def test_a_file_made_to_harm_ends_in_one_line(data: bytes) -> None:
    with pytest.raises(Unreadable) as refusal:
        read_logo(data)
    assert "; " in str(refusal.value)
    assert "\n" not in str(refusal.value)


def test_an_svg_that_takes_for_ever_is_ended() -> None:
    with pytest.raises(Unreadable, match="takes longer than 1 s"):
        apart(raster_of, turbulent(), 1)


def test_a_page_of_five_metres_is_no_larger_than_any_logo() -> None:
    logo = read_logo(wide_page())
    assert logo.width <= BOX[0]
    assert logo.height <= BOX[1]
