"""What stands in a sheet stands on the page: at its place, in its size, readable again."""

import os
import subprocess
import sys
from io import BytesIO
from itertools import pairwise
from pathlib import Path as FilePath
from typing import Any

import pypdf
import pypdfium2
import pytest
import zxingcpp
from PIL import Image, ImageChops, ImageOps

from tagend.fonts import OURS
from tagend.fonts.faces import widths
from tagend.layouts.codes.code import DESIGN_MODULE, SMALLEST_MODULE, symbol
from tagend.layouts.paper.face import MM, Code, Face, Item, Path, TextRun, Turn, rectangle, segment
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.attach import AttachedFile
from tagend.layouts.pdf.pdf import Duplex, write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet, Trim
from tests.tree import ROOT

PAYLOAD = "T1 SANDBAR 30/.023/HN 25*B"
TURNS: tuple[Turn, ...] = (0, 90, 180, 270)


def written(*sheets: Sheet) -> bytes:
    return write_pdf(sheets, title="Cards", creator="layouts")


def sheet_of(*items: Item) -> Sheet:
    """Return a small sheet with the items of one face at 0, 0."""
    return Sheet(300, 200, (Placed(Face("face", 300, 200, items), 0, 0),))


def page_image(pdf: bytes, dpi: int, page: int = 0) -> Image.Image:
    """Return a page as a renderer unrelated to the writer draws it."""
    with pypdfium2.PdfDocument(pdf) as document:
        picture = document[page].render(scale=dpi / 72).to_pil()
        assert isinstance(picture, Image.Image)
        return picture.convert("L")


def inked(pdf: bytes, dpi: int = 600) -> tuple[float, ...]:
    """Return left, top, right and bottom of all that is darker than mid-grey, in points."""
    dark = ImageOps.invert(page_image(pdf, dpi)).point(lambda value: 255 * (value > 127))
    box = dark.getbbox()
    assert box is not None
    return tuple(edge * 72 / dpi for edge in box)


def near(*points: float) -> Any:  # approx compares with anything
    """Return the points give or take a dot at 600 dpi."""
    return pytest.approx(points, abs=0.13)


def page_text(pdf: bytes) -> str:
    with pypdfium2.PdfDocument(pdf) as document:
        return str(document[0].get_textpage().get_text_range())


def sample() -> bytes:
    """Return a document with everything that a document can hold."""
    items: tuple[Item, ...] = (
        *set_line("7 1/2 ft, 5/16 in, 8″ Łódź Жук", OURS.medium, 9).at(10, 20),
        *set_line("Sandbar", OURS.bold, 12).at(10, 40),
        Path(rectangle(5, 5, 290, 190), line=0.5, dash=(4, 2)),
        Code(100, 60, DESIGN_MODULE, symbol(PAYLOAD)),
    )
    often, once = Face("often", 300, 200, items), Face("once", 300, 200, items)
    placed = (*(Placed(often, 0, 200 * k) for k in range(3)), Placed(once, 300, 0, 90))
    return write_pdf(
        [Sheet(612, 792, placed, (Path(segment(0, 10, 20, 10), line=0.25),))] * 2,
        title="Sandbar – eight",
        creator="layouts",
        files=[AttachedFile(f"{name}.toml", "application/toml", b"x = 1") for name in "bca"],
        duplex="long edge",
    )


def test_pages_are_the_sheets_in_their_order_and_size() -> None:
    letter, a4 = Sheet(215.9 * MM, 279.4 * MM, ()), Sheet(210 * MM, 297 * MM, ())
    pages = pypdf.PdfReader(BytesIO(written(a4, letter))).pages
    # 210 mm = 595.276 pt, 297 mm = 841.890 pt; Letter is 612 × 792 pt exactly
    sizes = [(float(page.mediabox.width), float(page.mediabox.height)) for page in pages]
    assert sizes == [(595.276, 841.89), (612, 792)]


def test_a_pdf_of_no_sheet_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one sheet"):
        written()


def test_a_line_of_50_mm_is_50_mm_on_the_page() -> None:
    ruler = Path(segment(20, 30, 20 + 50 * MM, 30), line=1)
    assert inked(written(sheet_of(ruler))) == near(20, 29.5, 20 + 50 * MM, 30.5)


def test_round_ends_reach_half_a_pen_beyond_the_line() -> None:
    ruler = Path(segment(20, 30, 100, 30), line=8, round_ends=True)
    assert inked(written(sheet_of(ruler))) == near(16, 26, 104, 34)


def test_a_curve_bends_to_the_side_of_its_handles() -> None:
    steps: tuple[Any, ...] = (("move", 20, 50), ("curve", 20, 10, 100, 10, 100, 50), ("close",))
    # A cubic whose handles lie 40 pt off rises 3/4 of that, to 50 - 30; less half the pen.
    assert inked(written(sheet_of(Path(steps, line=1)))) == near(19.5, 19.5, 100.5, 50.5)


