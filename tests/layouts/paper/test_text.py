"""Text is prepared, measured, broken and made to fit."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.fonts import OURS, NoGlyph
from tagend.layouts.paper.face import MM
from tagend.layouts.paper.text import TooWide, break_lines, fit_size, set_line
from tagend.layouts.paper.typeset import prepare

WORDS = st.lists(
    st.sampled_from(["a", "knot", "non-slip", "7 ft 6 in", "1 1/2 in", "25 lb", "Жук", "butt—tip"]),
    min_size=1,
    max_size=12,
).map(" ".join)


def shown(text: str, width: float) -> list[str]:
    return [line.text for line in break_lines(text, OURS.medium, 10, width)]


def lines_needed(text: str, size: float, width: float) -> float:
    try:
        return len(break_lines(text, OURS.bold, size, width))
    except TooWide:
        return math.inf


@pytest.mark.parametrize(
    ("written", "set_as"),
    [
        ("¾", "3/4"),
        ("7½ ft", "7 1/2 ft"),
        ("7 ½ ft", "7 1/2 ft"),
        ("⁵⁄₁₆", "5/16"),
        ("11⁵⁄₁₆ in", "11 5/16 in"),
        ("⅔ of it", "2/3 of it"),
        ("½, ¼.", "1/2, 1/4."),
    ],
)
def test_drawn_fractions_are_set_in_figures_of_the_line_s_size(written: str, set_as: str) -> None:
    assert prepare(written) == set_as


@pytest.mark.parametrize("text", ["3/4", "1-1/2 in", "12/5/2026", "24/7", "w/2", "1/2.5", "/2"])
def test_figures_are_left_as_written(text: str) -> None:
    assert prepare(text) == text


@pytest.mark.parametrize(
    ("written", "set_as"),
    [
        ("e\u0301", "é"),
        ("25\u00a0lb\u2009\u202f\u2002x", "25 lb   x"),
        ("2\u20113 turns\u2010", "2-3 turns-"),
        ("a\tb\nc", "a b c"),
        ("soft\u00adhyphen\u200b\ufeff", "softhyphen"),
        ("⌀ 0.28", "Ø 0.28"),
        ("20 \u03bcm", "20 \u00b5m"),
        ("7′ 6″ – 8″ — × ±", "7′ 6″ – 8″ — × ±"),
    ],
)
def test_signs_the_fonts_lack_are_written_with_those_they_have(written: str, set_as: str) -> None:
    assert prepare(written) == set_as


@given(st.text(st.sampled_from("0123456789/ .,-½⁄abc\u00a0\u2011é\u0301″")))
def test_preparing_twice_changes_nothing_more(text: str) -> None:
    assert prepare(prepare(text)) == prepare(text)


def test_a_line_is_placed_by_its_left_centre_or_right() -> None:
    line = set_line("1234", OURS.bold, 10)
    assert line.width == pytest.approx(21.6)  # 4 × 0.540 × 10
    assert [line.at(50, 9, align)[0].x for align in ("left", "centre", "right")] == [
        pytest.approx(50),
        pytest.approx(39.2),  # 50 - 21.6 / 2
        pytest.approx(28.4),  # 50 - 21.6
    ]


def test_runs_of_two_fonts_stand_side_by_side() -> None:
    runs = set_line("Жук 8", OURS.bold, 8).at(0, 0)
    assert [(run.text, run.font) for run in runs] == [("Жук", "bold-fallback"), (" 8", "bold")]
    assert runs[1].x == pytest.approx(runs[0].width)


def test_an_empty_text_takes_no_room() -> None:
    assert set_line("", OURS.medium, 8).width == 0
    assert set_line("", OURS.medium, 8).at(1, 2) == ()
    assert break_lines(" \n ", OURS.medium, 8, 10) == ()
    assert fit_size("", OURS.medium, 10, 9, 7.5) == 9


def test_a_character_no_font_has_is_refused() -> None:
    with pytest.raises(NoGlyph, match=r"U\+26A0, WARNING SIGN"):
        set_line("⚠ sharp", OURS.medium, 8)


@pytest.mark.parametrize(
    "held",
    [
        "7 ft 6 in",
        "7 ft 6 1/2 in",
        "1 1/2 in",
        "1 ½ in",
        "1 ⁵⁄₁₆ in",
        "3/4 in",
        "25 lb",
        "22 to 28 in",
        "2\u20113",
    ],
)
def test_a_quantity_is_never_broken(held: str) -> None:
    needed = set_line(held, OURS.medium, 10).width
    assert shown(f"of {held} or", needed) == ["of", set_line(held, OURS.medium, 10).text, "or"]


def test_a_number_before_another_quantity_is_free() -> None:
    assert shown("3/4 12/5/2026", 50) == ["3/4", "12/5/2026"]


def test_white_space_between_words_is_one_space() -> None:
    assert shown("  butt \n\n section ", 200) == ["butt section"]


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("non-slip", ["non-", "slip"]),
        ("butt—tippet", ["butt—", "tippet"]),
        ("non\u2011slip", None),
        ("22–28", None),
        ("2-3", None),
    ],
)
def test_lines_break_after_a_hyphen_between_letters_only(
    text: str, lines: list[str] | None
) -> None:
    narrow = set_line(text, OURS.medium, 10).width - 1
    if lines is None:
        with pytest.raises(TooWide):
            shown(text, narrow)
    else:
        assert shown(text, narrow) == lines


def test_a_word_wider_than_its_place_is_refused_with_both_widths() -> None:
    with pytest.raises(TooWide) as caught:
        break_lines("tie 12345678", OURS.medium, 10, 10 * MM)
    # 8 × 0.540 × 10 = 43.2 pt = 15.24 mm
    assert caught.value.text == "12345678"
    assert caught.value.available == 10 * MM
    assert caught.value.needed == pytest.approx(43.2)
    assert str(caught.value) == "'12345678' is 15.2 mm wide, its place only 10.0 mm"


@given(WORDS, st.floats(60, 200))
def test_broken_lines_fit_and_lose_nothing(text: str, width: float) -> None:
    lines = break_lines(text, OURS.medium, 10, width)
    assert all(line.width <= width + 0.01 * MM for line in lines)
    together = "".join(line.text for line in lines)
    assert together.replace(" ", "") == set_line(text, OURS.medium, 10).text.replace(" ", "")


@given(st.lists(st.sampled_from(["a", "knot", "loop", "section"])), st.floats(60, 200))
def test_each_line_is_as_full_as_it_can_be(words: list[str], width: float) -> None:
    lines = shown(" ".join(words), width)
    for line, following in pairwise(lines):
        longer = f"{line} {following.split(' ')[0]}"
        assert set_line(longer, OURS.medium, 10).width > width


def test_text_keeps_the_preferred_size_when_it_fits() -> None:
    assert fit_size("1234", OURS.medium, 19.44, 9, 7.5) == 9  # 4 × 0.540 × 9 = 19.44, just


def test_text_takes_the_largest_quarter_point_that_fits() -> None:
    # 4 × 0.540 = 2.16 em; 18.4 / 2.16 = 8.52, so 8.5
    assert fit_size("1234", OURS.medium, 18.4, 9, 7.5) == 8.5


def test_text_that_needs_type_below_the_smallest_does_not_fit() -> None:
    assert fit_size("1234", OURS.medium, 2.16 * 7.5, 9, 7.5) == 7.5
    assert fit_size("1234", OURS.medium, 2.16 * 7.48, 9, 7.5) is None


def test_more_lines_let_text_be_larger() -> None:
    text, width = "1234 1234", 2.16 * 10
    assert fit_size(text, OURS.medium, width, 12, 7.5) is None
    assert fit_size(text, OURS.medium, width, 12, 7.5, lines=2) == 10


@given(WORDS, st.floats(40, 200), st.integers(1, 4))
def test_the_size_found_is_the_largest(text: str, width: float, lines: int) -> None:
    size = fit_size(text, OURS.bold, width, 14, 7.5, lines)
    if size is not None:
        assert lines_needed(text, size, width) <= lines
    if size != 14:
        assert lines_needed(text, 7.5 if size is None else size + 0.25, width) > lines
