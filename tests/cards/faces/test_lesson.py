"""How a knot is tied, on a card: its strip keeps to the width, whatever its turns."""

import pytest
from msgspec.structs import replace

from tagend.cards.faces.lesson import HEIGHTS, SLIM, has_figure, lesson_block
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import LENGTHS, TIED, Knot, Sides
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.lessons import Lesson, counted
from tagend.layouts.paper.face import Face
from tests.seen import faults, words
from tests.told import scale

WIDTHS = (108.0, 140.0, 225.0, 360.0)
SAID = dict.fromkeys((*LENGTHS, *TIED), "9 3/4 in")
TURNS = (Sides(4, 6), Sides(5, 7), Sides(7, 9))
SCALE = scale()


def lesson_of(knot: Knot, turns: Sides[int], name: str) -> Lesson:
    return Lesson(
        knot=knot,
        turns=(turns,),
        name=name,
        steps=counted(knot.steps, [turns], SAID, ENGLISH),
        caution=knot.caution,
        laid="lap 9 3/4 in",
        seat=knot.seat,
    )


@pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)
def test_a_strip_keeps_to_the_width_and_takes_the_room_that_was_asked_for(knot: Knot) -> None:
    for width in WIDTHS:
        for turns in TURNS:
            lesson = lesson_of(knot, turns, knot.name)
            for height in (SLIM, HEIGHTS[3]):
                block = lesson_block(lesson, SCALE, width, height, "seat")
                if block is not None:
                    assert faults(Face("knot", width, block.height + 3, block.items), 0) == []


@pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)
def test_half_a_bank_card_holds_two_frames_of_a_knot_or_more(knot: Knot) -> None:
    lesson = lesson_of(knot, knot_turns(knot), knot.name)
    if has_figure(lesson):
        tries = (lesson_block(lesson, SCALE, 108.0, height, "none") for height in HEIGHTS)
        block = next(each for each in tries if each is not None)
        assert {"1", "2"} <= set(words(Face("knot", 108, 99, block.items)).split())


def knot_turns(knot: Knot) -> Sides[int]:
    """Return the turns that it has in line of middle thickness."""
    if not knot.turns:
        return Sides(0, 0)
    rung = knot.turns[len(knot.turns) // 2]
    return Sides(rung.heavy, rung.light)


def test_a_knot_that_is_not_drawn_is_told_step_by_step() -> None:
    plain = replace(load_knots().find("blood"), figure=False)
    block = lesson_block(lesson_of(plain, TURNS[0], "A knot"), SCALE, 200, SLIM, "none")
    assert block is not None
    shown = words(Face("knot", 200, block.height, block.items))
    assert all(f"{n} " in shown for n in range(1, len(plain.steps) + 1))


def test_a_persons_own_name_keeps_its_capitals() -> None:
    knot = load_knots().find("blood")
    lesson = lesson_of(knot, Sides(5, 6), "DG loop")
    block = lesson_block(lesson, SCALE, 200, SLIM, "none")
    assert block is not None
    assert "DG loop" in words(Face("knot", 200, block.height, block.items))


@pytest.mark.parametrize("width", WIDTHS)
def test_two_strands_are_told_apart_wherever_they_are_drawn(width: float) -> None:
    for name in ("blood", "triple surgeon's", "albright"):
        knot = load_knots().find(name)
        lesson = replace(lesson_of(knot, knot_turns(knot), name), strands=knot.roles)
        for height in HEIGHTS:
            block = lesson_block(lesson, SCALE, width, height, "none")
            if block is not None:
                shown = words(Face("knot", width, 99, block.items)).split()
                assert knot.roles[1] in shown


def test_frames_alone_are_numbered_where_words_stand_below_them() -> None:
    knot = load_knots().find("blood")
    lesson = lesson_of(knot, TURNS[0], "blood")
    block = lesson_block(lesson, SCALE, 225.0, SLIM, "steps")
    assert block is not None
    shown = words(Face("knot", 225, block.height, block.items)).split()
    assert shown.count("1") == shown.count("2") == 1
