"""How a knot is tied, on a card: its figure keeps to the width, whatever its turns."""

import pytest

from tagend.cards.faces.lesson import LEAST_FIGURE, lesson_block
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import Knot
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Path
from tests.told import scale

WIDTHS = (140.0, 225.0, 360.0)
TURNS = ((4, 6), (5, 7), (7, 9))
SCALE = scale()


@pytest.mark.parametrize("knot", load_knots().rows, ids=lambda knot: knot.name)
def test_a_figure_keeps_to_the_width_and_is_no_lower_than_promised(knot: Knot) -> None:
    for width in WIDTHS:
        for count in TURNS:
            steps = knot.steps_with(f"{count[0]}", f"{count[1]}")
            lesson = Lesson(knot, (count,), knot.name, steps)
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
    lesson = Lesson(knot, ((5, 6),), "DG loop", knot.steps_with("5", "6"))
    assert "DG loop" in str(lesson_block(lesson, SCALE, 200, "none").items)
