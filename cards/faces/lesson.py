"""How a knot is tied, on a card: a lesson and a width in; its steps, a line each, out."""

from cards.faces.block import Block, Scale, line_block, stacked
from cards.tying import Lesson
from layouts.face import shifted
from layouts.text import break_lines, set_line


def lesson_block(lesson: Lesson, scale: Scale, width: float) -> Block:
    """Return the knot's name, its numbered steps and its caution."""
    name = line_block(set_line(lesson.knot.name.capitalize(), "bold", scale.body))
    steps = [
        _step(f"{number}", step, scale, width) for number, step in enumerate(lesson.steps, start=1)
    ]
    care = [_step("!", lesson.knot.caution, scale, width)] if lesson.knot.caution else []
    return stacked([name, *steps, *care])


def _step(mark: str, words: str, scale: Scale, width: float) -> Block:
    """Set a step with its number hanging at the left."""
    indent = 1.1 * scale.small
    lines = [line_block(line) for line in break_lines(words, "medium", scale.small, width - indent)]
    text = stacked(lines)
    number = line_block(set_line(mark, "bold", scale.small))
    return Block((*number.items, *shifted(text.items, indent, 0)), text.height)
