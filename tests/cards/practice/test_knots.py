import re
import tomllib
from typing import get_args

import pytest
from cfractions import Fraction

from tagend.cards.base.units import parse_diameter
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import COUNT, LENGTHS, Knot, Place, Side, step_for
from tests.tree import ROOT

KNOTS = load_knots()
FILE = ROOT / "cards" / "practice" / "knots.toml"

every_knot = pytest.mark.parametrize("knot", KNOTS.rows, ids=lambda knot: knot.name)


def mm(diameter: str) -> Fraction:
    return parse_diameter(diameter).mm


@every_knot
def test_every_knot_names_its_source(knot: Knot) -> None:
    assert knot.source


@every_knot
def test_a_card_has_four_to_eight_steps(knot: Knot) -> None:
    assert 4 <= len(knot.steps) <= 8


@every_knot
def test_steps_say_each_count_of_turns_that_varies(knot: Knot) -> None:
    said = set(COUNT.findall(" ".join(knot.steps))) - {*LENGTHS}
    for side in get_args(Side):
        counts = {getattr(rung, side) for rung in knot.turns}
        assert len(counts) < 2 or side in said or (said == {"turns"} and "joint" not in knot.places)


@every_knot
def test_steps_say_one_count_only_where_both_sides_have_it(knot: Knot) -> None:
    if "turns" in COUNT.findall(" ".join(knot.steps)):
        assert all(rung.heavy == rung.light for rung in knot.turns)


@every_knot
def test_a_knot_with_a_loop_or_turns_takes_line(knot: Knot) -> None:
    for takes in (knot.takes.heavy, knot.takes.light):
        assert takes.core or takes.body or knot.ties
        assert takes.hold >= takes.strands or takes.loop


@pytest.mark.parametrize("place", get_args(Place))
def test_every_place_has_a_knot(place: Place) -> None:
    assert any(place in knot.places for knot in KNOTS)


def test_every_key_is_explained_at_the_head_of_the_file() -> None:
    text = FILE.read_text("utf-8")
    head = text[: text.index("\nhold = [")]
    tables = [keys for keys in tomllib.loads(text).values() if isinstance(keys, dict)]
    keys = {key for keys in tables for key in keys}
    takes = {key for keys in tables for key in keys.get("takes", ())}
    for key in keys | takes - {"heavy", "light"}:
        assert re.search(rf"^#.*\b{key}\b", head, re.MULTILINE), key


def test_a_strand_of_0_33_mm_is_held_as_one_of_13_thousandths() -> None:
    assert mm("0.33 mm") < mm("0.013 in")
    hands = [step_for(KNOTS.hold, mm(size)).length_mm for size in ("0.33 mm", "0.013 in")]
    assert hands == [3 * Fraction("25.4")] * 2


def test_thicker_line_is_held_by_a_longer_end() -> None:
    sizes = [mm(size) for size in ("0.023 in", "0.020 in", "0.015 in", "0.012 in")]
    hands = [step_for(KNOTS.hold, size).length_mm for size in sizes]
    assert hands == [Fraction("101.6"), Fraction("101.6"), Fraction("76.2"), Fraction("50.8")]


def test_wire_alone_is_twisted() -> None:
    assert [knot.name for knot in KNOTS if knot.on == ("wire",)] == ["haywire twist"]


@every_knot
def test_what_a_knot_s_sides_are_tied_with_is_tied_in_one_strand(knot: Knot) -> None:
    for name in knot.ties:
        assert {"butt", "ring", "fly"} & {*KNOTS.find(name).places}


@every_knot
def test_only_a_knot_that_ties_each_side_by_itself_holds_on_every_strand(knot: Knot) -> None:
    assert "thread" not in knot.on or (knot.ties and knot.comes_made)


def test_the_tucked_clinch_is_not_for_thick_line() -> None:
    tucked = KNOTS.find("improved clinch")
    assert tucked.draws_up_on(mm("0.38 mm"))  # 0.015 in as it is printed
    assert not tucked.draws_up_on(mm("0.017 in"))
