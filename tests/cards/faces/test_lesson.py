"""How a knot is tied, on a card: its figure keeps to the width, whatever its turns."""

import pytest

from tagend.cards.faces.lesson import LEAST_FIGURE, lesson_block
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import LENGTHS, TIED, Knot, Sides
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.lessons import Lesson, counted
from tagend.layouts.paper.face import Path
from tests.told import scale

WIDTHS = (140.0, 225.0, 360.0)
SAID = dict.fromkeys((*LENGTHS, *TIED), "9 3/4 in")
TURNS = (Sides(4, 6), Sides(5, 7), Sides(7, 9))
SCALE = scale()


def lesson_of(knot: Knot, turns: Sides[int], name: str) -> Lesson:
    steps = counted(knot.steps, [turns], SAID, ENGLISH)
    return Lesson(knot=knot, turns=(turns,), name=name, steps=steps, caution=knot.caution)


@pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)
def test_a_figure_keeps_to_the_width_and_is_no_lower_than_promised(knot: Knot) -> None:
    for width in WIDTHS:
        for turns in TURNS:
            lesson = lesson_of(knot, turns, knot.name)
            plain = lesson_block(lesson, SCALE, width, "none")
            drawn = lesson_block(lesson, SCALE, width, "drawn")
            xs = [
                x
                for item in drawn.items
                if isinstance(item, Path)
                for step in item.steps
                for x in step[1::2]
            ]
            assert all(isinstance(x, float | int) and -1e-6 <= x <= width + 1e-6 for x in xs)
            assert not xs or drawn.height - plain.height >= LEAST_FIGURE


def test_a_persons_own_name_keeps_its_capitals() -> None:
    knot = load_knots().find("blood")
    lesson = lesson_of(knot, Sides(5, 6), "DG loop")
    assert "DG loop" in str(lesson_block(lesson, SCALE, 200, "none").items)
