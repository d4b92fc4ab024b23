"""The fonts are the files expected, and every character is set by one that has it."""

import hashlib
import re
import struct
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend import fonts
from tagend.fonts import OURS, Chain, FontMissing, NoGlyph, Run, runs, text_width
from tagend.fonts.faces import widths
from tagend.fonts.files import FONTS, FontFile, font_path
from tagend.fonts.outlines import outlines

SHA256 = {
    "medium": "426350c298277f7f9d1a93956572799ca3d16e2d43e7f60eec8382bcd795ec30",
    "bold": "b65492d86cdd5cd9d43d2671b55d5d36fec36859fc8b08bc6aba78e441d6c849",
    "medium-fallback": "6385967fe921a6ee837221cde461e695e77f8931a3ca4bc82c7c1c1a5fe47f86",
    "bold-fallback": "b9371052e58ec5b709153dd0fffc60b5205b4d3435cf957c2522705b31b0dbcc",
}
FIRST = ("medium", "bold")  # of each chain


def table(font: str, tag: bytes) -> bytes:
    """Return one table of a TrueType file, by the directory at its start."""
    data = font_path(font).read_bytes()
    (count,) = struct.unpack_from(">H", data, 4)
    for place in range(12, 12 + 16 * count, 16):
        name, _, offset, length = struct.unpack_from(">4sIII", data, place)
        if name == tag:
            return data[offset : offset + length]
    raise AssertionError(tag)


@pytest.mark.parametrize("font", FONTS)
def test_font_files_are_the_ones_measured(font: str) -> None:
    assert hashlib.sha256(font_path(font).read_bytes()).hexdigest() == SHA256[font]


@pytest.mark.parametrize("font", FIRST)
def test_heights_are_those_in_the_file(font: str) -> None:
    # OpenType: hhea ascender and descender at 4 and 6; OS/2 sxHeight and sCapHeight at 86 and 88.
    ascent, descent = struct.unpack_from(">hh", table(font, b"hhea"), 4)
    x_height, cap_height = struct.unpack_from(">hh", table(font, b"OS/2"), 86)
    (units,) = struct.unpack_from(">H", table(font, b"head"), 18)
    assert (ascent / units, descent / units) == (fonts.ASCENT, -fonts.DESCENT)
    assert cap_height / units == fonts.CAP_HEIGHT
    assert x_height / units == pytest.approx(fonts.X_HEIGHT, abs=0.006)  # bold has 0.525


@pytest.mark.parametrize("font", ["medium-fallback", "bold-fallback"])
def test_the_fallback_is_no_taller(font: str) -> None:
    ascent, descent = struct.unpack_from(">hh", table(font, b"hhea"), 4)
    assert ascent / 1000 <= fonts.ASCENT
    assert -descent / 1000 <= fonts.DESCENT


@pytest.mark.parametrize("chain", [OURS.medium, OURS.bold])
@pytest.mark.parametrize(
    "text",
    [
        "0.023 in × 30 lb",
        "½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ⅓ ⅔ ⁵⁄₁₆",
        "7′ 6″ ± 2° – — … ≤ µ Ø",
        "Łódź, façade, Þór, İğş, ẞ, ự",
    ],
)
def test_western_text_and_measures_need_one_font(text: str, chain: Chain) -> None:
    assert runs(text, chain) == (Run(text, chain[0]),)


def test_the_fallback_takes_only_the_letters_that_the_first_lacks() -> None:
    assert runs("Жук 12 π″", OURS.bold) == (Run("Жук", "bold-fallback"), Run(" 12 π″", "bold"))


@given(st.text(st.characters(codec="utf-8"), max_size=20))
def test_runs_keep_every_character_or_name_one_that_no_font_has(text: str) -> None:
    known = widths("medium").keys() | widths("medium-fallback").keys()
    unknown = [character for character in text if character not in known]
    if unknown:
        with pytest.raises(NoGlyph) as caught:
            runs(text, OURS.medium)
        assert caught.value.character == unknown[0]
    else:
        assert "".join(run.text for run in runs(text, OURS.medium)) == text


def test_a_character_without_a_glyph_is_named() -> None:
    with pytest.raises(NoGlyph) as caught:
        runs("Spule 鈎", OURS.medium)
    assert str(caught.value) == "no font has the character 鈎 (U+920E, CJK UNIFIED IDEOGRAPH-920E)"


@pytest.mark.parametrize("text", ["2\u20113 turns", "x\u0302", "a\x00", "a\r", "\ue000", "⌀", "☐"])
def test_what_would_print_as_nothing_or_in_the_wrong_place_is_refused(text: str) -> None:
    with pytest.raises(NoGlyph, match=r"U\+"):
        runs(text, OURS.medium)


def test_digits_of_a_weight_are_of_one_width() -> None:
    for font in FIRST:
        assert [text_width(digit, font, 10) for digit in "0123456789"] == [pytest.approx(5.4)] * 10


def test_width_is_the_sum_of_advances() -> None:
    # 0.540 em for a digit, 0.212 for a space, 0.760 for ½, from the file's hmtx table
    assert text_width("8 ½", "medium", 10) == pytest.approx(5.40 + 2.12 + 7.60)


def test_a_missing_font_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(FONTS, "absent", FontFile("fontpkg-of-nothing", "Nothing-Bold.ttf"))
    message = "no font Nothing-Bold.ttf; run: pip install fontpkg-of-nothing"
    with pytest.raises(FontMissing, match=f"^{re.escape(message)}$"):
        font_path("absent")


def test_a_font_package_without_the_file_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    wanted = FontFile("fontpkg-ibm-plex-sans-condensed", "IBMPlexSansCondensed-Absent.ttf")
    monkeypatch.setitem(FONTS, "absent", wanted)
    with pytest.raises(FontMissing, match=r"^no font IBMPlexSansCondensed-Absent\.ttf; "):
        font_path("absent")


def test_the_fallback_and_the_font_packages_stay_unloaded() -> None:
    script = (
        "import sys, fonts\n"
        "assert 'reportlab' not in sys.modules\n"
        "fonts.runs('Butt 3/4 in', fonts.OURS.medium)\n"
        "from tagend.fonts.faces import _loaded\n"
        "print(_loaded.cache_info().currsize, [m for m in sys.modules if 'fontpkg' in m])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout == "1 []\n"


def test_registered_fonts_are_known_to_the_pdf_library_under_our_names() -> None:
    from reportlab.pdfbase.pdfmetrics import getFont

    for font in FONTS:
        fonts.register(font)
        assert getFont(font).face.filename == str(font_path(font))


def test_an_outline_is_read_once_in_a_process(monkeypatch: pytest.MonkeyPatch) -> None:
    first = outlines("bold", "Tag 8")
    assert first[" "] == ""
    monkeypatch.setattr("tagend.fonts.files.FONTS", {})  # so that no file is found again
    assert outlines("bold", "8ga") == {sign: first[sign] for sign in "8ga"}