def test_a_fill_has_its_grey_and_a_dash_its_gaps() -> None:
    filled = Path(rectangle(10, 10, 50, 50), fill=0.6)
    dashed = Path(segment(100, 50, 200, 50), line=4, dash=(10, 10))
    image = page_image(written(sheet_of(filled, dashed)), 72)
    assert image.getpixel((30, 30)) == pytest.approx(0.6 * 255, abs=1)
    assert [image.getpixel((x, 50)) for x in (104, 114, 124, 134)] == [0, 255, 0, 255]


def test_overlapping_outlines_stay_filled() -> None:
    both = rectangle(10, 10, 40, 40) + rectangle(30, 10, 40, 40)
    image = page_image(written(sheet_of(Path(both, fill=0))), 72)
    assert {image.getpixel((x, 30)) for x in (20, 40, 60)} == {0}


def test_text_stands_on_its_baseline_in_its_size() -> None:
    run = set_line("H", OURS.bold, 100).at(50, 150)
    left, top, right, bottom = inked(written(sheet_of(*run)))
    # Capitals are 0.698 em; H's stems stand within its advance.
    assert (top, bottom) == near(150 - 69.8, 150)
    assert 50 < left < right < 50 + run[0].width


def test_a_line_aligned_right_ends_there() -> None:
    runs = set_line("1 1/2 in H", OURS.medium, 20).at(200, 100, "right")
    right_edge = inked(written(sheet_of(*runs)))[2]
    assert 200 - 0.1 * 20 < right_edge < 200  # but for the side bearing of H


@pytest.mark.parametrize("uses", [1, 3])
@pytest.mark.parametrize(
    ("turn", "corner"),
    [
        # A face of 100 × 60, its top left corner marked 20 × 10, in the box at 30, 40.
        (0, (30, 40, 50, 50)),
        (90, (30, 120, 40, 140)),  # anticlockwise: the mark goes to the lower left; 40 + 100 = 140
        (180, (110, 90, 130, 100)),  # lower right; 30 + 100 = 130, 40 + 60 = 100
        (270, (80, 40, 90, 60)),  # upper right; 30 + 60 = 90
    ],
)
def test_a_turned_face_lands_in_its_box(turn: Turn, corner: tuple[float, ...], uses: int) -> None:
    face = Face("face", 100, 60, (Path(rectangle(0, 0, 20, 10), fill=0),))
    sheet = Sheet(300, 200, (Placed(face, 30, 40, turn),) * uses)
    assert inked(written(sheet)) == near(*corner)


def test_marks_are_placed_on_the_sheet() -> None:
    sheet = Sheet(300, 200, (), (Path(rectangle(5, 7, 10, 20), fill=0),))
    assert inked(written(sheet)) == near(5, 7, 15, 27)


@pytest.mark.parametrize("uses", [1, 3])
@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("dpi", [300, 600])
@pytest.mark.parametrize("module", [SMALLEST_MODULE, DESIGN_MODULE])
def test_a_printed_code_is_read_by_an_unrelated_reader(
    module: float, dpi: int, turn: Turn, uses: int
) -> None:
    face = Face("face", 120, 80, (Code(20.3, 10.7, module, symbol(PAYLOAD)),))
    image = page_image(written(Sheet(300, 200, (Placed(face, 40, 30, turn),) * uses)), dpi)
    assert [found.text for found in zxingcpp.read_barcodes(image)] == [PAYLOAD]


def test_a_code_fills_its_place_exactly() -> None:
    made = symbol(PAYLOAD)
    right, bottom = 24 + made.side * 1.2, 36 + made.side * 1.2
    assert inked(written(sheet_of(Code(24, 36, 1.2, made)))) == near(24, 36, right, bottom)


@pytest.mark.parametrize(
    ("module", "dpi", "dots"),
    [(DESIGN_MODULE, 600, 10), (DESIGN_MODULE, 300, 5), (SMALLEST_MODULE, 600, 8)],
)
@pytest.mark.parametrize("offset", [0, 0.037, 0.055])
def test_every_module_is_the_same_number_of_dots(
    module: float, dpi: int, dots: int, offset: float
) -> None:
    made = symbol(PAYLOAD)
    image = page_image(written(sheet_of(Code(24 + offset, 36, module, made))), dpi)
    # The timing pattern, row 6, alternates between the finders, columns 8 to side - 9.
    y = round((36 + 6.5 * module) * dpi / 72)
    row = image.crop((0, y, image.width, y + 1)).tobytes()
    edges = [x for x in range(1, len(row)) if (row[x] < 128) != (row[x - 1] < 128)]
    inner = edges[1:-1]  # without the finders' outer edges
    assert len(inner) == made.side - 14 + 1
    assert {after - before for before, after in pairwise(inner)} == {dots}


