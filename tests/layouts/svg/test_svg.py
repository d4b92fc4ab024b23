"""An SVG shows what the PDF of the same face shows, and needs no font for it."""

import xml.etree.ElementTree as ElementTree
import zlib
from io import BytesIO

import pypdfium2
import pytest
from PIL import Image, ImageChops, ImageStat

from tagend.fonts import OURS
from tagend.layouts.codes.code import DESIGN_MODULE, symbol
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Code, Face, Item, Path, Picture, rectangle, segment
from tagend.layouts.paper.raster import Bits, Raster
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.svg.svg import face_svg

ZOOM = 4
WIDTH, HEIGHT = 360, 216  # points: 5 by 3 inches
SVG = "{http://www.w3.org/2000/svg}"


def face_of(*items: Item) -> Face:
    return Face("face", WIDTH, HEIGHT, items)


def from_svg(face: Face) -> Image.Image:
    resvg = pytest.importorskip("resvg_py")
    source = face_svg(face, title="Face").decode()
    png = resvg.svg_to_bytes(svg_string=source, width=WIDTH * ZOOM, height=HEIGHT * ZOOM, dpi=96)
    return Image.open(BytesIO(png)).convert("L")


def from_pdf(face: Face) -> Image.Image:
    sheet = Sheet(face.width, face.height, (Placed(face, 0, 0),))
    pdf = write_pdf([sheet], title="Face", creator="layouts")
    with pypdfium2.PdfDocument(pdf) as document:
        picture = document[0].render(scale=ZOOM, grayscale=True).to_pil()
        assert isinstance(picture, Image.Image)
        return picture


def raster(bits: Bits, row: bytes) -> Picture:
    return Picture(20, 20, 60, 40, Raster(8, 8, bits, zlib.compress(row * 8)))


FACES = {
    "text": face_of(
        *set_line("Sandbar eight, 11 ft · ½ in 2/3 é ñ (Ж)", OURS.medium, 13).at(10, 30),
        *set_line("CUT 34 1/4 & <fluoro>", OURS.bold, 20).at(290, 80, "right"),
    ),
    "lines": face_of(
        Path(segment(10, 10, 290, 150), 2.0),
        Path(segment(10, 30, 290, 30), 1.5, dash=(6, 3)),
        Path(segment(10, 60, 290, 60), 3.0, grey=0.6, dash=(4.0, 8.0), round_ends=True),
        Path((*segment(10, 180, 60, 120), ("curve", 80, 100, 120, 190, 200, 120)), 1.0),
    ),
    "fills": face_of(
        Path(rectangle(20, 20, 100, 50), fill=0.0),
        Path(circle(200, 100, 40), 2.0, fill=0.75),
        Path((*circle(80, 140, 30), *circle(90, 140, 30)), fill=0.4),
    ),
    "code": face_of(Code(30, 30, DESIGN_MODULE, symbol("T1 SANDBAR 30/.023/HN 25*B"))),
    "black or white picture": face_of(raster(1, b"\xf0")),
    "grey picture": face_of(raster(8, bytes(range(0, 256, 32)))),
    "coloured picture": face_of(raster(24, b"\xff\x00\x00\x00\x80\x00" * 4)),
}


@pytest.mark.parametrize("name", FACES)
def test_an_svg_looks_as_the_pdf_does(name: str) -> None:
    ours, other = from_svg(FACES[name]), from_pdf(FACES[name])
    assert ours.size == other.size
    difference = ImageStat.Stat(ImageChops.difference(ours, other)).mean[0]
    ink = 255 - ImageStat.Stat(other).mean[0]
    assert ink > 0
    assert difference < 0.1 * ink, (difference, ink)


def test_what_is_moved_by_a_point_would_be_seen() -> None:
    items = set_line("Sandbar eight", OURS.medium, 13)
    ours, other = from_svg(face_of(*items.at(10, 30))), from_pdf(face_of(*items.at(11, 30)))
    difference = ImageStat.Stat(ImageChops.difference(ours, other)).mean[0]
    assert difference > 0.3 * (255 - ImageStat.Stat(other).mean[0])


def test_an_svg_is_true_to_size() -> None:
    root = ElementTree.fromstring(face_svg(face_of(), title="Face"))
    assert root.attrib["viewBox"] == "0 0 360 216"
    assert float(root.attrib["width"].removesuffix("mm")) == pytest.approx(127, abs=0.001)
    assert float(root.attrib["height"].removesuffix("mm")) == pytest.approx(76.2, abs=0.001)


def test_an_svg_holds_outlines_and_no_text() -> None:
    root = ElementTree.fromstring(face_svg(FACES["text"], title="A & B"))
    assert root.findtext(f"{SVG}title") == "A & B"
    assert not list(root.iter(f"{SVG}text"))
    glyphs = [each.attrib["id"] for each in root.iter(f"{SVG}path")]
    used = {each.attrib["{http://www.w3.org/1999/xlink}href"] for each in root.iter(f"{SVG}use")}
    assert len(glyphs) == len(set(glyphs))
    assert used == {f"#{glyph}" for glyph in glyphs}


def test_the_same_face_gives_the_same_bytes() -> None:
    for face in FACES.values():
        assert face_svg(face, title="Face") == face_svg(face, title="Face")
