"""How a knot is tied, on a card: a lesson and a width in; its figure, and its steps, out."""

from functools import lru_cache

from tagend.cards.faces.block import (
    Block,
    Scale,
    hung,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Item, shifted

HEIGHTS = (15.0, 18.0, 22.0, 26.0, 31.0, 37.0, 44.0, 53.0, 64.0, 76.0)  # points, of figures
_GAP = 12.0  # points between two stages
_BELOW = 2.0  # points


@lru_cache(maxsize=4096)
def lesson_block(
    lesson: Lesson, scale: Scale, width: float, height: float, *, words: bool, drawn: bool
) -> Block | None:
    """Return the knot's name and its figure at most so high; below, its steps or how it is seated.

    A knot without a figure has its steps in any case. Not `drawn`, it only takes as much room. None
    where the figure finds no room.
    """
    heading = lesson.name[:1].upper() + lesson.name[1:]  # a person's own may have capitals
    title = text_block(
        " · ".join(filter(None, (heading, lesson.laid))), scale.bold, scale.small, width
    )
    figure = _figure(lesson, width, height, drawn=drawn)
    if figure is None and has_figure(lesson):
        return None
    shown = [title] if figure is None else [title, figure]
    if figure is not None and not words:
        return stacked([*shown, small_lines([lesson.seat], scale, width)])
    steps = (hung(f"{n}", step, scale, width) for n, step in enumerate(lesson.steps, start=1))
    care = [hung("!", lesson.caution, scale, width)] if lesson.caution else []
    return stacked([*shown, *steps, *care])


def has_figure(lesson: Lesson) -> bool:
    """Whether the knot can be drawn at all."""
    return _figure(lesson, 1000.0, 1000.0, drawn=False) is not None


@lru_cache(maxsize=1024)
def _figure(lesson: Lesson, width: float, height: float, *, drawn: bool) -> Block | None:
    """Set the knot's stages side by side."""
    from tagend.cards.figures.figure import figure_height, knot_figure

    first, box = lesson.turns[0], ((width - _GAP) / 2, height)
    of = (lesson.knot, first.heavy, first.light, *box)
    high = figure_height(*of)
    if high is None:
        return None
    items: list[Item] = []
    x = 0.0
    for stage in (knot_figure(*of) or ()) if drawn else ():
        items += shifted(stage.items, x, _BELOW + (high - stage.height) / 2)
        x += stage.width + _GAP
    return Block(tuple(items), high + 2 * _BELOW)
