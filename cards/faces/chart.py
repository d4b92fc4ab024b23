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
_PEN, _GRID, _DOT = 0.5, 0.25, 1.7
_MOST_MARKS = 8
_MOST_TICKS = 6
_LABEL_SHARE = 0.25  # of the width, for names at the lines' ends
_THOU = DIAMETER_MM["thou"]
# Between two marks: for lengths in inches and for metric ones.
_DIAMETER_MM = ((5 * _THOU, 10 * _THOU, 20 * _THOU), (Fraction(1, 10), Fraction(1, 5), Fraction(1)))
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


def profile_chart(told: Told, scale: Scale, width: float) -> Block:
    """Return two plots of one leader over one axis, the butt at the left: diameter, stiffness."""
    lines = _lines([told])
    plots = (_diameter(lines), _stiffness(lines))
    gap = scale.body
    each = (width - gap) / 2
    if max(_left(plot, scale) + _set(plot.title, scale).width for plot in plots) > each:
        return stacked([_drawn(plot, lines, scale, width) for plot in plots], gap)
    return beside([_drawn(plot, lines, scale, each) for plot in plots], each + gap)


def comparison(all_told: Sequence[Told], scale: Scale, width: float) -> list[Block]:
    """Return three plots of up to as many leaders as there are STYLES, all from the fly on.

    What is a range is drawn as its middle, what is not known not at all.
    """
    lines = _lines(all_told)
    plots = [_diameter(lines), _impedance(lines), _stiffness(lines)]
    return [_drawn(plot, lines, scale, width) for plot in plots if plot.marks]


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


def _left(plot: _Plot, scale: Scale) -> float:
    """Return where the axis stands, right of the labels."""
    return max(_set(label, scale).width for _, label in plot.marks) + 0.4 * scale.small


def _drawn(plot: _Plot, lines: Sequence[_Line], scale: Scale, width: float) -> Block:
    height = 1.4 * scale.small + _HEIGHT * scale.factor + 1.3 * scale.small
    return Block(tuple(_items(plot, lines, scale, width)), height)


def _items(plot: _Plot, lines: Sequence[_Line], scale: Scale, width: float) -> Iterator[Item]:
    left = _left(plot, scale)
    names = [_set(line.told.leader.recipe.name, scale) for line in lines]
    room = max(name.width for name in names) + 0.5 * scale.small
    named = len(lines) > 1 and room <= _LABEL_SHARE * width
    right = width - room if named else width
    top, height = 1.4 * scale.small, _HEIGHT * scale.factor
    bottom = top + height
    yield from _set(plot.title, scale).at(left, 0.8 * scale.small)
    for share, label in plot.marks:
        y = bottom - share * height
        yield Path(segment(left, y, right, y), _GRID, grey=0.6)
        at = left - 0.4 * scale.small, y + 0.25 * scale.small
        yield from _set(label, scale).at(*at, "right")
    yield Path((*segment(left, bottom, right, bottom), *segment(left, top, left, bottom)), _PEN)
    per_mm = (right - left) / max(float(line.told.leader.finished.high_mm) for line in lines)

    def at_place(mm: Fraction, value: float) -> tuple[float, float]:
        return right - float(mm) * per_mm, bottom - value * height

    for (pen, dash), line in zip(STYLES, lines, strict=False):
        yield Path(tuple(_curve(plot.value, line, at_place)), pen, dash=dash)
        yield from (Path(dot, fill=0.0) for dot in _joints(plot.value, line, at_place))
    yield from _axis(lines, scale, bottom, (left, right), per_mm)
    ends = [plot.value(line.strips[-1]) for line in lines]
    ys = [bottom - end[1] * height for end in ends if end]
    apart = all(abs(y - other) >= scale.small for n, y in enumerate(ys) for other in ys[:n])
    if named and apart and len(ys) == len(names):
        for name, y in zip(names, ys, strict=True):
            yield from name.at(right + 0.5 * scale.small, min(y + 0.25 * scale.small, bottom))


_At = Callable[[Fraction, float], tuple[float, float]]


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


def _axis(
    lines: Sequence[_Line], scale: Scale, y: float, ends: tuple[float, float], per_mm: float
) -> Iterator[Item]:
    """Yield what stands below a plot: butt and fly, and between them how far the fly is."""
    (left, right), wording = ends, lines[0].told.wording
    butt, fly = (_set(wording.say(key), scale) for key in ("butt", "fly"))
    below = y + 1.1 * scale.small
    yield from butt.at(left, below)
    yield from fly.at(right, below, "right")
    unit = "ft" if lines[0].told.leader.unit == "in" else "m"
    step = _TICK_MM[unit] * math.ceil((right - left) / per_mm / _MOST_TICKS / _TICK_MM[unit])
    count = int((right - left) / per_mm / float(step))
    for n in range(1, count + 1):
        far = n * step / INCH_MM / 12 if unit == "ft" else n * step / 1000
        label = _set(wording.number(f"{float(far):g} {unit}"), scale)
        x = right - n * float(step) * per_mm
        yield Path(segment(x, y, x, y + 0.25 * scale.small), _PEN)
        start, end = x - label.width / 2 - scale.small, x + label.width / 2 + scale.small
        if left + butt.width <= start and end <= right - fly.width:
            yield from label.at(x, below, "centre")
