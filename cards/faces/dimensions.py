"""The figures of a drawing: a plotted leader in; its lengths and a dimension line with runs out.

The line below the strand runs from the fly as an engineer's does: a circle at its origin, a stroke
at each joint with the distance from the origin, the whole length at the end (running dimensions,
as in ISO 129-1; from memory).
"""

from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise

from tagend.cards.faces.block import Block, Scale
from tagend.cards.faces.captions import Caption, PlacedCaption, placed_captions
from tagend.cards.faces.marks import RISE
from tagend.cards.faces.plot import Plot
from tagend.cards.leader.leader import NOTHING, Extent, Leader
from tagend.cards.words.leader_words import span_number
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import CAP_HEIGHT, set_line

_THIN = 0.35  # points
_CLEAR = 0.8  # points, between what is measured and the line that leads to it
_COMMA = 0.25  # below the baseline, in type sizes: a decimal comma ends above that
_TICK = 1.5  # points at size 1 to either side, and as many up and down
_PEN = 0.7  # points
_ORIGIN = 1.3  # points at size 1
_NEAR = 0.35  # from the figures to the drawing, in type sizes
_FAR = 0.6  # the same where figures had to move: their leads slant


def distances(leader: Leader) -> tuple[Extent, ...]:
    """Return how far the butt's end of each piece lies from the fly's end of the leader."""
    upwards = accumulate((piece.finished for piece in reversed(leader.pieces)), initial=NOTHING)
    return tuple(upwards)[:0:-1]


def dimension_line(plotted: Plot, y: float) -> Block:
    """Return the dimension line at y, and below it the figures; its height is from y = 0."""
    scale = plotted.scale
    figures = placed_captions(_distances(plotted), plotted.width)
    top = y + _lead(figures, scale)
    baseline = top + CAP_HEIGHT * scale.small
    items: list[Item] = [*_ruled(plotted, y)]
    for figure in figures:
        items += figure.line.at(figure.x, baseline, "centre")
        if figure.moved:
            lead = segment(figure.anchor, y + _TICK * plotted.size, figure.x, top - _CLEAR)
            items.append(Path(lead, _THIN))
    return Block(tuple(items), baseline)


def lengths_above(plotted: Plot, y: float) -> Block:
    """Return the length of each piece, all above y; its height is from there up to y = 0."""
    scale = plotted.scale
    figures = placed_captions(_lengths(plotted), plotted.width)
    baseline = y - _lead(figures, scale)
    items: list[Item] = []
    for figure in figures:
        items += figure.line.at(figure.x, baseline, "centre")
        if figure.moved:
            strand = -plotted.half(figure.anchor) - _CLEAR
            under = baseline + _COMMA * scale.small
            items.append(Path(segment(figure.x, under, figure.anchor, strand), _THIN))
    return Block(tuple(items), CAP_HEIGHT * scale.small - baseline)


def _lengths(plotted: Plot) -> list[Caption]:
    """Return the figures above; the longer a piece, the more it counts."""
    leader, scale = plotted.leader, plotted.scale
    wording = plotted.told.wording
    numbers = (span_number(piece.finished, leader, wording) for piece in leader.pieces)
    return [
        Caption(set_line(number, scale.medium, scale.small), band.middle, band.length)
        for number, band in zip(numbers, plotted.bands, strict=True)
    ]


def _distances(plotted: Plot) -> list[Caption]:
    """Return the figures below: of the whole first in weight, then the origin, then the joints.

    A joint counts as much as the longer of its two pieces, so that those of the butt and of the
    tippet stay.
    """
    leader, bands, scale = plotted.leader, plotted.bands, plotted.scale
    wording = plotted.told.wording
    whole, *below = (span_number(run, leader, wording) for run in distances(leader))
    longer = (max(upper.length, lower.length) for upper, lower in pairwise(bands))
    total = set_line(f"{whole} {leader.unit}", scale.bold, scale.small)
    origin = set_line(wording.say("origin"), scale.medium, scale.small)
    return [
        Caption(total, plotted.start, 3 * plotted.width),
        *(
            Caption(set_line(text, scale.medium, scale.small), band.x, weight)
            for text, band, weight in zip(below, bands[1:], longer, strict=True)
        ),
        Caption(origin, plotted.end, 2 * plotted.width),
    ]


def _ruled(plotted: Plot, y: float) -> Iterator[Path]:
    """Yield the line, a stroke with a line up to the strand at each joint, and the origin."""
    tick, origin = _TICK * plotted.size, _ORIGIN * plotted.size
    yield Path(segment(plotted.start, y, plotted.end - origin, y), _THIN)
    for band in plotted.bands:
        strand = plotted.half(band.x) + RISE + _CLEAR
        yield Path(segment(band.x, strand, band.x, y + tick), _THIN)
        yield Path(segment(band.x - tick, y + tick, band.x + tick, y - tick), _PEN)
    yield Path(circle(plotted.end, y, origin), _PEN)


def _lead(figures: Sequence[PlacedCaption], scale: Scale) -> float:
    slants = any(figure.moved for figure in figures)
    return (_FAR if slants else _NEAR) * scale.small
