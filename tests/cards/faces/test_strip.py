"""A knot's strip: what it says in which frame, and that it keeps to its room."""

import pytest

from tagend.cards.faces.block import Block
from tagend.cards.faces.strip import strip
from tagend.cards.figures.frames import knot_frames
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knot, Sides
from tagend.cards.words.language import wording_in
from tagend.cards.words.lessons import Lesson, lessons
from tagend.layouts.paper.face import Path, TextRun
from tests.told import scale, told
from tests.written import SIX, leader

SCALE = scale()
WIDTH, HEIGHT = 225.0, 30.0  # points: the text of a pocket card
TURNS = Sides(4, 5)


def lesson_of(knot: Knot, turns: tuple[Sides[int], ...] = (TURNS,)) -> Lesson:
    return Lesson(
        knot=knot, turns=turns, name=knot.name, steps=(), laid="lap 9 3/4 in", seat=knot.seat
    )


def shown(name: str, width: float = WIDTH, height: float = HEIGHT) -> Block:
    block = strip(lesson_of(load_knots().find(name)), SCALE, width, height)
    assert block is not None
    return block


def texts(block: Block) -> list[TextRun]:
    return [item for item in block.items if isinstance(item, TextRun)]


def said(block: Block) -> str:
    return " ".join(run.text for run in texts(block))


every_knot = pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)


@every_knot
def test_each_frame_has_its_number_and_the_first_its_lap(knot: Knot) -> None:
    count = len(knot_frames(knot, TURNS.heavy, TURNS.light))
    block = shown(knot.name)
    numbers = [run.text for run in texts(block) if run.font == "bold"]
    assert numbers == [str(number) for number in range(1, count + 1)]
    (one, two) = (next(r for r in texts(block) if r.text == number) for number in ("1", "2"))
    lap = next(run for run in texts(block) if run.text.startswith("lap"))
    assert lap.y == one.y
    assert one.x < lap.x
    assert lap.x < two.x or two.y > one.y


@every_knot
def test_a_strip_keeps_to_its_width_and_its_type_can_be_read(knot: Knot) -> None:
    for width in (140.0, WIDTH):
        block = strip(lesson_of(knot), SCALE, width, HEIGHT)
        if block is None:
            continue
        for item in block.items:
            if isinstance(item, TextRun):
                assert item.size >= 7.6
                assert item.x + item.width <= width + 0.01
            elif isinstance(item, Path):
                for step in item.steps:
                    assert all(-0.5 <= x <= width + 0.5 for x in step[1::2])
                    assert all(-0.5 <= y <= block.height + 0.5 for y in step[2::2])


@every_knot
def test_no_words_stand_in_the_drawing(knot: Knot) -> None:
    block = shown(knot.name)
    spots = [
        (x, y)
        for item in block.items
        if isinstance(item, Path)
        for step in item.steps
        for x, y in zip(step[1::2], step[2::2], strict=True)
    ]
    for run in texts(block):
        box = run.x, run.y - 0.5 * run.size, run.x + run.width, run.y
        assert not any(box[0] < x < box[2] and box[1] < y < box[3] for x, y in spots)


def test_turns_are_told_where_they_are_wound() -> None:
    block = shown("blood")
    four, five = (next(r for r in texts(block) if r.text == f"{n} turns") for n in (4, 5))
    assert four.x < five.x
    assert "2 passes" in said(strip_of("double surgeon's", Sides(2, 2)))


def strip_of(name: str, *turns: Sides[int]) -> Block:
    block = strip(lesson_of(load_knots().find(name), turns), SCALE, WIDTH, HEIGHT)
    assert block is not None
    return block


def test_turns_that_differ_by_place_are_told_both() -> None:
    assert "4 or 6 turns" in said(strip_of("blood", Sides(4, 5), Sides(6, 5)))


def test_a_narrow_strip_takes_more_rows() -> None:
    assert shown("blood", 120).height > 1.3 * shown("blood").height


def test_a_leaders_lessons_tell_their_laps_in_the_shops_language() -> None:
    spanish = wording_in("es", None)
    for lesson in lessons(told(leader(SIX), spanish)):
        block = strip(lesson, SCALE, WIDTH, HEIGHT)
        assert block is not None
        assert ("solape" in said(block)) == lesson.knot.lapped
        assert "turn" not in said(block)
