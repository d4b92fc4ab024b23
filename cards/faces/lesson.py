"""How a knot is tied, on a card: a lesson and a width in; its strip, and its steps, out."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Literal, TypeAlias

from tagend.cards.faces.block import (
    DROP,
    LEADING,
    Block,
    Scale,
    beside,
    hung,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.strip import strip
from tagend.cards.figures import frames
from tagend.cards.figures.frames import Frame, knot_frames
from tagend.cards.figures.ink import inked
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Item, Path, TextRun, rectangle, shifted
from tagend.layouts.paper.text import TooWide, set_line

SLIM = 0.0  # the height of a strip that is one row of frames, without words, and as low as can be
HEIGHTS = (SLIM, 18.0, 22.0, 26.0, 31.0, 37.0, 44.0, 53.0, 64.0)  # points at factor 1, of a frame

Words: TypeAlias = Literal["none", "seat", "steps"]  # that stand below a strip

_LEAST, _GOOD = 1.3, 1.6  # points at factor 1 of a strand in a slim strip
_GAP = 7.0  # points between its frames
_INDENT = 0.75  # small type sizes, for the number at a frame's left
_BELOW = 1.5  # points
_EDGE = 0.5  # points, of an outlined strand


@lru_cache(maxsize=256)
def lesson_block(
    lesson: Lesson, scale: Scale, width: float, height: float, words: Words
) -> Block | None:
    """Return the knot's name and its strip; below, what is asked for in words.

    A knot without a figure has its steps in any case. None where the strip finds no room.
    """
    heading = lesson.name[:1].upper() + lesson.name[1:]  # a person's own may have capitals
    shown: Block | None = None
    if has_figure(lesson):
        shown = _strip(lesson, scale, width, height * scale.factor)
        if shown is None:
            return None
    if shown is None or height == SLIM:
        heading = " · ".join(filter(None, (heading, lesson.laid)))
    title = text_block(heading, scale.bold, scale.small, width)
    if shown is not None and any(lesson.strands):
        title = _keyed(title, lesson, scale, width)
    if shown is not None and words != "steps":
        seat = [lesson.seat] if words == "seat" else []
        return stacked([title, shown, small_lines(seat, scale, width)])
    steps = (
        hung(f"{number}" if shown is None else "·", step, scale, width)  # frames have numbers too
        for number, step in enumerate(lesson.steps, start=1)
    )
    care = [hung("!", lesson.caution, scale, width)] if lesson.caution else []
    return stacked([title, *([shown] if shown is not None else []), *steps, *care])


def _keyed(title: Block, lesson: Lesson, scale: Scale, width: float) -> Block:
    """Return a joint's name with what tells its strands apart: both or the black one, or below it.

    Raises `TooWide`.
    """
    keys = [_key(lesson.strands, scale), _key(("", lesson.strands[1]), scale)]
    used = max(run.x + run.width for run in title.items if isinstance(run, TextRun))
    x = used + 1.5 * scale.small
    for items, wide in keys:
        if title.height < 2 * scale.small and x + wide <= width:
            return beside([title, Block(items, 0.0)], x)
    for items, wide in keys:
        if wide <= width:
            return stacked([title, Block(items, LEADING * scale.small)])
    raise TooWide(lesson.strands[1], width, keys[1][1])


@lru_cache(maxsize=64)
def _key(strands: tuple[str, str], scale: Scale) -> tuple[tuple[Item, ...], float]:
    """Return a swatch with each strand that has a name, from (0, 0), and their width."""
    items: list[Item] = []
    x, size = 0.0, scale.small
    baseline, wide, high = DROP * size, 1.8 * size, 0.35 * size
    for word, fill in zip(strands, (1.0, 0.0), strict=True):
        if word:
            line = set_line(word, scale.medium, size)
            swatch = rectangle(x, baseline - 0.25 * size - high / 2, wide, high)
            items += (Path(swatch, _EDGE, fill=fill), *line.at(x + wide + 0.3 * size, baseline))
            x += wide + line.width + 1.1 * size
    return tuple(items), x - 0.8 * size


def has_figure(lesson: Lesson) -> bool:
    """Whether the knot can be drawn at all."""
    first = lesson.turns[0]
    return frames.has_figure(lesson.knot, first.heavy, first.light)


def _frames(lesson: Lesson) -> tuple[Frame, ...]:
    first = lesson.turns[0]
    return knot_frames(lesson.knot, first.heavy, first.light)


def _strip(lesson: Lesson, scale: Scale, width: float, height: float) -> Block | None:
    if height == SLIM:
        return _slim(lesson, scale, width)
    try:
        block = strip(lesson, scale, width, height * scale.factor)
    except TooWide:
        return None
    return stacked([block, Block((), _BELOW)]) if block else None


def _slim(lesson: Lesson, scale: Scale, width: float) -> Block | None:
    """Return in one row the last frames, as many as it holds, but no fewer than two of them."""
    shown, unit = _last(lesson, scale, width)
    return _row(shown, scale, unit, _INDENT * scale.small) if shown else None


def _last(lesson: Lesson, scale: Scale, width: float) -> tuple[tuple[Frame, ...], float]:
    """Return the frames of a slim strip, and the points of a strand in it; no frames, no strip."""
    frames = _frames(lesson)
    for start in range(max(1, len(frames) - 1)):
        shown = frames[start:]
        room = width - len(shown) * _INDENT * scale.small - (len(shown) - 1) * _GAP
        unit = min(_GOOD * scale.factor, room / sum(frame.box.width for frame in shown))
        if unit >= _LEAST * scale.factor:
            return shown, unit
    return (), 0.0


def drops_frames(lesson: Lesson, scale: Scale, width: float, height: float) -> bool:
    """Whether a strip of that height shows but the last frames."""
    shown, _ = _last(lesson, scale, width) if height == SLIM and _frames(lesson) else ((), 0.0)
    return 0 < len(shown) < len(_frames(lesson))


def _row(frames: tuple[Frame, ...], scale: Scale, unit: float, indent: float) -> Block:
    """Return frames side by side, each with its number at its left, on one middle line."""
    high = max(LEADING * scale.small, *(frame.box.height * unit for frame in frames))

    def items() -> Iterator[Item]:
        x = 0.0
        for number, frame in enumerate(frames, start=1):
            yield from set_line(f"{number}", scale.bold, scale.small).at(x, DROP * scale.small)
            ink = inked(frame.strands, unit, frame.arrows)
            yield from shifted(ink, x + indent, (high - frame.box.height * unit) / 2)
            x += indent + frame.box.width * unit + _GAP

    return Block(lambda: tuple(items()), high + _BELOW)
