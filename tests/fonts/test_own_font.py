"""A person's own font sets what no other has, where it is passed and nowhere else."""

import re
from io import BytesIO
from pathlib import Path

import pypdf
import pytest
from fontTools.ttLib import TTFont

from tagend.fonts import OURS, NoGlyph, Run, fonts_with, runs, text_width
from tagend.fonts.files import font_path
from tagend.fonts.outlines import EM, outlines
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import set_line
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.fonts.made import postscript, truetype
from tests.layouts.drawn import page_image, text

FLY = "毛鈎"  # "fly", which no font here has


@pytest.fixture
def font(tmp_path: Path) -> Path:
    return truetype(tmp_path / "brush.ttf", FLY + "Aé", "Brush-Regular")


def refusal(path: Path) -> str:
    with pytest.raises(Refused) as caught:
        fonts_with(path)
    return str(caught.value)


def test_it_sets_only_what_the_others_lack(font: Path) -> None:
    first, own = runs("Aé " + FLY, fonts_with(font).bold)
    assert first == Run("Aé ", "bold")
    assert own.text == FLY
    assert text_width(FLY, own.font, 10) == pytest.approx(2 * 5)  # half an em each


def test_it_serves_every_weight(font: Path) -> None:
    fonts = fonts_with(font)
    assert runs("毛", fonts.medium)[0].font == runs("毛", fonts.bold)[0].font


def test_what_is_set_without_it_knows_nothing_of_it(font: Path) -> None:
    set_line(FLY, fonts_with(font).medium, 9)
    with pytest.raises(NoGlyph):
        runs(FLY, OURS.medium)
    with pytest.raises(NoGlyph):
        set_line(FLY, OURS.medium, 9)  # though lines are remembered


def test_no_font_changes_nothing() -> None:
    assert fonts_with(None) == OURS


def test_a_font_knows_nothing_of_another(font: Path, tmp_path: Path) -> None:
    other = truetype(tmp_path / "reed.ttf", "竿", "Reed-Regular")
    with pytest.raises(NoGlyph):
        runs("毛", fonts_with(other).medium)
    assert runs("毛", fonts_with(font).medium)


def test_what_it_sets_is_embedded_drawn_and_read_back(font: Path) -> None:
    line = set_line("Fly 毛鈎", fonts_with(font).medium, 20)
    face = Face("face", 200, 50, line.at(10, 30))
    pdf = write_pdf([Sheet(200, 50, (Placed(face, 0, 0),))], title="", creator="")
    assert text(pdf) == "Fly 毛鈎"
    fonts = pypdf.PdfReader(BytesIO(pdf)).pages[0]["/Resources"]["/Font"]  # type: ignore[index]
    names = {str(each.get_object()["/BaseFont"]) for each in fonts.values()}
    assert any("+Brush-Regular-own-" in name for name in names)
    # The middle of a box, 0.35 em above the baseline, is black.
    box = line.runs[-1]
    dots = 300 / 72
    middle = (round((10 + box.x + 5) * dots), round((30 - 7) * dots))
    assert page_image(pdf, 300).getpixel(middle) == 0


def test_a_pdf_does_not_tell_where_the_font_lies(font: Path) -> None:
    face = Face("face", 20, 20, set_line("毛", fonts_with(font).medium, 9).at(9, 9))
    pdf = write_pdf([Sheet(20, 20, (Placed(face, 0, 0),))], title="", creator="")
    assert font.name.encode() not in pdf
    assert str(font.parent).encode() not in pdf


def test_two_own_fonts_of_one_name_are_told_apart(tmp_path: Path) -> None:
    pages = []
    for character in "毛鈎":
        own = fonts_with(truetype(tmp_path / f"{character}.ttf", character, "Same-Regular"))
        face = Face("face", 20, 20, set_line(character, own.medium, 9).at(9, 9))
        pages.append(write_pdf([Sheet(20, 20, (Placed(face, 0, 0),))], title="", creator=""))
    assert [text(page) for page in pages] == ["毛", "鈎"]


@pytest.mark.parametrize("use", ["medium", "bold-fallback"])
def test_a_font_called_as_one_of_ours_is_refused(use: str, tmp_path: Path) -> None:
    copy = tmp_path / "copy.ttf"
    copy.write_bytes(font_path(use).read_bytes())
    assert re.fullmatch(
        rf"{re.escape(str(copy))}: it is called \S+ inside, as a font that is used here already; "
        "give a font of another name",
        refusal(copy),
    )


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    path = tmp_path / "none.ttf"
    assert refusal(path) == f"{path}: there is no such file; give the path of a TrueType font"
    assert "there is no such file" in refusal(tmp_path)


def test_postscript_outlines_are_told(tmp_path: Path) -> None:
    path = postscript(tmp_path / "brush.otf", "毛", "BrushCff-Regular")
    assert refusal(path) == (
        f"{path}: its outlines are PostScript (CFF); give its TrueType version, a .ttf"
    )


@pytest.mark.parametrize("rights", [0x0002, 0x0100, 0x0200])
def test_a_font_that_may_not_be_embedded_is_told(tmp_path: Path, rights: int) -> None:
    path = truetype(tmp_path / "locked.ttf", "毛", "Locked-Regular", embedding=rights)
    assert refusal(path) == f"{path}: its maker does not allow it in a PDF; give another font"


def test_a_font_that_may_be_looked_at_and_printed_is_used(tmp_path: Path) -> None:
    path = truetype(tmp_path / "preview.ttf", "毛", "Preview-Regular", embedding=0x0004)
    assert runs("毛", fonts_with(path).medium)


@pytest.mark.parametrize("kept", [0, 3, 11, 300])
def test_a_broken_file_is_told(font: Path, tmp_path: Path, kept: int) -> None:
    path = tmp_path / "broken.ttf"
    path.write_bytes(font.read_bytes()[:kept])
    assert refusal(path) == (
        f"{path}: this is no TrueType font, or it is damaged; give a .ttf file that opens elsewhere"
    )


def test_a_file_that_ends_within_a_table_is_told(font: Path, tmp_path: Path) -> None:
    path = tmp_path / "torn.ttf"
    path.write_bytes(font.read_bytes()[:-40])
    assert re.fullmatch(
        r".*torn\.ttf: its table '\w+' is cut off; fetch the font again", refusal(path)
    )


def test_text_that_is_no_font_is_told(tmp_path: Path) -> None:
    path = tmp_path / "words.ttf"
    path.write_text("not a font " * 100)
    assert "this is no TrueType font, or it is damaged" in refusal(path)


def test_its_outlines_are_drawn_in_parts_of_an_em(font: Path) -> None:
    name = fonts_with(font).bold[-1]
    drawn = outlines(name, "毛")["毛"]
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", drawn)]
    assert 0 < max(numbers) <= EM


def test_a_font_whose_outlines_are_damaged_is_refused_where_they_are_drawn(font: Path) -> None:
    name = fonts_with(font).bold[-1]
    with TTFont(font) as whole:
        table = whole.reader.tables["glyf"]
    data = bytearray(font.read_bytes())
    data[table.offset : table.offset + table.length] = b"\xff" * table.length
    font.write_bytes(data)
    with pytest.raises(Refused) as refusal:
        outlines(name, FLY)
    assert str(refusal.value).startswith(f"{font}: ")
