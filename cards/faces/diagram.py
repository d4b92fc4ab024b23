"""The section diagram: a leader in; its pieces to scale, told apart in black alone, out."""

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from cards.faces.block import Block, Scale, line_block, stacked
from cards.faces.pattern import Band, patterned
from cards.faces.spread import spread
from cards.leader import Leader
from cards.materials import Materials
from cards.parts import fly_end_mm
from cards.words import span, span_number
from layouts.curves import circle
from layouts.face import Item, Path, segment, shifted
from layouts.text import SetLine, break_lines, set_line

_FACTORS = (1, 2, 3, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500)
_LOOP = 9.0  # points along the line at factor 1, and half as high
_PEN = 0.5
_BRANCH = 1.8  # points; a dropper hangs so far below the strand
_MOVED = 1.5  # points; a label moved further than this gets a line to its piece


def diagram(leader: Leader, materials: Materials, scale: Scale, width: float) -> Block:
    """Return the leader drawn along the width, lengths above it and materials below.

    Lengths are to scale; thickness is exaggerated over that scale by the factor it prints.
    """
    loop = _LOOP * scale.factor if leader.butt.loop_mm else 0.0
    per_mm = (width - loop) / float(leader.finished.high_mm)
    room = 9.0 * scale.factor
    factor = thickness_factor(leader, per_mm, room)
    top = 1.25 * scale.small
    bands = list(_bands(leader, per_mm, factor, loop, top + room / 2))
    centres = [band.x + band.length / 2 for band in bands]
    items: list[Item] = list(_loop(loop, top + room / 2))
    for band, piece in zip(bands, leader.pieces, strict=True):
        items += patterned(band, materials.find(piece.section.material).pattern)
    items += _junctions(leader, bands)
    items += _lengths(leader, bands, centres, scale, width)
    words = _materials(leader, centres, scale)
    caption = _caption(leader, factor)
    hangs = any(piece.section.dropper for piece in leader.pieces)
    baseline = top + room + (_BRANCH if hangs else 0.0) + 1.0 * scale.small
    below = baseline + 0.25 * scale.small
    row = _row([(set_line(caption, "medium", scale.small), 0.0), *words], scale, width, baseline)
    if row is not None:
        return Block((*items, *row), below)
    items += _row(words, scale, width, baseline) or ()
    lines = stacked(map(line_block, break_lines(caption, "medium", scale.small, width)))
    return Block((*items, *shifted(lines.items, 0, below)), below + lines.height)


def _caption(leader: Leader, factor: int) -> str:
    """Say the exaggeration, and what the leader measures without what gets replaced."""
    base = span(leader.base, leader)
    return f"base {base} · thickness × {factor}" if leader.base.high_mm else f"thickness × {factor}"


def thickness_factor(leader: Leader, per_mm: float, room: float) -> int:
    """Return the largest round factor at which the thickest piece stays within the room."""
    sections = [piece.section for piece in leader.pieces]
    thickest = max(max(section.diameter.mm, fly_end_mm(section)) for section in sections)
    fitting = [factor for factor in _FACTORS if float(thickest) * per_mm * factor <= room]
    return max(fitting, default=1)


def _bands(leader: Leader, per_mm: float, factor: int, x: float, middle: float) -> Iterator[Band]:
    for piece in leader.pieces:
        length = float(piece.finished.high_mm) * per_mm
        at_butt = float(piece.section.diameter.mm) * per_mm * factor
        at_fly = float(fly_end_mm(piece.section)) * per_mm * factor
        yield Band(x, middle, length, at_butt, at_fly)
        x += length


def _loop(width: float, middle: float) -> Iterator[Path]:
    """Draw the loop at the butt as an eye of two curves, its tip at x = 0."""
    if not width:
        return
    rise = width * 0.35
    yield Path(
        (
            ("move", width, middle),
            ("curve", width * 0.6, middle - rise, 0.0, middle - rise, _PEN, middle),
            ("curve", 0.0, middle + rise, width * 0.6, middle + rise, width, middle),
        ),
        1.0,
    )


def _junctions(leader: Leader, bands: Sequence[Band]) -> Iterator[Path]:
    """Draw a bar over both strands for a knot, a ring for a ring, and a dropper as a branch."""
    end = bands[-1].x + bands[-1].length
    for (upper, lower), joint, piece in zip(
        pairwise(bands), leader.joints, leader.pieces, strict=False
    ):
        half = max(upper.to_thick, lower.from_thick) / 2 + 1.2
        if joint.knot.apart:
            yield Path(circle(min(max(lower.x, half), end - half), lower.y, half), 1.0, fill=1.0)
        else:
            yield Path(segment(lower.x, lower.y - half, lower.x, lower.y + half), 1.2)
        if piece.section.dropper is not None:
            x, y = min(lower.x + 2 * _BRANCH, end), lower.y + half + _BRANCH
            yield Path(segment(lower.x, lower.y, x, y), 0.8)


def _lengths(
    leader: Leader, bands: Sequence[Band], centres: Sequence[float], scale: Scale, width: float
) -> Iterator[Item]:
    """Write each finished length over its piece; where it had to move, a line leads back."""
    lines = [
        set_line(span_number(piece.finished, leader), "medium", scale.small)
        for piece in leader.pieces
    ]
    places = spread(centres, [line.width + 0.5 * scale.small for line in lines], width)
    if places is None:  # the table has them all
        return
    for line, band, centre, place in zip(lines, bands, centres, places, strict=True):
        yield from line.at(place, 0.8 * scale.small, "centre")
        if abs(place - centre) > _MOVED:
            top = band.y - band.half(centre) - 0.6
            yield Path(segment(place, 0.95 * scale.small, centre, top), 0.25)


def _materials(
    leader: Leader, centres: Sequence[float], scale: Scale
) -> list[tuple[SetLine, float]]:
    """Return each run of one material as its word and the middle of its pieces."""
    places = zip(leader.pieces, centres, strict=True)
    words = []
    for material, group in groupby(places, key=lambda place: place[0].section.material):
        middles = [middle for _, middle in group]
        word = set_line(material, "medium", scale.small)
        words.append((word, (middles[0] + middles[-1]) / 2))
    return words


def _row(
    words: Sequence[tuple[SetLine, float]], scale: Scale, width: float, baseline: float
) -> tuple[Item, ...] | None:
    """Return words on one line near where they want to be, or None where they do not fit."""
    gap = 0.8 * scale.small
    places = spread(
        [middle for _, middle in words], [word.width + gap for word, _ in words], width + gap
    )
    if places is None:
        return None
    return tuple(
        item
        for (word, _), place in zip(words, places, strict=True)
        for item in word.at(place - gap / 2, baseline, "centre")
    )
