"""Leaders compared on a page: readable, told apart, and each drawn to one scale from the fly."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.chart import STYLES, comparison, profile_chart
from tagend.cards.faces.compare import comparison_page
from tagend.cards.faces.page import MARGIN
from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import ENGLISH, Wording
from tagend.fonts import OURS
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide
from tagend.layouts.stock.stock import paper
from tests.seen import faults, paths, points, words
from tests.tieable import seeds, tieable
from tests.told import scale, told
from tests.written import leader, recipe, section

LONG = leader(recipe(section("60 in", "0.020 in"), section("20 in", "0.010 in")))
SHORT = leader(recipe(section("20 in", "0.016 in"), section("20 in", "0.008 in")))
THREAD = leader(recipe(section("40 in", "0.030 in", "furled thread", bought=True),
                       section("20 in", "0.010 in")))  # fmt: skip


def page(*leaders: Leader, on: str = "letter", wording: Wording = ENGLISH) -> Face:
    return comparison_page([told(each, wording) for each in leaders], paper(on), OURS)


def plots(*leaders: Leader) -> list[Face]:
    blocks = comparison([told(each) for each in leaders], scale(), 500, 100)
    return [Face("plot", 500, block.height, block.items) for block in blocks]


def lines(face: Face, count: int) -> list[list[tuple[float, float]]]:
    """Return the points of the leaders' lines, by their pens and dashes."""
    found = {(path.line, path.dash): points(path) for path in paths(face)}
    return [found[style] for style in STYLES[:count]]


def test_all_leaders_end_at_the_fly_and_have_one_scale() -> None:
    for plot in plots(LONG, SHORT):
        long, short = lines(plot, 2)
        assert long[-1][0] == short[-1][0]
        # half as long
        assert short[-1][0] - short[0][0] == pytest.approx((long[-1][0] - long[0][0]) / 2)


def test_plots_stand_below_each_other_on_one_axis() -> None:
    starts = {lines(plot, 2)[0][0][0] for plot in plots(LONG, SHORT)}
    assert len(starts) == 1


def test_a_joint_is_marked_on_each_leader() -> None:
    dots = [path for path in paths(plots(LONG, SHORT)[0]) if path.fill == 0.0]
    assert len(dots) == 2


def test_what_has_no_known_density_is_not_drawn_as_a_string_and_told() -> None:
    diameter, impedance, _ = plots(THREAD, LONG)
    assert len(lines(diameter, 2)[0]) == 4
    assert len(lines(impedance, 2)[0]) == 2
    assert "No density is known of furled thread" in words(page(THREAD, LONG))


def test_wire_is_not_drawn_as_stiff_as_nylon() -> None:
    # Steel bends 50 times as hard as nylon of its diameter: `cards/practice/materials.toml`.
    wired = leader(recipe(section("60 in", "0.020 in"), section("12 in", "0.010 in", "wire")))
    stiffness = plots(wired, LONG)[-1]
    (_, above), (_, below) = lines(stiffness, 1)[0][0], lines(stiffness, 1)[0][-1]
    assert below < above
    hard = leader(recipe(section("60 in", "0.020 in", "hard nylon"),
                         section("12 in", "0.010 in", "stranded wire")))  # fmt: skip
    assert len(lines(plots(hard, LONG)[-1], 1)[0]) == 2


def test_what_bends_in_a_way_that_is_not_known_has_a_diameter_alone() -> None:
    wire = leader(recipe(section("20 in", "0.020 in", "coated wire"), butt="none", fly="none"))
    assert len(plots(wire, wire)) == 1
    assert profile_chart(told(wire), scale(), 500).height > 0


def test_leaders_are_told_apart_without_colour() -> None:
    assert len(set(STYLES)) == len(STYLES) == 6


@given(chosen=st.lists(seeds, min_size=2, max_size=6))
@example([189, 27507, 999999])  # measures so wide that a leader's name had no room in larger type
@settings(max_examples=25, deadline=None)
def test_every_page_is_readable(chosen: list[int]) -> None:
    leaders = [tieable(seed, None) for seed in chosen]
    for wording in (ENGLISH, Wording("es", ",")):
        assert faults(page(*leaders, wording=wording), MARGIN - 3) == []  # the foot descends


def test_small_paper_is_refused() -> None:
    with pytest.raises((TooSmall, TooWide)):
        page(*[LONG, SHORT] * 3, on="A6")
