"""A knot's turns are decided once: all that is cut, printed and told of one knot says the same."""

import json
import re
from collections.abc import Iterator

import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.base.units import parse_diameter
from tagend.cards.leader.allowance import Allowance, wraps_mm
from tagend.cards.leader.joints import Half
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Sides, end_turns, joint_turns
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import Lesson, lessons
from tagend.cards.words.tying_words import turn_words, tying_lines
from tagend.cards.words.worksheet_json import json_line
from tests.cards.figures.stages import knot_strands
from tests.strategies import recipes
from tests.tieable import counts, seeds, tieable
from tests.told import in_english
from tests.written import PRACTICE, leader, practice, recipe, section

KNOTS = load_knots()
BLOOD = KNOTS.find("blood")
COMMON_ROWS = '{ from = "0.020 in", each = 2 }, { from = "0.011 in", each = 4 }, { each = 8 }'
# A person whose fly knots and joints all have turns that depend on the strand.
LADDERS = practice(
    "".join(f'[knots."{knot.name}"]\nturns = [{COMMON_ROWS}]\n' for knot in KNOTS if knot.turns)
)


def mm(diameter: str) -> Fraction:
    return parse_diameter(diameter).mm


def ladder(knot: str, *diameters: str) -> list[int]:
    found = KNOTS.find(knot)
    return [joint_turns(found, mm(d), mm(d)).light for d in diameters]


def test_turns_grow_as_strands_get_finer() -> None:
    assert ladder("blood", "0.030 in", "0.023 in", "0.013 in", "4X", "5X") == [3, 4, 5, 7, 7]


def test_turns_go_by_the_own_strand_and_grow_by_the_step_on_the_light_side() -> None:
    # 5 each, and 2 more on the light side for 1.31 times the diameter.
    assert joint_turns(BLOOD, mm("0.017 in"), mm("0.013 in")) == Sides(5, 5 + 2)
    assert joint_turns(BLOOD, mm("0.51 mm"), mm("0.41 mm")) == Sides(4, 5 + 2)  # 0.020, 0.016 in
    assert joint_turns(BLOOD, mm("0.017 in"), mm("0.015 in")) == Sides(5, 5)


def test_no_blood_knot_has_more_turns_than_print_has() -> None:
    # 4 to 7 a side in print; 3 from 0.020 in up: common practice, no source.
    sizes = [Fraction(thou) * Fraction("0.0254") for thou in range(3, 41)]
    for heavy in sizes:
        for light in (size for size in sizes if size <= heavy):
            turns = joint_turns(BLOOD, heavy, light)
            assert 3 <= turns.heavy <= turns.light <= 7
            assert turns.heavy > 3 or heavy >= mm("0.020 in")


@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [("0.009 in", "0.23 mm"), ("0.011 in", "0.28 mm"), ("0.020 in", "0.51 mm")],
)
def test_a_strand_in_printed_millimetres_takes_the_turns_of_its_inches(
    inches: str, millimetres: str
) -> None:
    assert ladder("blood", inches) == ladder("blood", millimetres)


def test_a_knot_without_turns_counts_none() -> None:
    assert ladder("perfection loop", "0.023 in") == [0]
    assert end_turns(KNOTS.find("perfection loop"), mm("0.023 in")) == Sides(0, 0)


def test_a_clinch_in_thick_line_makes_the_printed_three_and_a_half_turns() -> None:
    # D. E. Avery, The New Encyclopedia of Knots, p. 117; the half is the way into the small loop.
    assert end_turns(KNOTS.find("clinch"), mm("0.024 in")) == Sides(3, 3)


@pytest.mark.parametrize(("upper", "lower"), [("2X", "2X"), ("0.010 in", "0.024 in")])
def test_the_thicker_strand_is_the_thick_side_and_of_like_ones_the_upper(
    upper: str, lower: str
) -> None:
    both = leader(recipe(section("3 ft", upper, knot="doubled blood"), section("3 ft", lower)))
    (joint,) = both.joints
    above, below = both.pieces[0].at_fly, both.pieces[1].at_butt
    # The thin strand is doubled: it alone takes both legs of its turns.
    doubled = ["doubled" in in_english(allowance.shares[0].how) for allowance in (above, below)]
    assert doubled == ([False, True] if upper == lower else [True, False])
    assert joint.sides == (("heavy", "light") if upper == lower else ("light", "heavy"))


def reckoned(of: Leader) -> Iterator[tuple[Half, Allowance]]:
    """Yield each strand in a knot with what its piece is cut longer for it."""
    ends = [(piece.at_butt, piece.at_fly) for piece in of.pieces]
    halves = [of.butt.half]
    for joint in of.joints:
        halves += [joint.above, joint.below]
    halves.append(of.fly.half)
    for half, allowance in zip(halves, (end for both in ends for end in both), strict=True):
        if half is not None and allowance.knot is not None:
            yield half, allowance


