from collections.abc import Mapping

import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.practice.knot_file import knots_with_own, load_knots
from tagend.cards.practice.knots import Rung, Takes
from tagend.layouts.base.faults import Refused

OWN = {
    "code": "MY",
    "places": ["fly"],
    "straight": "yes",
    "takes": {"body": 12},
    "steps": ["Thread the eye.", "Tie it."],
    "seat": "Wet; draw slowly.",
}

ANYTHING = st.recursive(
    st.one_of(st.text(max_size=8), st.integers(), st.floats(), st.booleans(), st.dates()),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(st.text(max_size=5), inner, max_size=3)
    ),
    max_leaves=5,
)
ROWS = st.lists(st.fixed_dictionaries({"each": ANYTHING}, optional={"from": ANYTHING}), min_size=1)
SIDES = st.fixed_dictionaries({}, optional=dict.fromkeys(["core", "loop", "heavy"], ANYTHING))
KEYS = ["code", "places", "takes", "steps", "also", "mixed", "turns", "extra_turns", "wire", "x"]


def faults(own: Mapping[str, object]) -> list[str]:
    with pytest.raises(Refused) as refusal:
        knots_with_own(own)
    return str(refusal.value).splitlines()


def refused_at(key: str, value: object) -> list[str]:
    try:
        knots_with_own({"my loop": {**OWN, key: value}})
    except Refused as refusal:
        return [fault.where for fault in refusal.faults]
    return []


def fault(**keys: object) -> str:
    (found,) = faults({"my loop": {**OWN, **keys}})
    return found


def test_an_own_knot_is_found_beside_ours() -> None:
    knots = knots_with_own({"my loop": OWN})
    assert knots.find("My Loop").takes.heavy == Takes(body=12)
    assert knots.by_code("MY").name == "my loop"
    assert knots.rows[:-1] == load_knots().rows


def test_own_keys_change_one_of_our_knots_and_leave_the_rest() -> None:
    ours = load_knots().find("blood")
    own = knots_with_own({"Blood knot": {"turns": [{"each": 6}]}}).find("blood")
    assert own.turns == (Rung(6, 6),)
    assert (own.name, own.steps, own.takes) == (ours.name, ours.steps, ours.takes)


def test_our_order_of_knots_stays() -> None:
    knots = knots_with_own({"blood": {"seat": "Wet; slow."}})
    assert [knot.name for knot in knots] == [knot.name for knot in load_knots()]


def test_own_lengths_replace_ours() -> None:
    knots = knots_with_own({"hold": [{"length": "5 cm"}], "loop": "20 mm"})
    assert [row.length_mm for row in knots.hold] == [50]
    assert knots.loop_mm == 20
    assert knots.tag_mm == load_knots().tag_mm


def test_own_turns_need_no_names_of_sides() -> None:
    turns = [{"from": "0.5 mm", "each": 3}, {"heavy": 4, "light": 5}]
    own = {**OWN, "places": ["joint"], "mixed": "no", "turns": turns}
    assert knots_with_own({"my loop": own}).find("my loop").turns == (
        Rung(3, 3, Fraction(1, 2)),
        Rung(4, 5),
    )


def test_each_side_of_a_joint_may_take_its_own() -> None:
    takes = {"heavy": {"body": 15}, "light": {"core": 3, "body": 10}}
    own = {**OWN, "places": ["joint"], "mixed": "no", "takes": takes, "turns": [{"each": 9}]}
    sides = knots_with_own({"my joint": own}).find("my joint").takes
    assert (sides.heavy.core, sides.light.core) == (0, 3)


@given(st.sampled_from(KEYS), st.one_of(ANYTHING, ROWS, SIDES))
@settings(max_examples=200)
def test_whatever_stands_under_a_key_is_read_or_refused(key: str, value: object) -> None:
    assert all(where.startswith("my loop") for where in refused_at(key, value))


def test_a_heading_that_would_upset_a_terminal_is_quoted() -> None:
    (found,) = faults({"my\x1bloop": OWN})
    assert found.startswith(r"'my\x1bloop', name: U+001B")


def test_what_is_no_table_is_refused() -> None:
    assert faults({"my loop": "blood"}) == [
        'my loop: this is not a table; write its keys under [knots."my loop"]'
    ]


def test_a_missing_key_is_named() -> None:
    own = {key: value for key, value in OWN.items() if key != "seat"}
    (found,) = faults({"my loop": own})
    assert found.startswith("my loop, seat: this key is missing")


def test_a_misspelt_key_is_met_with_the_near_one() -> None:
    assert fault(cauton="Slow.") == "my loop: no key is called 'cauton'; did you mean caution?"


def test_a_name_is_written_once() -> None:
    assert fault(name="loop") == "my loop, name: the heading is the name; leave this key out"


