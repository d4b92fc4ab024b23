"""The figures of a drawing: a plotted leader in; its lengths and a dimension line with runs out.

The line below the strand runs from the fly as an engineer's does: a circle at its origin, a stroke
at each joint with the distance from the origin, the whole length at the end (running dimensions,
as in ISO 129-1; from memory).
"""

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from itertools import accumulate, pairwise

from tagend.cards.faces.block import Block
from tagend.cards.faces.captions import Caption, PlacedCaption, placed_captions
from tagend.cards.faces.marks import RISE
from tagend.cards.faces.plot import Plot
from tagend.cards.leader.leader import NOTHING, Extent, Leader
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import Item, Path, Step, segment
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
    figures = placed_captions(_distances(plotted), plotted.width)
    top = y + _lead(figures, plotted)
    baseline = top + CAP_HEIGHT * plotted.scale.small

    def lead(figure: PlacedCaption) -> tuple[Step, ...]:
        return segment(figure.anchor, y + _TICK * plotted.size, figure.x, top - _CLEAR)

    return Block(lambda: (*_ruled(plotted, y), *_set(figures, baseline, lead)), baseline)


def lengths_above(plotted: Plot, y: float) -> Block:
    """Return the length of each piece, all above y; its height is from there up to y = 0."""
    figures = placed_captions(_lengths(plotted), plotted.width)
    baseline = y - _lead(figures, plotted)

    def lead(figure: PlacedCaption) -> tuple[Step, ...]:
        strand = -plotted.half(figure.anchor) - _CLEAR
        under = baseline + _COMMA * plotted.scale.small
        return segment(figure.x, under, figure.anchor, strand)

    height = CAP_HEIGHT * plotted.scale.small - baseline
    return Block(lambda: tuple(_set(figures, baseline, lead)), height)


def _set(
    figures: Sequence[PlacedCaption],
    baseline: float,
    lead: Callable[[PlacedCaption], tuple[Step, ...]],
) -> Iterator[Item]:
    """Yield the figures, with a line from each that had to move to what it measures."""
    for figure in figures:
        yield from figure.line.at(figure.x, baseline, "centre")
        if figure.moved:
            yield Path(lead(figure), _THIN)


def _lengths(plotted: Plot) -> list[Caption]:
    """Return the figures above; the longer a piece, the more it counts."""
    return [
        _caption(text, band.middle, band.length, plotted)
        for text, band in zip(_said(plotted.told)[0], plotted.bands, strict=True)
    ]


def _distances(plotted: Plot) -> list[Caption]:
    """Return the figures below: of the whole first in weight, then the origin, then the joints.

    A joint counts as much as the longer of its two pieces, so that those of the butt and of the
    tippet stay.
    """
    told, scale, bands = plotted.told, plotted.scale, plotted.bands
    whole, *below = _said(told)[1]
    total = set_line(f"{whole} {told.leader.unit}", scale.bold, scale.small)
    joints = zip(below, pairwise(bands), strict=True)
    return [
        Caption(total, plotted.start, 3 * plotted.width),
        *(
            _caption(text, lower.x, max(upper.length, lower.length), plotted)
            for text, (upper, lower) in joints
        ),
        _caption(told.wording.say("origin"), plotted.end, 2 * plotted.width, plotted),
    ]


@lru_cache(maxsize=16)  # a leader is drawn for many sizes of card
def _said(told: Told) -> tuple[list[str], list[str]]:
    """Return the length of each piece, and the distances."""
    lengths = (piece.finished for piece in told.leader.pieces)
    return list(map(told.span_number, lengths)), list(map(told.span_number, distances(told.leader)))


def _caption(text: str, anchor: float, weight: float, plotted: Plot) -> Caption:
    scale = plotted.scale
    return Caption(set_line(text, scale.medium, scale.small), anchor, weight)


def _ruled(plotted: Plot, y: float) -> Iterator[Path]:
    """Yield the line, a stroke with a line up to the strand at each joint, and the origin."""
    tick, origin = _TICK * plotted.size, _ORIGIN * plotted.size
    yield Path(segment(plotted.start, y, plotted.end - origin, y), _THIN)
    for band in plotted.bands:
        strand = plotted.half(band.x) + RISE + _CLEAR
        yield Path(segment(band.x, strand, band.x, y + tick), _THIN)
        yield Path(segment(band.x - tick, y + tick, band.x + tick, y - tick), _PEN)
    yield Path(circle(plotted.end, y, origin), _PEN)


def _lead(figures: Sequence[PlacedCaption], plotted: Plot) -> float:
    """Return how far the figures stand off the drawing."""
    slants = any(figure.moved for figure in figures)
    return (_FAR if slants else _NEAR) * plotted.scale.small
