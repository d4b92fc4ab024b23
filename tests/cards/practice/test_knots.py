import re
import tomllib
from fractions import Fraction
from typing import get_args

import pytest

from tagend.cards.base.units import parse_diameter
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import COUNT, Knot, Place, Side, turns
from tests.tree import ROOT

KNOTS = load_knots()
FILE = ROOT / "cards" / "practice" / "knots.toml"

every_knot = pytest.mark.parametrize("knot", KNOTS.rows, ids=lambda knot: knot.name)


def mm(diameter: str) -> Fraction:
    return parse_diameter(diameter).mm


def ladder(knot: str, *diameters: str) -> list[int]:
    found = KNOTS.find(knot)
    return [turns(found, mm(d), mm(d), "thin") for d in diameters]


@every_knot
def test_every_knot_names_its_source(knot: Knot) -> None:
    assert knot.source


@every_knot
def test_a_card_has_four_to_six_steps(knot: Knot) -> None:
    assert 4 <= len(knot.steps) <= 6


@every_knot
def test_steps_say_each_count_of_turns_that_varies(knot: Knot) -> None:
    said = set(COUNT.findall(" ".join(knot.steps)))
    for side in get_args(Side):
        counts = {getattr(rung, side) for rung in knot.turns}
        assert len(counts) < 2 or side in said or (said == {"turns"} and "joint" not in knot.places)


@every_knot
def test_steps_say_one_count_only_where_both_sides_have_it(knot: Knot) -> None:
    if "turns" in COUNT.findall(" ".join(knot.steps)):
        assert all(rung.thick == rung.thin for rung in knot.turns)


@every_knot
def test_a_knot_with_a_loop_or_turns_takes_line(knot: Knot) -> None:
    for takes in (knot.takes.thick, knot.takes.thin):
        assert takes.core or takes.body
        assert takes.hold >= takes.strands or takes.loop


@pytest.mark.parametrize("place", get_args(Place))
def test_every_place_has_a_knot(place: Place) -> None:
    assert any(place in knot.places for knot in KNOTS)


def test_every_key_is_explained_at_the_head_of_the_file() -> None:
    text = FILE.read_text("utf-8")
    head = text[: text.index("\nhold = [")]
    tables = [keys for keys in tomllib.loads(text).values() if isinstance(keys, dict)]
    keys = {key for keys in tables for key in keys}
    takes = {key for keys in tables for key in keys["takes"]}
    for key in keys | takes - {"thick", "thin"}:
        assert re.search(rf"^#.*\b{key}\b", head, re.MULTILINE), key


def test_turns_grow_as_strands_get_finer() -> None:
    assert ladder("blood", "0.030 in", "0.023 in", "0.013 in", "4X", "5X") == [3, 4, 5, 7, 7]


def test_turns_go_by_the_own_strand_and_grow_by_the_step_on_the_thin_side() -> None:
    blood = KNOTS.find("blood")
    thick, thin = mm("0.017 in"), mm("0.013 in")
    assert turns(blood, thick, thin, "thick") == 5
    assert turns(blood, thin, thick, "thin") == 7  # 5, and 2 for a step of 4 thousandths


def test_a_step_in_printed_millimetres_is_the_step_it_rounds() -> None:
    # 0.010 and 0.007 in are printed as 0.25 and 0.18 mm: 0.07 mm is a step of 0.003 in (0.0762).
    assert turns(KNOTS.find("blood"), mm("0.18 mm"), mm("0.25 mm"), "thin") == 7 + 2
    # 0.008 and 0.006 in are printed as 0.20 and 0.15 mm: 0.05 mm is a step of 0.002 in (0.0508).
    assert turns(KNOTS.find("blood"), mm("0.15 mm"), mm("0.20 mm"), "thin") == 7


@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [("0.009 in", "0.23 mm"), ("0.011 in", "0.28 mm"), ("0.020 in", "0.51 mm")],
)
def test_a_strand_in_printed_millimetres_takes_the_turns_of_its_inches(
    inches: str, millimetres: str
) -> None:
    assert ladder("blood", inches) == ladder("blood", millimetres)


def test_a_strand_of_0_33_mm_is_held_as_one_of_13_thousandths() -> None:
    assert mm("0.33 mm") < mm("0.013 in")
    assert KNOTS.hold_mm(mm("0.33 mm")) == KNOTS.hold_mm(mm("0.013 in")) == 3 * Fraction("25.4")


def test_a_knot_without_turns_counts_none() -> None:
    assert ladder("perfection loop", "0.023 in") == [0]


def test_thicker_line_is_held_by_a_longer_end() -> None:
    hands = [KNOTS.hold_mm(mm(size)) for size in ("0.023 in", "0.020 in", "0.015 in", "0.012 in")]
    assert hands == [Fraction("101.6"), Fraction("101.6"), Fraction("76.2"), Fraction("50.8")]


def test_steps_count_the_turns_of_each_side() -> None:
    steps = KNOTS.find("blood").steps_with(thick="4", thin="7")
    assert steps[1] == "Wind the thick tag 4 turns round the other, outwards."
    assert steps[3] == "Thin tag: 7 turns the other way, back through from below."


def test_wire_takes_only_the_knots_that_hold_on_it() -> None:
    size = mm("0.012 in")
    on_wire = {knot.name for knot in KNOTS if knot.takes_strand(size, wire=True)}
    assert on_wire == {"haywire twist", "albright", "swivel"}
    assert not KNOTS.find("haywire twist").takes_strand(size, wire=False)


def test_the_tucked_clinch_is_not_for_thick_line() -> None:
    tucked = KNOTS.find("improved clinch")
    assert tucked.takes_strand(mm("0.38 mm"), wire=False)  # 0.015 in as it is printed
    assert not tucked.takes_strand(mm("0.017 in"), wire=False)
