"""Plots along the leader: leaders in; diameter, impedance and stiffness from the fly on, out."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.faces.block import Block, Scale, beside, stacked
from tagend.cards.leader.waves import Spread, Strip, measure
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.quantities import INCH_MM
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Item, Path, Step, segment
from tagend.layouts.paper.text import SetLine, set_line

_HEIGHT = 60.0  # points, of one plot at factor 1
_PEN, _GRID, _DOT = 0.5, 0.25, 1.5
_MOST_MARKS = 8
_MOST_TICKS = 6
_LABEL_SHARE = 0.25  # of the width, for names at the lines' ends
_THOU = DIAMETER_MM["thou"]
# Between two marks: for lengths in inches and for metric ones.
_DIAMETER_MM = ((5 * _THOU, 10 * _THOU, 20 * _THOU), (Fraction(1, 10), Fraction(1, 5), Fraction(1)))
_TICK = {"ft": 1.0, "m": 0.5}
_TICK_MM = {"ft": 12 * INCH_MM, "m": Fraction(500)}

# By their order, leaders are told apart in black alone: pen and dashes.
STYLES: tuple[tuple[float, tuple[float, ...]], ...] = (
    (1.5, ()),
    (1.5, (6.0, 3.0)),
    (1.5, (1.5, 2.0)),
    (0.6, ()),
    (1.5, (9.0, 2.5, 1.5, 2.5)),
    (0.6, (4.0, 2.0)),
)

_Ends = tuple[float, float]  # of a piece, towards the butt and towards the fly
_Value = Callable[[Strip], _Ends | None]
_At = Callable[[Fraction, float], tuple[float, float]]  # of a distance from the fly and a value


@dataclass(frozen=True, slots=True)
class _Line:
    """A leader to be drawn."""

    told: Told
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True)
class _Plot:
    """One quantity along leaders; `marks` are the values with a line and a label, from 0 to 1."""

    title: str
    value: _Value  # from 0 to 1; None where it is not known
    marks: tuple[tuple[float, str], ...]


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where plots of one scale stand, so that their axes lie below each other."""

    left: float
    right: float
    top: float
    bottom: float
    per_mm: float  # points

    def at(self, mm: Fraction, value: float) -> tuple[float, float]:
        """Return where a value so far from the fly is drawn."""
        x = self.right - float(mm) * self.per_mm
        return x, self.bottom - value * (self.bottom - self.top)


def profile_chart(told: Told, scale: Scale, width: float) -> Block:
    """Return two plots of one leader over one axis, the butt at the left: diameter, stiffness."""
    lines = _lines([told])
    plots = (_diameter(lines), _stiffness(lines))
    gap = scale.body
    each = (width - gap) / 2
    narrow = max(_left([plot], scale) + _set(plot.title, scale).width for plot in plots) > each
    room = width if narrow else each
    height = _HEIGHT * scale.factor
    drawn = [
        _drawn(plot, lines, scale, _frame([plot], lines, scale, room, height)) for plot in plots
    ]
    return stacked(drawn, gap) if narrow else beside(drawn, each + gap)


def comparison(all_told: Sequence[Told], scale: Scale, width: float, height: float) -> list[Block]:
    """Return plots of up to as many leaders as there are STYLES, all from the fly on.

    Each is as high as asked. What is a range is drawn as its middle, what is not known not at all.
    """
    lines = _lines(all_told)
    plots = [plot for of in (_diameter, _impedance, _stiffness) if (plot := of(lines)).marks]
    names = [_set(told.leader.recipe.name, scale) for told in all_told]
    room = max(name.width for name in names) + 0.5 * scale.small
    above = height - _around(scale)
    frame = _frame(plots, lines, scale, width - room, above)
    wants = room <= _LABEL_SHARE * width
    named = [wants and _are_apart(plot, lines, scale, frame) for plot in plots]
    if not any(named):
        frame = _frame(plots, lines, scale, width, above)
    return [
        _drawn(plot, lines, scale, frame, names if with_names else ())
        for plot, with_names in zip(plots, named, strict=True)
    ]


def sample(place: int, scale: Scale) -> Block:
    """Return a short stretch of the line that a leader is drawn with, for a key."""
    pen, dash = STYLES[place]
    y = 0.5 * scale.small
    return Block((Path(segment(0, y, 3.2 * scale.small, y), pen, dash=dash),), scale.small)


