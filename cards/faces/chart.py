"""Plots along the leader: leaders in; diameter, impedance and stiffness from the fly on, out."""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from cfractions import Fraction

from tagend.cards.faces.along import (
    Along,
    DrawnLeader,
    Value,
    diameters,
    drawn_lines,
    impedances,
    stiffnesses,
)
from tagend.cards.faces.block import Block, Scale, beside, stacked
from tagend.cards.faces.frame import (
    PlotFrame,
    around,
    axis,
    frame_of,
    grid,
    left_of_axis,
    small_line,
)
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Item, Path, Step, segment
from tagend.layouts.paper.text import SetLine

_HEIGHT = 60.0  # points, of one plot at factor 1
_DOT = 1.5
_LABEL_SHARE = 0.25  # of the width, for names at the lines' ends
# By their order, leaders are told apart in black alone: pen and dashes.
STYLES: tuple[tuple[float, tuple[float, ...]], ...] = (
    (1.5, ()),
    (1.5, (6.0, 3.0)),
    (1.5, (1.5, 2.0)),
    (0.6, ()),
    (1.5, (9.0, 2.5, 1.5, 2.5)),
    (0.6, (4.0, 2.0)),
)

_At = Callable[[Fraction, float], tuple[float, float]]  # of a distance from the fly and a value


def profile_chart(told: Told, scale: Scale, width: float) -> Block:
    """Return two plots of one leader over one axis, the butt at the left: diameter, stiffness."""
    lines = drawn_lines([told])
    plots = [plot for of in (diameters, stiffnesses) if (plot := of(lines)).marks]
    gap = scale.body
    each = (width - gap) / 2
    narrow = (
        max(left_of_axis([plot], scale) + small_line(plot.title, scale).width for plot in plots)
        > each
    )
    room = width if narrow else each
    height = _HEIGHT * scale.factor
    drawn = [
        _drawn(plot, lines, scale, frame_of([plot], lines, scale, room, height)) for plot in plots
    ]
    return stacked(drawn, gap) if narrow else beside(drawn, each + gap)


def comparison(all_told: Sequence[Told], scale: Scale, width: float, height: float) -> list[Block]:
    """Return plots of up to as many leaders as there are STYLES, all from the fly on.

    Each is as high as asked. What is a range is drawn as its middle, what is not known not at all.
    """
    lines = drawn_lines(all_told)
    plots = [plot for of in (diameters, impedances, stiffnesses) if (plot := of(lines)).marks]
    names = [small_line(told.leader.recipe.name, scale) for told in all_told]
    room = max(name.width for name in names) + 0.5 * scale.small
    above = height - around(scale)
    frame = frame_of(plots, lines, scale, width - room, above)
    wants = room <= _LABEL_SHARE * width
    named = [wants and _are_apart(plot, lines, scale, frame) for plot in plots]
    if not any(named):
        frame = frame_of(plots, lines, scale, width, above)
    return [
        _drawn(plot, lines, scale, frame, names if with_names else ())
        for plot, with_names in zip(plots, named, strict=True)
    ]


def sample(place: int, scale: Scale) -> Block:
    """Return a short stretch of the line that a leader is drawn with, for a key."""
    pen, dash = STYLES[place]
    y = 0.5 * scale.small
    return Block((Path(segment(0, y, 3.2 * scale.small, y), pen, dash=dash),), scale.small)


def _drawn(
    plot: Along,
    lines: Sequence[DrawnLeader],
    scale: Scale,
    frame: PlotFrame,
    names: Sequence[SetLine] = (),
) -> Block:
    items = (
        *small_line(plot.title, scale).at(frame.left, 0.8 * scale.small),
        *grid(plot, scale, frame),
        *axis(lines, scale, frame),
        *_curves(plot, lines, frame),
        *_named(names, _ends(plot, lines, frame), scale, frame),
    )
    return Block(items, frame.bottom - frame.top + around(scale))


def _curves(plot: Along, lines: Sequence[DrawnLeader], frame: PlotFrame) -> Iterator[Item]:
    for (pen, dash), line in zip(STYLES, lines, strict=False):
        yield Path(tuple(_curve(plot.value, line, frame.at)), pen, dash=dash)
        yield from (Path(dot, fill=0.0) for dot in _joints(plot.value, line, frame.at))


def _ends(plot: Along, lines: Sequence[DrawnLeader], frame: PlotFrame) -> list[float]:
    """Return how far down each line that is known at the fly ends."""
    ends = (plot.value(line.strips[-1]) for line in lines)
    return [frame.at(Fraction(0), end[1])[1] for end in ends if end]


def _are_apart(plot: Along, lines: Sequence[DrawnLeader], scale: Scale, frame: PlotFrame) -> bool:
    """Whether there is room for a name at the end of every line."""
    ys = sorted(_ends(plot, lines, frame))
    return len(ys) == len(lines) and all(b - a >= 1.1 * scale.small for a, b in pairwise(ys))


def _named(
    names: Sequence[SetLine], ys: Sequence[float], scale: Scale, frame: PlotFrame
) -> Iterator[Item]:
    for name, y in zip(names, ys, strict=False):
        yield from name.at(frame.right + 0.5 * scale.small, y + 0.25 * scale.small)


def _curve(value: Value, line: DrawnLeader, at: _At) -> Iterator[Step]:
    """Yield a line piece by piece; a knotless taper slopes, a joint is a step."""
    on = False
    for strip in line.strips:
        ends = value(strip)
        if ends:
            start = at(strip.from_mm, ends[0])
            yield ("line", *start) if on else ("move", *start)
            yield ("line", *at(strip.to_mm, ends[1]))
        on = ends is not None


def _joints(value: Value, line: DrawnLeader, at: _At) -> Iterator[tuple[Step, ...]]:
    for above, below in pairwise(line.strips):
        upper, lower = value(above), value(below)
        if upper and lower:
            yield circle(*at(below.from_mm, (upper[1] + lower[0]) / 2), _DOT)
