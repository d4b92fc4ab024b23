"""The profile chart: a leader in; diameter and stiffness along it, as two small plots, out."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.faces.block import Block, Scale, stacked
from tagend.cards.faces.told import Told
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Item, Path, segment, shifted
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
    plots = (_diameter(told.leader, told.wording), _stiffness(told.leader, told.wording))
    gap = scale.body
    each = (width - gap) / 2
    if max(_left(plot, scale) + _title(plot, scale).width for plot in plots) > each:
        return stacked([_drawn(plot, told, scale, width) for plot in plots], gap)
    first, second = (_drawn(plot, told, scale, each) for plot in plots)
    return Block((*first.items, *shifted(second.items, each + gap, 0)), first.height)


def _diameters(leader: Leader) -> list[Fraction]:
    sections = [piece.section for piece in leader.pieces]
    return [mm for section in sections for mm in (section.diameter.mm, fly_end_mm(section))]


def _diameter(leader: Leader, wording: Wording) -> _Profile:
    thickest = max(_diameters(leader)) / _THOU
    step = next(step for step in _STEPS if thickest <= _MOST_MARKS * step)
    top = math.ceil(thickest / step) * step  # a round number above
    marks = tuple(
        (mark / top, wording.number(f"0.{mark:03}")) for mark in range(step, top + 1, step)
    )
    return _Profile(wording.say("diameter_along"), lambda mm: float(mm / _THOU) / top, marks)


def _stiffness(leader: Leader, wording: Wording) -> _Profile:
    """Measure against the finest strand, on a scale of powers of ten."""
    finest = min(_diameters(leader))
    decades = max(1, math.ceil(4 * math.log10(max(_diameters(leader)) / finest)))
    marks = tuple((power / decades, f"{10**power} ×") for power in range(decades + 1))
    return _Profile(
        wording.say("stiffness_along"),
        lambda mm: 4 * math.log10(mm / finest) / decades,
        marks,
    )


def _labels(plot: _Profile, scale: Scale) -> list[SetLine]:
    return [set_line(label, scale.medium, scale.small) for _, label in plot.marks]


def _title(plot: _Profile, scale: Scale) -> SetLine:
    return set_line(plot.title, scale.medium, scale.small)


def _left(plot: _Profile, scale: Scale) -> float:
    """Return where the axis stands, right of the labels."""
    return max(label.width for label in _labels(plot, scale)) + 0.4 * scale.small


def _drawn(plot: _Profile, told: Told, scale: Scale, width: float) -> Block:
    height = 1.4 * scale.small + _HEIGHT * scale.factor + 1.3 * scale.small
    return Block(tuple(_items(plot, told, scale, width)), height)


def _items(plot: _Profile, told: Told, scale: Scale, right: float) -> Iterator[Item]:
    left = _left(plot, scale)
    top, height = 1.4 * scale.small, _HEIGHT * scale.factor
    bottom = top + height
    yield from _title(plot, scale).at(left, 0.8 * scale.small)
    for (share, _), label in zip(plot.marks, _labels(plot, scale), strict=True):
        y = bottom - share * height
        yield Path(segment(left, y, right, y), _GRID, grey=0.6)
        yield from label.at(left - 0.4 * scale.small, y + 0.25 * scale.small, "right")
    yield Path((*segment(left, bottom, right, bottom), *segment(left, top, left, bottom)), _PEN)
    total = float(told.leader.finished.high_mm)
    yield _curve(plot, told.leader.pieces, left, bottom, (right - left) / total, height)
    butt, fly = (
        set_line(told.wording.say(end), scale.medium, scale.small) for end in ("butt", "fly")
    )
    yield from butt.at(left, bottom + 1.1 * scale.small)
    yield from fly.at(right, bottom + 1.1 * scale.small, "right")


def _curve(
    plot: _Profile, pieces: Sequence[Piece], x: float, bottom: float, per_mm: float, height: float
) -> Path:
    """Draw the values piece by piece; a knotless taper slopes, a joint is a step."""
    points: list[tuple[float, float]] = []
    for piece in pieces:
        end = x + float(piece.finished.high_mm) * per_mm
        for at, mm in ((x, piece.section.diameter.mm), (end, fly_end_mm(piece.section))):
            points.append((at, bottom - plot.value(mm) * height))
        x = end
    (x0, y0), *rest = points
    return Path((("move", x0, y0), *(("line", px, py) for px, py in rest)), 1.5)