def test_a_code_is_one_path_with_one_fill() -> None:
    pdf = written(sheet_of(Code(24, 36, 1.2, symbol(PAYLOAD))))
    operators = content(pdf)
    assert operators.count(b"f") == 1
    assert operators.count(b"re") > 50
    assert b"S" not in operators


def content(pdf: bytes) -> list[bytes]:
    """Return the words of all drawing on all pages."""
    reader = pypdf.PdfReader(BytesIO(pdf))
    streams = [page.get_contents() for page in reader.pages]
    for page in reader.pages:
        forms = page["/Resources"].get("/XObject", {})  # type: ignore[attr-defined]
        streams += [form.get_object() for form in forms.values()]
    return b" ".join(stream.get_data() for stream in streams if stream is not None).split()


def test_all_ink_is_device_grey() -> None:
    operators = content(sample())
    assert b"g" in operators
    assert b"G" in operators
    assert {b"rg", b"RG", b"k", b"K", b"cs", b"scn"}.isdisjoint(operators)


def test_nothing_of_one_items_look_is_left_for_the_next() -> None:
    odd = Path(segment(20, 180, 280, 180), 9, grey=0.7, fill=0.7, dash=(3, 3), round_ends=True)
    plain = Path(segment(20, 30, 100, 30), line=8)
    square = Path(rectangle(120, 26, 8, 8), fill=0)
    text, code = set_line("H", OURS.bold, 50), Code(200, 20, 1.2, symbol("T1"))
    alone = written(sheet_of(plain, square, *text.at(150, 60), code, odd))
    after = written(sheet_of(odd, plain, odd, square, odd, *text.at(150, 60), odd, code))
    difference = ImageChops.difference(page_image(alone, 300), page_image(after, 300))
    assert difference.crop((0, 0, 1250, 600)).getbbox() is None  # down to 144 pt, above `odd`


def test_a_face_used_often_is_stored_once_and_looks_the_same() -> None:
    items: tuple[Item, ...] = (
        *set_line("Ẩ 1 1/2 in", OURS.medium, 12).at(4, 12),
        Path(rectangle(0, 0, 90, 60), line=3),
        Path(segment(10, 50, 80, 50), line=1),
        Code(50, 20, 0.96, symbol("T1")),
    )
    other = Face("other", 90, 60, (Path(rectangle(9, 9, 60, 9), 4, 0.7, 0.8, (3, 3), True),))

    def sheet(names: str) -> Sheet:
        faces = [Face(name, 90, 60, items) for name in names]
        placed = (Placed(face, 10 + 95 * k, 80) for k, face in enumerate(faces))
        return Sheet(300, 200, (Placed(other, 10, 5), *placed))

    reused, direct = written(sheet("aaa")), written(sheet("abc"))
    assert (forms(reused), forms(direct)) == (1, 0)
    difference = ImageChops.difference(page_image(reused, 300), page_image(direct, 300))
    # This renderer puts glyphs at fractions of a dot, other ones within a form: edges differ a bit.
    assert max(difference.tobytes()) < 128


def forms(pdf: bytes) -> int:
    """Return how many forms are stored."""
    return pdf.count(b"/Subtype /Form")


def test_a_hundred_sheets_of_one_face_take_little_more_than_one() -> None:
    face = Face("face", 90, 60, (Code(10, 10, 0.96, symbol(PAYLOAD)),))
    sheet = Sheet(300, 200, tuple(Placed(face, 95 * k, 0) for k in range(3)))
    assert len(written(*[sheet] * 100)) < len(written(sheet)) + 100 * 900


def test_pages_that_are_alike_share_one_stream() -> None:
    one, other = (sheet_of(Path(segment(9, y, 90, y), 1.0)) for y in (9, 18))
    pages = pypdf.PdfReader(BytesIO(written(one, other, one))).pages
    first, second, third = (page.raw_get("/Contents").idnum for page in pages)
    assert first == third != second


def test_a_shape_stands_where_its_path_does() -> None:
    steps = (*segment(10, 20, 50, 20), *segment(10, 40, 50, 40)) * 3
    moved = sheet_of(Path(steps, 1.0, x=30, y=15), Path(steps, 1.0))
    there = sheet_of(Path(Path(steps, x=30, y=15).steps, 1.0), Path(steps, 1.0))
    assert inked(written(moved)) == inked(written(there)) == near(10, 19.5, 80, 55.5)


def test_text_is_read_back_with_fractions_and_primes() -> None:
    lines = ["7 1/2 ft", "5/16 in × 2", "8″ and 7′", "Łódź – Жук"]
    items = [
        run
        for row, text in enumerate(lines)
        for run in set_line(text, OURS.medium, 12).at(20, 30 + 20 * row)
    ]
    pdf = written(sheet_of(*items))
    assert page_text(pdf).split("\r\n") == lines
    other = pypdf.PdfReader(BytesIO(pdf)).pages[0].extract_text()
    assert "\x00" not in other
    assert all(word in other for word in ("1/2", "5/16", "8″", "7′", "Łódź", "Жук"))