def _lines(all_told: Sequence[Told]) -> list[_Line]:
    return [_Line(told, measure(told.leader).strips) for told in all_told]


def _diameter(lines: Sequence[_Line]) -> _Plot:
    leader, wording = lines[0].told.leader, lines[0].told.wording
    unit: ShownUnit = "in" if leader.unit == "in" else "mm"
    thickest = max(mm for line in lines for strip in line.strips for mm in strip.diameters_mm)
    steps = _DIAMETER_MM[unit == "mm"]
    step = next((step for step in steps if thickest <= _MOST_MARKS * step), steps[-1])
    count = math.ceil(thickest / step)
    marks = ((n / count, thickness(n * step, unit).split()[0]) for n in range(1, count + 1))
    return _Plot(
        wording.say("diameter_along", unit=unit),
        lambda strip: _shares(strip.diameters_mm, count * step),
        tuple((share, wording.number(label)) for share, label in marks),
    )


def _impedance(lines: Sequence[_Line]) -> _Plot:
    """Measure against the lightest strand."""
    known = [end for line in lines for strip in line.strips for end in strip.impedance or ()]
    lightest = min((end.middle for end in known), default=1.0)
    most = max((end.middle / lightest for end in known), default=0.0)
    step = next(step for step in (1, 2, 5, 10, 20, 50, 100) if most <= _MOST_MARKS * step)
    top = step * math.ceil(round(most / step, 6))
    return _Plot(
        lines[0].told.wording.say("impedance_along"),
        lambda strip: strip.impedance and _middles(strip.impedance, top * lightest),
        tuple((mark / top, f"{mark} ×") for mark in range(step, top + 1, step)),
    )


def _stiffness(lines: Sequence[_Line]) -> _Plot:
    """Measure against the limpest strand, on a scale of powers of ten.

    Stiffness in bending goes with the fourth power of the diameter (EI = E x pi x d^4 / 64, any
    mechanics of materials text). Where one modulus is not known, all are drawn as one material.
    """
    strips = [strip for line in lines for strip in line.strips]
    known = all(strip.stiffness for strip in strips)

    def stiff(strip: Strip) -> _Ends:
        if known and strip.stiffness:
            return _middles(strip.stiffness, 1.0)
        upper, lower = (float(mm**4) for mm in strip.diameters_mm)
        return upper, lower

    all_of = [end for strip in strips for end in stiff(strip)]
    least = min(all_of)
    decades = max(1, math.ceil(math.log10(max(all_of) / least)))

    def value(strip: Strip) -> _Ends:
        upper, lower = (math.log10(end / least) / decades for end in stiff(strip))
        return upper, lower

    return _Plot(
        lines[0].told.wording.say("stiffness_along" if known else "stiffness_of_one"),
        value,
        tuple((power / decades, f"{10**power} ×") for power in range(decades + 1)),
    )


def _shares(ends: tuple[Fraction, Fraction], top: Fraction) -> _Ends:
    return float(ends[0] / top), float(ends[1] / top)


def _middles(ends: tuple[Spread, Spread], top: float) -> _Ends:
    return ends[0].middle / top, ends[1].middle / top


def _set(words: str, scale: Scale) -> SetLine:
    return set_line(words, scale.medium, scale.small)


def _left(plots: Sequence[_Plot], scale: Scale) -> float:
    """Return where the axis stands, right of the labels."""
    labels = (label for plot in plots for _, label in plot.marks)
    return max(_set(label, scale).width for label in labels) + 0.4 * scale.small


def _around(scale: Scale) -> float:
    """Return what a plot takes above and below its axes."""
    return (1.4 + 1.3) * scale.small


def _frame(
    plots: Sequence[_Plot], lines: Sequence[_Line], scale: Scale, right: float, height: float
) -> _Frame:
    left, top = _left(plots, scale), 1.4 * scale.small
    longest = max(float(line.told.leader.finished.high_mm) for line in lines)
    return _Frame(
        left=left, right=right, top=top, bottom=top + height, per_mm=(right - left) / longest
    )


