"""What joins and ends a strand, drawn as what it is: a plotted leader in, paths out.

A knot that winds is a barrel with coils, one made of loops a plain barrel; a ring is a ring, two
loops hold one another, a loop is an eye, a dropper hangs and a bite guard is underlined.
"""

import math
from collections.abc import Iterator
from itertools import pairwise

from tagend.cards.faces.band import Band
from tagend.cards.faces.plot import Plot
from tagend.cards.leader.joints import End
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.curves import circle, rounded
from tagend.layouts.paper.face import Path, Step, segment

RISE = 1.3  # points; a knot stands so far out of its strand
_HANG = 3.0  # points at size 1; a dropper's end so far below its knot
_BARREL = 6.0  # points at size 1, along the strand, where both pieces are long enough
_BAR = 1.2  # points along the strand, where they are not
_FINEST = 0.5  # points; a thinner pen breaks up on an office printer
_COIL = 1.5  # points from one coil to the next
_THREAD = 1.0  # points; a strand on its own, not to the scale of the bands
_UNDER = 1.0  # points from a bite guard to the line below it
_DASHES = (1.5, 1.5)  # points of that line: whole, it would make the strand look thicker
_LOOP_RISE = 0.26  # of a loop's length, at either side
_FEW = 2  # turns; passes through an overhand are counted as turns too


def marks(plotted: Plot) -> Iterator[Path]:
    """Return the paths over the bands, in the order in which they are drawn."""
    for band, piece in zip(plotted.bands, plotted.leader.pieces, strict=True):
        if piece.part == "bite guard":
            yield _underline(band)
    yield from _ends(plotted)
    for x, end, below in _droppers(plotted):
        yield _dropper(x, end, below)
    yield from _joints(plotted)


def rise(plotted: Plot) -> float:
    """Return how far the drawing reaches above y = 0."""
    thickest = max(max(band.from_thick, band.to_thick) for band in plotted.bands)
    loops = (plotted.start, plotted.width - plotted.end)
    return max(thickest / 2 + RISE, _LOOP_RISE * max(loops))


def reach(plotted: Plot) -> float:
    """Return how far it reaches below y = 0."""
    return max([rise(plotted), *(below for *_, below in _droppers(plotted))])


def _droppers(plotted: Plot) -> Iterator[tuple[float, float, float]]:
    """Yield for each dropper where it leaves the strand, where it ends and how far below."""
    for band, piece in zip(plotted.bands, plotted.leader.pieces, strict=True):
        if piece.section.dropper is not None:
            end = band.end + float(piece.section.dropper.mm) * plotted.per_mm
            below = plotted.half(band.end) + RISE + _HANG * plotted.size
            yield band.end, min(end, plotted.end), below


def _underline(band: Band) -> Path:
    """Return the broken line below a bite guard that tells it from the tippet above it."""
    y = band.y + max(band.from_thick, band.to_thick) / 2 + _UNDER
    return Path(segment(band.x, y, band.end, y), _FINEST, dash=_DASHES)


def _ends(plotted: Plot) -> Iterator[Path]:
    leader, first, last = plotted.leader, plotted.bands[0], plotted.bands[-1]
    longest = _BARREL * plotted.size
    at_butt, at_fly = min(longest, first.length / 2), min(longest, last.length / 2)
    half = first.from_thick / 2 + RISE
    yield from _end(leader.butt, plotted.start, 0.0, half, at_butt)
    half = last.to_thick / 2 + RISE
    yield from _end(leader.fly, plotted.end, plotted.width, half, -at_fly)


def _end(end: End, x: float, edge: float, half: float, inward: float) -> Iterator[Path]:
    """Draw a knot from x `inward` along the strand, and its loop out to the edge."""
    if end.half is None:
        return
    if end.loop_mm:
        yield _eye(x, edge, _LOOP_RISE * abs(edge - x))
    yield from _barrel(end.half.knot, x + inward / 2, half, abs(inward))


def _joints(plotted: Plot) -> Iterator[Path]:
    for (upper, lower), joint in zip(pairwise(plotted.bands), plotted.leader.joints, strict=True):
        knot, x, half = joint.knot, lower.x, plotted.half(lower.x) + RISE
        along = min(_BARREL * plotted.size, upper.length / 2, lower.length / 2)
        if knot.apart:
            yield Path(circle(min(max(x, half), plotted.width - half), 0.0, half), 1.0, fill=1.0)
        elif knot.comes_made:
            yield from _two_eyes(x, half, along)
        else:
            yield from _barrel(knot, x, half, along)


def _winds(knot: Knot) -> bool:
    """Tell a knot of coils from one of loops, in which passes are counted as turns."""
    most = max((max(rung.heavy, rung.light) for rung in knot.turns), default=0)
    return most > _FEW and not knot.whole_side_passes


def _barrel(knot: Knot, x: float, half: float, along: float) -> Iterator[Path]:
    if along < 2 * _COIL:
        yield Path(segment(x, -half, x, half), min(_BAR, max(along, _FINEST)))
        return
    left, radius = x - along / 2, min(along / 3, half)
    yield Path(rounded(left, -half, along, 2 * half, radius), 0.6, fill=1.0)
    if _winds(knot):
        coils = round(along / _COIL) - 1
        places = (left + along * (coil + 1) / (coils + 1) for coil in range(coils))
        yield Path(tuple(step for at in places for step in _coil(at, half)), _FINEST)


def _coil(x: float, half: float) -> tuple[Step, ...]:
    return segment(x - _COIL / 4, half, x + _COIL / 4, -half)


def _two_eyes(x: float, half: float, along: float) -> Iterator[Path]:
    one, other = _eye(x - along, x + along / 2, half), _eye(x + along, x - along / 2, half)
    yield from (one, other, one._replace(fill=None))


def _eye(neck: float, tip: float, half: float) -> Path:
    """Draw a loop as an eye: pointed at its neck, round at its tip."""
    tip -= math.copysign(_THREAD / 2, tip - neck)
    wide = neck + 0.6 * (tip - neck)
    leave, near, far = (neck + wide) / 2, wide - 0.25 * (tip - neck), wide + 0.55 * (tip - wide)
    return Path(
        (
            ("move", neck, 0.0),
            ("curve", leave, -half / 2, near, -half, wide, -half),
            ("curve", far, -half, tip, -half / 2, tip, 0.0),
            ("curve", tip, half / 2, far, half, wide, half),
            ("curve", near, half, leave, half / 2, neck, 0.0),
        ),
        _THREAD,
        fill=1.0,
    )


def _dropper(x: float, end: float, below: float) -> Path:
    """Draw a branch that leaves a knot at x and hangs as far along as it is long."""
    share, level = (end - x) / 3, 0.8 * below
    return Path(
        (("move", x, 0.0), ("curve", x + share, level, x + 2 * share, level, end, below)), _THREAD
    )
