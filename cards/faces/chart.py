"""The profile chart: a leader in; diameter and stiffness along it, as two small plots, out."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.faces.block import Block, Scale, beside, stacked
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import SetLine, set_line

_HEIGHT = 60.0  # points, of one plot at factor 1
_PEN, _GRID = 0.5, 0.25
_THOU = DIAMETER_MM["thou"]
_STEPS = (5, 10, 20)  # thousandths between two marks; the last holds the thickest strand there is
_MOST_MARKS = 8


@dataclass(frozen=True, slots=True)
class _Profile:
    """One quantity along the leader; `marks` are the values with a line and a label."""

    title: str
    value: Callable[[Fraction], float]  # of a diameter in mm, from 0 to 1
    marks: tuple[tuple[float, str], ...]


def profile_chart(told: Told, scale: Scale, width: float) -> Block:
    """Return two plots over one axis, the butt at the left: diameter, and the stiffness of it.

    Stiffness in bending goes with the fourth power of the diameter (EI = E x pi x d^4 / 64, any
    mechanics of materials text); it is drawn for one material, since spools don't state E.
    """
    plots = (_diameter(told), _stiffness(told))
    gap = scale.body
    each = (width - gap) / 2
    if max(_left(plot, scale) + _set(plot.title, scale).width for plot in plots) > each:
        return stacked([_drawn(plot, told, scale, width) for plot in plots], gap)
    return beside([_drawn(plot, told, scale, each) for plot in plots], each + gap)


def _diameters(leader: Leader) -> list[Fraction]:
    sections = [piece.section for piece in leader.pieces]
    return [mm for section in sections for mm in (section.diameter.mm, fly_end_mm(section))]


def _diameter(told: Told) -> _Profile:
    thickest = max(_diameters(told.leader)) / _THOU
    step = next(step for step in _STEPS if thickest <= _MOST_MARKS * step)
    top = math.ceil(thickest / step) * step  # a round number above
    thou = range(step, top + 1, step)
    return _Profile(
        told.wording.say("diameter_along"),
        lambda mm: float(mm / _THOU) / top,
        tuple((mark / top, told.wording.number(f"0.{mark:03}")) for mark in thou),
    )


def _stiffness(told: Told) -> _Profile:
    """Measure against the finest strand, on a scale of powers of ten."""
    diameters = _diameters(told.leader)
    finest = min(diameters)
    decades = max(1, math.ceil(4 * math.log10(max(diameters) / finest)))
    return _Profile(
        told.wording.say("stiffness_along"),
        lambda mm: 4 * math.log10(mm / finest) / decades,
        tuple((power / decades, f"{10**power} ×") for power in range(decades + 1)),
    )


def _set(words: str, scale: Scale) -> SetLine:
    return set_line(words, scale.medium, scale.small)


def _left(plot: _Profile, scale: Scale) -> float:
    """Return where the axis stands, right of the labels."""
    return max(_set(label, scale).width for _, label in plot.marks) + 0.4 * scale.small


def _drawn(plot: _Profile, told: Told, scale: Scale, width: float) -> Block:
    height = 1.4 * scale.small + _HEIGHT * scale.factor + 1.3 * scale.small
    return Block(tuple(_items(plot, told, scale, width)), height)


def _items(plot: _Profile, told: Told, scale: Scale, right: float) -> Iterator[Item]:
    left = _left(plot, scale)
    top, height = 1.4 * scale.small, _HEIGHT * scale.factor
    bottom = top + height
    yield from _set(plot.title, scale).at(left, 0.8 * scale.small)
    for share, label in plot.marks:
        y = bottom - share * height
        yield Path(segment(left, y, right, y), _GRID, grey=0.6)
        at = left - 0.4 * scale.small, y + 0.25 * scale.small
        yield from _set(label, scale).at(*at, "right")
    yield Path((*segment(left, bottom, right, bottom), *segment(left, top, left, bottom)), _PEN)
    per_mm = (right - left) / float(told.leader.finished.high_mm)
    first, *rest = (
        (at, bottom - value * height) for at, value in _values(plot, told.leader, left, per_mm)
    )
    yield Path((("move", *first), *(("line", *place) for place in rest)), 1.5)
    say, below = told.wording.say, bottom + 1.1 * scale.small
    yield from _set(say("butt"), scale).at(left, below)
    yield from _set(say("fly"), scale).at(right, below, "right")


def _values(
    plot: _Profile, leader: Leader, x: float, per_mm: float
) -> Iterator[tuple[float, float]]:
    """Yield the values piece by piece; a knotless taper slopes, a joint is a step."""
    for piece in leader.pieces:
        yield x, plot.value(piece.section.diameter.mm)
        x += float(piece.finished.high_mm) * per_mm
        yield x, plot.value(fly_end_mm(piece.section))
