"""How a knot is tied, on a card: a lesson and a width in; its steps, a line each, out."""

from cards.faces.block import Block, Scale, line_block, stacked
from cards.tying import Lesson
from layouts.face import Item, shifted
from layouts.text import break_lines, set_line

_FIGURE = 36.0  # points at factor 1: the height of a figure's stages
_GAP = 16.0  # points between two stages
LEAST_FIGURE = 15.0  # points; no knot's stages are lower


def lesson_block(lesson: Lesson, scale: Scale, width: float, *, drawn: bool) -> Block:
    """Return the knot's name, its figure if `drawn`, its numbered steps and its caution."""
    name = line_block(set_line(lesson.knot.name.capitalize(), "bold", scale.body))
    steps = [
        _step(f"{number}", step, scale, width) for number, step in enumerate(lesson.steps, start=1)
    ]
    care = [_step("!", lesson.knot.caution, scale, width)] if lesson.knot.caution else []
    figure = [_figure(lesson, scale, width)] if drawn else []
    return stacked([name, *figure, *steps, *care])


def _figure(lesson: Lesson, scale: Scale, width: float) -> Block:
    """Set the knot's stages side by side; nothing for a knot that has no figure."""
    from cards.faces.figures.figure import knot_figure

    thick, thin = lesson.counts[0]
    stages = knot_figure(lesson.knot, thick, thin, (width - _GAP) / 2, _FIGURE * scale.factor)
    if stages is None:
        return Block((), 0.0)
    height = max(stage.height for stage in stages)
    items: list[Item] = []
    x = 0.0
    for stage in stages:
        items += shifted(stage.items, x, 2 + (height - stage.height) / 2)
        x += stage.width + _GAP
    return Block(tuple(items), height + 5)


def _step(mark: str, words: str, scale: Scale, width: float) -> Block:
    """Set a step with its number hanging at the left."""
    indent = 1.1 * scale.small
    lines = [line_block(line) for line in break_lines(words, "medium", scale.small, width - indent)]
    text = stacked(lines)
    number = line_block(set_line(mark, "bold", scale.small))
    return Block((*number.items, *shifted(text.items, indent, 0)), text.height)