@pytest.mark.parametrize("font", ["medium", "bold-fallback"])
def test_each_character_that_a_font_has_is_read_back(font: str) -> None:
    # More of them than the 256 that one embedded subset can hold.
    characters = [c for c in widths(font) if not c.isspace() and c not in "ŉ"]
    items = [
        TextRun(5 + 11 * (place % 26), 8 + 9 * (place // 26), character, font, 6, 6)
        for place, character in enumerate(characters[:520])
    ]
    read = page_text(written(sheet_of(*items)))
    assert set(characters[:520]) <= set(read)


def test_fonts_are_embedded_as_subsets_and_no_other_is_named() -> None:
    reader = pypdf.PdfReader(BytesIO(sample()))
    fonts = reader.pages[0]["/Resources"]["/Font"].values()  # type: ignore[index]
    names = set()
    for font in (found.get_object() for found in fonts):
        assert font["/FontDescriptor"]["/FontFile2"].get_data()
        names.add(font["/BaseFont"])
    assert names == {
        "/AAAAAA+IBMPlexSansCond-Medium",
        "/AAAAAA+IBMPlexSansCond-Bold",
        "/AAAAAA+FiraSansCondensed-Medium",
    }
    assert b"Helvetica" not in sample()


def test_a_page_of_one_font_stays_small() -> None:
    assert len(written(sheet_of(*set_line("Sandbar eight", OURS.medium, 9).at(9, 9)))) < 10_000


def catalogue(pdf: bytes) -> Any:
    return pypdf.PdfReader(BytesIO(pdf)).root_object


def test_the_viewer_is_asked_not_to_scale() -> None:
    pdf = written(sheet_of())
    assert pdf.startswith(b"%PDF-1.7")  # two of the preferences came with it
    assert dict(catalogue(pdf)["/ViewerPreferences"]) == {
        "/PrintScaling": "/None",
        "/PickTrayByPDFSize": True,
        "/DisplayDocTitle": True,
    }
    assert catalogue(pdf)["/Lang"] == "en"


@pytest.mark.parametrize(
    ("duplex", "name"),
    [
        ("long edge", "/DuplexFlipLongEdge"),
        ("short edge", "/DuplexFlipShortEdge"),
        ("single side", "/Simplex"),
    ],
)
def test_the_viewer_is_told_how_sheets_turn(duplex: Duplex, name: str) -> None:
    pdf = write_pdf([sheet_of()], title="", creator="", duplex=duplex)
    assert catalogue(pdf)["/ViewerPreferences"]["/Duplex"] == name


def test_the_document_says_what_it_is_and_nothing_of_who_or_when() -> None:
    told = pypdf.PdfReader(BytesIO(sample())).metadata
    assert told is not None
    assert (told.title, told.creator, told.subject) == ("Sandbar – eight", "layouts", "")
    assert told.author == ""
    assert str(told["/CreationDate"]).startswith("D:20000101")


def test_the_same_sheets_give_the_same_bytes() -> None:
    first = sample()
    written(sheet_of(*set_line("something else in between", OURS.bold, 9).at(9, 9)))
    assert sample() == first


@pytest.mark.parametrize("seed", ["0", "1", "4711"])
def test_another_process_gives_the_same_bytes(seed: str) -> None:
    script = "import sys, test_pdf; sys.stdout.buffer.write(test_pdf.sample())"
    here = FilePath(__file__).parent
    search = os.pathsep.join([str(here), str(ROOT), os.environ.get("PYTHONPATH", "")])
    environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": search}
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, check=True, env=environment
    )
    assert done.stdout == sample()


def test_a_pdf_says_its_language_and_whose_it_is() -> None:
    data = write_pdf(
        [sheet_of()], title="Fichas", creator="layouts", author="El banco", language="es"
    )
    reader = pypdf.PdfReader(BytesIO(data))
    assert str(reader.root_object["/Lang"]) == "es"
    assert reader.metadata is not None
    assert (reader.metadata.title, reader.metadata.author) == ("Fichas", "El banco")


def test_pages_for_a_press_say_for_what_they_are_made() -> None:
    trimmed = Sheet(300, 200, (), trim=Trim(x=10, y=10, width=280, height=180, bleed=5))
    reader = pypdf.PdfReader(BytesIO(written(trimmed)))
    intents: Any = reader.root_object["/OutputIntents"]
    assert [intent.get_object()["/S"] for intent in intents] == ["/GTS_PDFX"]
    assert "/OutputIntents" not in pypdf.PdfReader(BytesIO(written(sheet_of()))).root_object
