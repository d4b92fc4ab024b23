"""The frame of a plot: plots, leaders and room in; axes, marks and places on the paper out."""

import math
from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.faces.along import Along, DrawnLeader
from tagend.cards.faces.block import Scale
from tagend.layouts.base.quantities import INCH_MM
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import SetLine, set_line

_PEN, _GRID = 0.5, 0.25
_MOST_TICKS = 6
_TICK = {"ft": 1.0, "m": 0.5}
_TICK_MM = {"ft": 12 * INCH_MM, "m": Fraction(500)}


class PlotFrame(Struct, frozen=True):
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


def frame_of(
    plots: Sequence[Along], lines: Sequence[DrawnLeader], scale: Scale, right: float, height: float
) -> PlotFrame:
    """Return the frame of plots as high as asked, with its right edge there."""
    left, top = left_of_axis(plots, scale), 1.4 * scale.small
    longest = max(float(line.told.leader.finished.high_mm) for line in lines)
    return PlotFrame(
        left=left, right=right, top=top, bottom=top + height, per_mm=(right - left) / longest
    )


def grid(plot: Along, scale: Scale, frame: PlotFrame) -> Iterator[Item]:
    """Yield both axes, and the plot's marks with a line each."""
    left, right, bottom = frame.left, frame.right, frame.bottom
    for share, label in plot.marks:
        y = bottom - share * (bottom - frame.top)
        yield Path(segment(left, y, right, y), _GRID, grey=0.6)
        at = left - 0.4 * scale.small, y + 0.25 * scale.small
        yield from small_line(label, scale).at(*at, "right")
    axes = (*segment(left, bottom, right, bottom), *segment(left, frame.top, left, bottom))
    yield Path(axes, _PEN)


def axis(lines: Sequence[DrawnLeader], scale: Scale, frame: PlotFrame) -> Iterator[Item]:
    """Yield what stands below a plot: butt and fly, and between them how far the fly is."""
    told, left, right = lines[0].told, frame.left, frame.right
    say = told.wording.say
    butt, fly = small_line(say("butt"), scale), small_line(say("fly"), scale)
    below = frame.bottom + 1.1 * scale.small
    yield from butt.at(left, below)
    yield from fly.at(right, below, "right")
    unit = "ft" if told.leader.unit == "in" else "m"
    whole = (right - left) / frame.per_mm / float(_TICK_MM[unit])
    step = math.ceil(whole / _MOST_TICKS)
    for n in range(step, math.floor(whole) + 1, step):
        x, y = frame.at(n * _TICK_MM[unit], 0)
        yield Path(segment(x, y, x, y + 0.25 * scale.small), _PEN)
        label = small_line(told.wording.number(f"{n * _TICK[unit]:g} {unit}"), scale)
        free = label.width / 2 + scale.small
        if left + butt.width <= x - free and x + free <= right - fly.width:
            yield from label.at(x, below, "centre")


def around(scale: Scale) -> float:
    """Return what a plot takes above and below its axes."""
    return (1.4 + 1.3) * scale.small


def left_of_axis(plots: Sequence[Along], scale: Scale) -> float:
    """Return where the axis stands, right of the labels."""
    labels = (label for plot in plots for _, label in plot.marks)
    return max(small_line(label, scale).width for label in labels) + 0.4 * scale.small


def small_line(words: str, scale: Scale) -> SetLine:
    """Return words set as all words of a plot are."""
    return set_line(words, scale.medium, scale.small)
