"""How a knot is tied, on a card: a lesson and a width in; its steps, a line each, out."""

from typing import Literal, TypeAlias

from cards.faces.block import Block, Scale, hung, line_block, stacked
from cards.tying import Lesson
from layouts.face import Item, shifted
from layouts.text import set_line

_FIGURE = 36.0  # points at factor 1: the height of a figure's stages
_GAP = 16.0  # points between two stages
LEAST_FIGURE = 15.0  # points; no knot's stages are lower


Figure: TypeAlias = Literal["none", "room", "drawn"]  # "room" is as high, and takes no drawing


def lesson_block(lesson: Lesson, scale: Scale, width: float, figure: Figure) -> Block:
    """Return the knot's name, its figure if wanted, its numbered steps and its caution."""
    name = line_block(set_line(lesson.name.capitalize(), "bold", scale.body))
    steps = [
        hung(f"{number}", step, scale, width) for number, step in enumerate(lesson.steps, start=1)
    ]
    care = [hung("!", lesson.knot.caution, scale, width)] if lesson.knot.caution else []
    shown = [] if figure == "none" else [_figure(lesson, scale, width, drawn=figure == "drawn")]
    return stacked([name, *shown, *steps, *care])


def _figure(lesson: Lesson, scale: Scale, width: float, *, drawn: bool) -> Block:
    """Set the knot's stages side by side; nothing for a knot that has no figure."""
    from cards.faces.figures.figure import figure_height, knot_figure

    of = (lesson.knot, *lesson.counts[0], (width - _GAP) / 2, _FIGURE * scale.factor)
    height = figure_height(*of)
    if height is None:
        return Block((), 0.0)
    items: list[Item] = []
    x = 0.0
    for stage in (knot_figure(*of) or ()) if drawn else ():
        items += shifted(stage.items, x, 2 + (height - stage.height) / 2)
        x += stage.width + _GAP
    return Block(tuple(items), height + 5)
