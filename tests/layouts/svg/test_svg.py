"""An SVG shows what the PDF of the same sheet shows, and needs no font for it."""

import xml.etree.ElementTree as ElementTree
import zlib

import pytest
from msgspec.structs import replace

from tagend.fonts import OURS
from tagend.layouts.codes.code import DESIGN_MODULE, symbol
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import (
    MM,
    Code,
    Face,
    Item,
    Path,
    Picture,
    TextRun,
    Turn,
    rectangle,
    segment,
    shifted,
)
from tagend.layouts.paper.raster import Bits, Raster
from tagend.layouts.paper.text import set_line
from tagend.layouts.sheets.sheet import Adjustment, Placed, Sheet
from tagend.layouts.svg.svg import sheet_svg, write_svg
from tests.layouts.svg.pixels import ALIKE, apart, sheet_of

WIDTH, HEIGHT = 360, 216  # points: 5 by 3 inches
SVG = "{http://www.w3.org/2000/svg}"
HREF = "{http://www.w3.org/1999/xlink}href"


def face_of(*items: Item) -> Face:
    return Face("face", WIDTH, HEIGHT, items)


def raster(bits: Bits, left: bytes, right: bytes) -> Picture:
    """Return a picture of two halves; each is so many bytes of 8 pixels."""
    side = 128  # pixels, finer than any renderer would smooth
    row = left * (side // 16) + right * (side // 16)
    return Picture(20, 20, 60, 40, Raster(side, side, bits, zlib.compress(row * side)))


TEXT = set_line("CUT 34 1/4 & <fluoro>", OURS.bold, 20).at(290, 80, "right")
CODE = Code(30, 30, DESIGN_MODULE, symbol("T1 SANDBAR 30/.023/HN 25*B"))
FACES = {
    "text": face_of(
        *set_line("Sandbar eight, 11 ft · ½ in 2/3 é ñ (Ж)", OURS.medium, 13).at(10, 30), *TEXT
    ),
    "lines": face_of(
        Path(segment(10, 10, 290, 150), 2.0),
        Path(segment(10, 30, 290, 30), 1.5, dash=(6, 3)),
        Path(segment(10, 60, 290, 60), 3.0, grey=0.6, dash=(4.0, 8.0), round_ends=True),
        Path((*segment(10, 180, 60, 120), ("curve", 80, 100, 120, 190, 200, 120)), 1.0),
    ),
    "pointed corners": face_of(
        Path((*segment(10, 100, 60, 91), ("line", 10, 82)), 6.0),  # 5.6 pens long
        Path((*segment(150, 100, 250, 96), ("line", 150, 92)), 4.0),  # 25 pens, so it is cut off
    ),
    "fills": face_of(
        Path(rectangle(20, 20, 100, 50), fill=0.0),
        Path(circle(200, 100, 40), 2.0, fill=0.75),
        Path((*circle(80, 140, 30), *circle(90, 140, 30)), fill=0.4),
    ),
    "code": face_of(CODE),
    "black or white picture": face_of(raster(1, b"\x00", b"\xff")),
    "grey picture": face_of(raster(8, b"\x00" * 8, b"\x80" * 8)),
    "coloured picture": face_of(raster(24, b"\xff\x00\x00" * 8, b"\x00\x80\x00" * 8)),
}
LABEL = Face(
    name="label",
    width=120,
    height=60,
    items=(
        CODE._replace(x=5, y=5),
        *set_line("Sandbar", OURS.medium, 9).at(60, 20),
        Path(segment(60, 30, 110, 40), 0.5, dash=(3, 2)),
        raster(8, b"\x00" * 8, b"\x80" * 8)._replace(x=60, y=40, width=20, height=10),
    ),
)
TURNS: tuple[Turn, ...] = (0, 90, 180, 270)
MARKS: tuple[Path | TextRun, ...] = (
    Path(segment(0, 140, 500, 140), 0.25),
    *set_line("50 mm", OURS.medium, 8).at(20, 138),
)
PLACED = tuple(Placed(LABEL, 10 + 130 * place, 10, turn) for place, turn in enumerate(TURNS))
SHEET = Sheet(550, 150, PLACED, MARKS)


@pytest.mark.parametrize("name", FACES)
def test_an_svg_looks_as_the_pdf_does(name: str) -> None:
    sheet = sheet_of(FACES[name])
    assert apart(sheet, sheet) <= ALIKE


@pytest.mark.parametrize("name", FACES)
def test_what_is_moved_by_a_third_of_a_millimetre_is_seen(name: str) -> None:
    face = FACES[name]
    for dx, dy in ((0.3 * MM, 0), (0, 0.3 * MM)):
        moved = replace(face, items=shifted(face.items, dx, dy))
        assert apart(sheet_of(moved), sheet_of(face)) > ALIKE


@pytest.mark.parametrize(
    ("name", "place"), [(name, k) for name, face in FACES.items() for k in range(len(face.items))]
)
def test_an_item_that_is_missing_is_seen(name: str, place: int) -> None:
    face = FACES[name]
    without = replace(face, items=face.items[:place] + face.items[place + 1 :])
    assert apart(sheet_of(without), sheet_of(face)) > ALIKE


@pytest.mark.parametrize(
    "adjustment", [Adjustment(), Adjustment(x=-2.5, y=1.5, scale_x=1.01, scale_y=0.985)]
)
def test_a_sheet_with_turned_faces_looks_as_its_pdf_does(adjustment: Adjustment) -> None:
    sheet = replace(SHEET, adjustment=adjustment)
    assert apart(sheet, sheet) <= ALIKE


@pytest.mark.parametrize(
    "broken",
    [
        replace(SHEET, marks=MARKS[1:]),
        replace(SHEET, marks=MARKS[:1]),
        replace(SHEET, placed=PLACED[:-1]),
        replace(SHEET, placed=(*PLACED[:-1], replace(PLACED[-1], x=PLACED[-1].x + 0.3 * MM))),
        replace(SHEET, placed=(*PLACED[:-1], replace(PLACED[-1], turn=90))),
        replace(SHEET, adjustment=Adjustment(y=0.3 * MM)),
        replace(SHEET, adjustment=Adjustment(scale_x=1.005)),
    ],
)
def test_a_sheet_that_lacks_or_misplaces_a_thing_is_seen(broken: Sheet) -> None:
    assert apart(broken, SHEET) > ALIKE


def test_an_svg_is_true_to_size() -> None:
    root = ElementTree.fromstring(write_svg(face_of(), title="Face"))
    assert root.attrib["viewBox"] == "0 0 360 216"
    assert float(root.attrib["width"].removesuffix("mm")) == pytest.approx(127, abs=0.001)
    assert float(root.attrib["height"].removesuffix("mm")) == pytest.approx(76.2, abs=0.001)


def test_an_svg_holds_outlines_and_no_text() -> None:
    root = ElementTree.fromstring(write_svg(FACES["text"], title="Face"))
    assert not list(root.iter(f"{SVG}text"))
    assert not any("font" in key for each in root.iter() for key in each.attrib)
    runs = [item for item in FACES["text"].items if isinstance(item, TextRun)]
    assert len(list(root.iter(f"{SVG}path"))) == len(runs)


def test_every_letter_is_drawn_at_its_place() -> None:
    signs = "".join(map(chr, (*range(33, 127), *range(161, 256)))).replace("\xad", "")
    lines = [signs[place : place + 24] for place in range(0, len(signs), 24)]
    chains = (OURS.medium, OURS.bold, OURS.medium[1:])
    runs = (
        item
        for row, line in enumerate(lines)
        for column, fonts in enumerate(chains)
        for item in set_line(line, fonts, 9).at(5 + 170 * column, 15 + 14 * row)
    )
    sheet = sheet_of(Face("letters", 520, 130, tuple(runs)))
    assert apart(sheet, sheet) <= ALIKE


def test_who_has_it_read_out_hears_its_title_and_its_words() -> None:
    # A picture's parts are not told, but its title and description are: SVG-AAM 1.0.
    root = ElementTree.fromstring(sheet_svg(SHEET, title="A & B", language="es"))
    assert root.attrib["role"] == "img"
    assert root.attrib["{http://www.w3.org/XML/1998/namespace}lang"] == "es"
    assert root.findtext(f"{SVG}title") == "A & B"
    assert root.findtext(f"{SVG}desc") == "Sandbar\n50 mm"


def test_what_comes_often_is_stated_once() -> None:
    other = replace(LABEL, items=(*LABEL.items, *set_line("no. 2", OURS.medium, 9).at(85, 50)))
    faces = [LABEL] * 12 + [replace(other) for _ in range(12)]
    placed = tuple(Placed(face, 0, 60 * place) for place, face in enumerate(faces))
    root = ElementTree.fromstring(sheet_svg(Sheet(120, 1440, placed), title="Labels"))
    names = [each.attrib["id"] for each in root.iter() if "id" in each.attrib]
    assert len(names) == len(set(names))
    assert len(list(root.iter(f"{SVG}image"))) == 1
    used = [each.attrib[HREF].removeprefix("#") for each in root.iter(f"{SVG}use")]
    assert set(used) == set(names)
    assert sorted(used.count(name) for name in names) == [12, 13, 13]  # a label, a code, a picture


def test_files_may_stand_side_by_side_in_one_page() -> None:
    def names(*items: Item) -> set[str]:
        root = ElementTree.fromstring(write_svg(face_of(*items), title="Face"))
        return {each.attrib["id"] for each in root.iter() if "id" in each.attrib}

    picture, other = raster(1, b"\x00", b"\xff"), raster(1, b"\xff", b"\x00")
    again = CODE._replace(x=1, symbol=symbol(CODE.symbol.text))
    assert names(CODE) == names(again)
    assert not names(CODE, picture) & names(CODE._replace(symbol=symbol("T1 REEDBED")), other)


def test_the_same_sheet_gives_the_same_bytes() -> None:
    for sheet in (SHEET, *map(sheet_of, FACES.values())):
        assert sheet_svg(sheet, title="Sheet") == sheet_svg(sheet, title="Sheet")


def test_a_nought_has_no_sign() -> None:
    # Equal paths are written once, so equal must look alike.
    ways = [face_of(Path(segment(zero, 0, 10, 10), 1.0)) for zero in (0.0, -0.0)]
    assert write_svg(ways[0], title="") == write_svg(ways[1], title="")