def _drawn(
    plot: _Plot,
    lines: Sequence[_Line],
    scale: Scale,
    frame: _Frame,
    names: Sequence[SetLine] = (),
) -> Block:
    items = (
        *_set(plot.title, scale).at(frame.left, 0.8 * scale.small),
        *_grid(plot, scale, frame),
        *_axis(lines, scale, frame),
        *_curves(plot, lines, frame),
        *_named(names, _ends(plot, lines, frame), scale, frame),
    )
    return Block(items, frame.bottom - frame.top + _around(scale))


def _grid(plot: _Plot, scale: Scale, frame: _Frame) -> Iterator[Item]:
    left, right, bottom = frame.left, frame.right, frame.bottom
    for share, label in plot.marks:
        y = bottom - share * (bottom - frame.top)
        yield Path(segment(left, y, right, y), _GRID, grey=0.6)
        at = left - 0.4 * scale.small, y + 0.25 * scale.small
        yield from _set(label, scale).at(*at, "right")
    axes = (*segment(left, bottom, right, bottom), *segment(left, frame.top, left, bottom))
    yield Path(axes, _PEN)


def _curves(plot: _Plot, lines: Sequence[_Line], frame: _Frame) -> Iterator[Item]:
    for (pen, dash), line in zip(STYLES, lines, strict=False):
        yield Path(tuple(_curve(plot.value, line, frame.at)), pen, dash=dash)
        yield from (Path(dot, fill=0.0) for dot in _joints(plot.value, line, frame.at))


def _ends(plot: _Plot, lines: Sequence[_Line], frame: _Frame) -> list[float]:
    """Return how far down each line that is known at the fly ends."""
    ends = (plot.value(line.strips[-1]) for line in lines)
    return [frame.at(Fraction(0), end[1])[1] for end in ends if end]


def _are_apart(plot: _Plot, lines: Sequence[_Line], scale: Scale, frame: _Frame) -> bool:
    """Whether there is room for a name at the end of every line."""
    ys = sorted(_ends(plot, lines, frame))
    return len(ys) == len(lines) and all(b - a >= 1.1 * scale.small for a, b in pairwise(ys))


def _named(
    names: Sequence[SetLine], ys: Sequence[float], scale: Scale, frame: _Frame
) -> Iterator[Item]:
    for name, y in zip(names, ys, strict=False):
        yield from name.at(frame.right + 0.5 * scale.small, y + 0.25 * scale.small)


def _curve(value: _Value, line: _Line, at: _At) -> Iterator[Step]:
    """Yield a line piece by piece; a knotless taper slopes, a joint is a step."""
    on = False
    for strip in line.strips:
        ends = value(strip)
        if ends:
            start = at(strip.from_mm, ends[0])
            yield ("line", *start) if on else ("move", *start)
            yield ("line", *at(strip.to_mm, ends[1]))
        on = ends is not None


def _joints(value: _Value, line: _Line, at: _At) -> Iterator[tuple[Step, ...]]:
    for above, below in pairwise(line.strips):
        upper, lower = value(above), value(below)
        if upper and lower:
            yield circle(*at(below.from_mm, (upper[1] + lower[0]) / 2), _DOT)


def _axis(lines: Sequence[_Line], scale: Scale, frame: _Frame) -> Iterator[Item]:
    """Yield what stands below a plot: butt and fly, and between them how far the fly is."""
    told, left, right = lines[0].told, frame.left, frame.right
    butt, fly = (_set(told.wording.say(key), scale) for key in ("butt", "fly"))
    below = frame.bottom + 1.1 * scale.small
    yield from butt.at(left, below)
    yield from fly.at(right, below, "right")
    unit = "ft" if told.leader.unit == "in" else "m"
    whole = (right - left) / frame.per_mm / float(_TICK_MM[unit])
    step = math.ceil(whole / _MOST_TICKS)
    for n in range(step, math.floor(whole) + 1, step):
        x, y = frame.at(n * _TICK_MM[unit], 0)
        yield Path(segment(x, y, x, y + 0.25 * scale.small), _PEN)
        label = _set(told.wording.number(f"{n * _TICK[unit]:g} {unit}"), scale)
        free = label.width / 2 + scale.small
        if left + butt.width <= x - free and x + free <= right - fly.width:
            yield from label.at(x, below, "centre")