def wound(allowance: Allowance) -> int | None:
    """Return the turns that an allowance says it was reckoned with."""
    says = [in_english(share.how) for share in allowance.shares if share.into == "wraps"]
    return int(says[0].split()[0]) if says else None


def check_all_say_the_same(of: Leader, by: Practice) -> None:
    told = {lesson.knot.name: lesson for lesson in lessons(Told(of, ENGLISH))}
    for half, allowance in reckoned(of):
        takes = half.knot.takes.of(half.side)
        if takes.core:
            assert wound(allowance) == (half.turns or None)
            around = half.own_mm if takes.around == "itself" else half.other_mm
            line = [share.mm for share in allowance.shares if share.into == "wraps"]
            each = wraps_mm(half.turns, half.own_mm, around, takes.core)
            assert line == ([takes.strands * each] if half.turns else [])
        assert half.turns in {turns.of(half.side) for turns in told[half.knot.name].turns}
    for joint in of.joints:
        check_lesson(told[joint.knot.name], joint.turns)
    for end in (of.butt, of.fly):
        if end.half is not None and not end.made:  # what is bought with its piece is not taught
            # A loop that joins the fly line is tied by a knot of its own, which has the turns.
            check_lesson(told[end.half.knot.name], end.turns)
    check_joints(of)
    check_json(of, by)


def check_lesson(lesson: Lesson, turns: Sides[int]) -> None:
    """Hold the steps and the figure of a lesson against the turns at one place."""
    assert turns in lesson.turns
    if len(set(lesson.turns)) > 1:
        return  # a range, which the words of a lesson are tested for
    for said, step in zip(lesson.steps, lesson.knot.steps, strict=True):
        for blank, count in (("{heavy}", turns.heavy), ("{light}", turns.light)):
            if blank in step:
                assert f"{count}" in re.findall(r"\d+", said)
        if "{turns}" in step:
            assert f"{turns.light}" in re.findall(r"\d+", said)
    knot_strands(lesson.knot, turns.heavy, turns.light)  # the figure is drawn of the same two


def check_joints(of: Leader) -> None:
    """Hold the words of joints on the card and on the bench sheet against their turns."""
    at_joints = [line for line in tying_lines(Told(of, ENGLISH)) if line.where[0].isdigit()]
    for joint, line in zip(of.joints, at_joints, strict=True):
        said = turn_words(joint, int(line.where.split()[0]), ENGLISH)
        assert line.says.startswith(", ".join(filter(None, (joint.knot.name, said))))
        if joint.knot.counted:
            on_card = Told(of, ENGLISH).joint(joint).removeprefix(joint.knot.name).strip()
            turns = (joint.above.turns, joint.below.turns)
            assert on_card == "+".join(str(count) for count in turns if count)


def check_json(of: Leader, by: Practice) -> None:
    told = json.loads(json_line(worksheet(of.recipe, by)))
    turns = [told["butt_turns"], *(each["turns"] for each in told["sections"][:-1])]
    assert turns[0] == of.butt.turns.heavy
    for joint, above_below in zip(of.joints, turns[1:], strict=True):
        assert above_below == [joint.above.turns, joint.below.turns]
    assert told["sections"][-1]["turns"] is None
    assert told["fly_turns"] == of.fly.turns.heavy


@given(seeds, counts, st.sampled_from([PRACTICE, LADDERS]))
@settings(max_examples=60, deadline=None)
def test_all_that_is_said_of_a_tieable_leader_says_the_same_turns(
    seed: int, count: int | None, by: Practice
) -> None:
    check_all_say_the_same(leader(tieable(seed, count).recipe, by), by)


@given(recipes, st.sampled_from([PRACTICE, LADDERS]))
@settings(max_examples=80, deadline=None)
def test_all_that_is_said_of_any_leader_says_the_same_turns(of: Recipe, by: Practice) -> None:
    check_all_say_the_same(leader(of, by), by)


def test_a_fly_knot_in_thick_line_is_cut_and_told_alike() -> None:
    of = leader(recipe(section("9 ft", "0.030 in"), fly="clinch"), LADDERS)
    assert wound(of.pieces[0].at_fly) == 2
    lesson = lessons(Told(of, ENGLISH))[-1]
    assert (lesson.knot.name, lesson.turns) == ("clinch", (Sides(2, 2),))
    assert "Wind the tag 2 turns" in " ".join(lesson.steps)