def test_every_fault_is_told_at_once() -> None:
    found = faults({"my loop": {**OWN, "code": "my", "straight": "so-so"}, "blood": {"turns": 5}})
    assert found == [
        "blood, turns: this is not a list of 1 to 9 rows; write them in brackets: [ , ]",
        "my loop, code: 'my' cannot be a code; write 1 to 3 of A to Z and 0 to 9, a letter first",
        "my loop, straight: 'so-so' is not known; write one of: yes, nearly, no",
    ]


def test_a_code_begins_with_a_letter() -> None:
    for code in ("2", "2B", "ABCD", "", 7):
        assert "cannot be a code" in fault(code=code)


def test_a_taken_code_is_refused() -> None:
    assert fault(code="B") == "my loop, code: 'B' is the code of blood; choose another"


def test_a_taken_name_is_refused_at_the_knot_that_a_person_wrote() -> None:
    assert fault(also=["barrel"]) == "my loop: 'barrel' already means blood; choose another name"
    assert faults({"blood": {"also": ["half blood"]}}) == [
        "blood: 'half blood' already means clinch; choose another name"
    ]


def test_a_knot_cannot_be_called_none() -> None:
    assert faults({"none": OWN}) == [
        "none, name: 'none' cannot be a name; choose one that tells it from the others"
    ]


def test_an_unknown_place_is_refused() -> None:
    assert fault(places=["fly", "reel"]) == (
        "my loop, places, place 2: 'reel' is not known; write one of: line, butt, joint, ring, fly"
    )


def test_a_step_longer_than_a_line_is_refused() -> None:
    assert fault(steps=["Wet.", "x" * 71]) == (
        "my loop, steps, step 2: this text has 71 characters; write at most 70"
    )


def test_a_count_that_is_no_turns_is_refused() -> None:
    assert fault(steps=["Wind {tunrs} turns."], turns=[{"each": 5}]) == (
        "my loop, steps: {tunrs} counts nothing; write {turns}, {heavy} or {light}"
    )


def test_a_step_may_ask_for_a_length_and_needs_no_turns_for_it() -> None:
    steps = ["Fold the end back by {fold}."]
    assert knots_with_own({"my loop": {**OWN, "steps": steps}}).find("my loop").steps == (*steps,)


def test_turns_are_whole_numbers() -> None:
    assert fault(turns=[{"each": 3.5}]) == (
        "my loop, turns, row 1, each: 3.5 is not a whole number; write a whole number"
    )


@pytest.mark.parametrize(
    "turns",
    [
        [{"each": 5}, {"from": "0.020 in", "each": 4}],
        [{"from": "0.020 in", "each": 4}],
        [{"from": "0.010 in", "each": 5}, {"from": "0.020 in", "each": 4}, {"each": 6}],
    ],
    ids=["upside down", "no last row", "unsorted"],
)
def test_a_ladder_goes_down_to_the_finest_strand(turns: object) -> None:
    assert fault(turns=turns) == (
        "my loop, turns: the rows do not go down to the finest strand; "
        "begin with the thickest `from`, and leave it out in the last row alone"
    )


def test_a_ladder_of_hands_goes_down_too() -> None:
    (found,) = faults({"hold": [{"from": "0.020 in", "length": "4 in"}]})
    assert found.startswith("hold: the rows do not go down to the finest strand")


def test_a_side_is_not_counted_twice() -> None:
    assert fault(turns=[{"each": 5, "light": 6}]) == (
        "my loop, turns, row 1: `each` stands beside a single side; write `each`, or both sides"
    )


def test_a_diameter_without_a_unit_is_refused_with_its_row() -> None:
    assert fault(turns=[{"from": 0.020, "each": 4}, {"each": 5}]) == (
        "my loop, turns, row 1, from: 0.02 has no unit; write a diameter with its unit, "
        'such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
    )


def test_a_core_of_four_strands_is_refused() -> None:
    found = fault(takes={"core": 4})
    assert found.startswith("my loop, takes, core: 4 is out of range")


def test_turns_round_a_core_are_counted() -> None:
    assert fault(takes={"core": 2}) == (
        "my loop, turns: the steps or the core need turns; write turns = [{ each = 5 }]"
    )


def test_only_a_joint_has_two_sides() -> None:
    assert fault(takes={"heavy": {"body": 1}, "light": {"body": 2}}) == (
        "my loop, takes: only a joint has two sides; write one table for both"
    )


@pytest.mark.parametrize(
    "more",
    [
        {"turns": [{"heavy": 2, "light": 8}]},
        {"turns": [{"each": 5}], "extra_turns": {"ratio": 1.3, "light": 2, "most": 7}},
    ],
)
def test_a_knot_in_one_strand_has_one_number_of_turns(more: dict[str, object]) -> None:
    (found,) = faults({"my loop": {**OWN, **more}})
    assert found.startswith("my loop, turns: only a joint has two sides")


def test_a_joint_says_what_it_joins() -> None:
    assert fault(places=["joint"]) == (
        'my loop, mixed: a joint must say it; write "yes", "no" or "hard nylon"'
    )
