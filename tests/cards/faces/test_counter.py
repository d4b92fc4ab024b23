"""The counter sheet: one scale, groups by line weight, codes that are read, pages with a head."""

from collections.abc import Sequence

import pytest
import zxingcpp
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.counter import Offer, counter_sheet
from tagend.cards.faces.imprint import Imprint
from tagend.cards.faces.page import MARGIN
from tagend.cards.leader.leader import Leader
from tagend.cards.printing.codes import code_of
from tagend.fonts import OURS
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.stock import paper
from tests.drawable import leaders
from tests.layouts.drawn import page_image
from tests.seen import codes, faults, glyphs, paths, points, runs, words
from tests.told import told
from tests.written import PRACTICE, SIX, leader, recipe, section

# Capitals of 16 minutes of arc, the least of ISO 9241-3, at 60 cm: 7.5 pt are as much at 40 cm.
COUNTER_TYPE = 7.5 * 60 / 40
SHOP = Imprint(name="Gable and Reel", line="Tied to order", address="2 No Such Street")
LONG = leader(recipe(section("80 in", "0.020 in"), section("20 in", "0.010 in")))
SHORT = leader(recipe(section("40 in", "0.020 in"), section("20 in", "0.010 in")))


def named(of: Leader, name: str, weight: int | None) -> Leader:
    return replace(of, recipe=replace(of.recipe, name=name, line_weight=weight))


def sheet(
    leaders: Sequence[Leader], *, on: str = "letter", with_codes: bool = False
) -> tuple[Face, ...]:
    offers = [
        Offer(told(each), code_of(each, PRACTICE) if with_codes else None) for each in leaders
    ]
    return counter_sheet(offers, SHOP, paper(on), OURS)


def first_sections(face: Face) -> list[float]:
    """Return how long the first sections are drawn, from the top down; they start together."""
    outlines = [points(path) for path in paths(face) if path.steps[-1] == ("close",)]
    sides = [(outline[0][0], outline[1][0] - outline[0][0]) for outline in outlines]
    long = [(start, length) for start, length in sides if length > 50]
    return [length for start, length in long if start == min(long)[0]]


def test_all_drawings_are_to_one_scale_and_start_together() -> None:
    (page,) = sheet([LONG, SHORT])
    long, short = first_sections(page)
    assert long == pytest.approx(2 * short)


def test_lengths_and_diameters_of_every_section_stand_below_it() -> None:
    (page,) = sheet([leader(SIX)])
    told_runs = {run.text: run for run in runs(page)}
    for length, diameter in (("46 in", "0.023 in"), ("24", "0.020"), ("8", "0.013")):
        above, below = told_runs[length], told_runs[diameter]
        assert below.y > above.y
        middles = (above.x + above.width / 2, below.x + below.width / 2)
        assert middles[0] == pytest.approx(middles[1])


def below(page: Face, material: str) -> list[str]:
    """Return the diameters above which a material stands."""
    shown = {run.text: run.x + run.width / 2 for run in runs(page) if run.text[:2] == "0."}
    middles = [run.x + run.width / 2 for run in runs(page) if run.text == material]
    return [text for x in middles for text, at in shown.items() if abs(at - x) < 0.1]


def test_materials_are_told_in_words_where_they_change() -> None:
    pieces = [("40 in", "0.020 in", "nylon"), ("30 in", "0.015 in", "nylon")]
    pieces += [("30 in", "0.012 in", "fluorocarbon"), ("30 in", "0.010 in", "nylon")]
    (page,) = sheet([leader(recipe(*(section(*each) for each in pieces)))])
    assert below(page, "nylon") == ["0.020 in", "0.010"]
    assert below(page, "fluorocarbon") == ["0.012"]


def test_no_material_is_drawn_in_black() -> None:
    hard = leader(recipe(section("40 in", "0.020 in", "hard nylon"), section("30 in", "0.012 in")))
    (page,) = sheet([hard])
    assert not [path for path in paths(page) if path.fill == 0.0]


def test_a_bite_guard_is_told_in_words() -> None:
    guard = section("6 in", "0.024 in", part="bite guard")
    (page,) = sheet([leader(recipe(section("30 in", "0.020 in"), guard))])
    assert "bite guard" in words(page)


def test_sections_too_many_for_figures_are_listed() -> None:
    many = leader(recipe(*(section("5 in", f"0.0{30 - n} in") for n in range(16))))
    (page,) = sheet([many], on="A5")
    for thou in range(15, 31):
        assert f"0.0{thou} in nylon" in words(page)


def test_leaders_stand_by_line_weight_and_those_without_one_last() -> None:
    offered = [("Stray", None), ("Heavy", 8), ("Light", 4), ("Second heavy", 8)]
    (page,) = sheet([named(SHORT, *each) for each in offered])
    said = [run.text for run in sorted(runs(page), key=lambda run: run.y)]
    order = ["4-weight", "Light", "8-weight", "Heavy", "Second heavy"]
    order += ["Without a line weight", "Stray"]
    assert [text for text in said if text in order] == order


def test_leaders_that_have_no_weight_at_all_need_no_heading() -> None:
    (page,) = sheet([SHORT, LONG])
    assert "line weight" not in words(page)


def test_later_pages_have_a_running_head_and_say_which_weight_goes_on() -> None:
    first, *later = sheet([named(SHORT, f"Number {n}", 5) for n in range(18)])
    assert "2 No Such Street" in words(first)
    assert len(later) >= 2
    for face in later:
        assert "2 No Such Street" not in words(face)
        for said in ("Gable and Reel", face.name, "5-weight, continued", "nylon"):
            assert said in words(face)


@pytest.mark.parametrize("dpi", [150, 300])
def test_codes_are_read_from_the_page_and_hold_the_recipes(dpi: int) -> None:
    offered = [leader(SIX), named(SHORT, "Short", 5)]
    (page,) = sheet(offered, with_codes=True)
    data = write_pdf([Sheet(page.width, page.height, (Placed(page, 0, 0),))], title="", creator="")
    texts = {code_of(each, PRACTICE).text for each in offered}
    assert {found.text for found in zxingcpp.read_barcodes(page_image(data, dpi))} == texts
    assert len({code.module for code in codes(page)}) == 1


def test_without_codes_the_drawings_have_all_the_width() -> None:
    (bare,), (coded,) = sheet([LONG]), sheet([LONG], with_codes=True)
    assert not codes(bare)
    assert first_sections(bare) > first_sections(coded)


def test_type_is_read_across_a_counter() -> None:
    first, second, *_ = sheet([named(SHORT, f"Number {n}", 5) for n in range(12)])
    running = {"Gable and Reel", second.name}
    for run in (*runs(first), *(run for run in runs(second) if run.text not in running)):
        assert run.size >= COUNTER_TYPE


@settings(max_examples=40)
@given(st.lists(leaders(), min_size=1, max_size=4), st.sampled_from(["letter", "A4", "A5"]))
def test_any_leaders_stand_apart_and_to_one_scale(of: list[Leader], on: str) -> None:
    try:
        pages = sheet(of, on=on)
    except (TooSmall, TooWide):
        assert on == "A5"
        return
    for face in pages:
        assert faults(face, MARGIN - 6) == []
        assert all(glyphs(run)[2] <= face.width - MARGIN + 1 for run in runs(face))
