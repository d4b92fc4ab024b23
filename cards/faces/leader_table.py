"""The table of a leader: what is told of it in; a row a section out, each knot at its junction."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

from tagend.cards.faces.block import Block, Scale, stacked
from tagend.cards.faces.columns import Column, columns
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Item, Path, segment
from tagend.layouts.paper.text import CAP_HEIGHT, SetLine, set_line

_RULE = 0.5  # points, and grey: it leads the eye to the knot
_RULE_GREY = 0.45
_HEAD, _FOOT = 1.25, 0.6  # heights above and below the rows, in small type sizes
_GAP, _NARROW_GAP = 0.5, 0.35  # the least between two columns, in body type sizes
_COMMA = 0.19  # from a baseline to a rule that a comma stands clear of, in its type sizes
_COMMA_PITCH = 1.01  # of the rows, in type sizes of the cuts


@dataclass(frozen=True, slots=True)
class LeaderTable:
    """The blocks of a table: it may go on to another panel between any two rows."""

    heads: tuple[Block, ...]  # for each row, the heading with the knot above that row
    rows: tuple[Block, ...]  # each with the knot below it at its lower edge
    foot: Block  # room for the lower half of the last knot

    def part(self, first: int, end: int) -> Block:
        """Return the rows from `first` up to `end` with their heading, counted from 0."""
        return stacked([self.heads[first], *self.rows[first:end], self.foot])


def needed_width(told: Told, scale: Scale, *, narrow: bool) -> float:
    """Return the least width of a leader's table, which grows with the factor of the scale."""
    gap = (_NARROW_GAP if narrow else _GAP) * scale.body
    return sum(column.width + gap for column in columns(told, scale)) + _widest(
        _knots(told, scale, narrow=narrow)
    )


def table_height(told: Told, scale: Scale) -> float:
    """Return how high a leader's whole table stands, before it is set."""
    return (_HEAD + _FOOT) * scale.small + len(told.leader.pieces) * _pitch(told, scale)


def leader_table(told: Told, scale: Scale, width: float, *, narrow: bool) -> LeaderTable:
    """Return the table of a leader, its columns spread over the width.

    A `narrow` one leaves the sizes of the loops to the card's head.
    """
    of_columns = list(columns(told, scale))
    knots = _knots(told, scale, narrow=narrow)
    free = width - sum(column.width for column in of_columns) - _widest(knots)
    gap = free / len(of_columns)
    *starts, knot_x = accumulate((column.width + gap for column in of_columns), initial=0.0)
    placed = list(zip(of_columns, starts, strict=True))
    head, pitch = _HEAD * scale.small, _pitch(told, scale)
    names = [item for column, x in placed for item in _head(column, x, scale)]

    def row(place: int) -> Block:
        cells = (item for column, x in placed for item in _cell(column, place, x, pitch))
        return Block((*cells, *_junction(knots[place + 1], knot_x, pitch)), pitch)

    return LeaderTable(
        heads=tuple(Block((*names, *_junction(knot, knot_x, head)), head) for knot in knots[:-1]),
        rows=tuple(row(place) for place in range(len(told.leader.pieces))),
        foot=Block((), _FOOT * scale.small),
    )


def _knots(told: Told, scale: Scale, *, narrow: bool) -> list[SetLine]:
    """Return the words at each junction, from the butt to the fly."""
    leader, end = told.leader, told.end_name if narrow else told.end
    words = [end(leader.butt), *map(told.joint, leader.joints), end(leader.fly)]
    return [set_line(knot, scale.medium, scale.small) for knot in words]


def _pitch(told: Told, scale: Scale) -> float:
    """Return how far the rows stand apart: further where a decimal comma hangs over a rule."""
    return max(scale.pitch, _COMMA_PITCH * scale.cut if told.wording.decimal == "," else 0.0)


def _widest(lines: list[SetLine]) -> float:
    return max(line.width for line in lines)


def _junction(knot: SetLine, x: float, y: float) -> tuple[Item, ...]:
    """Set a knot's name at x, and a rule that leads to it along the edge between two rows."""
    rule = Path(segment(0, y, x - 0.35 * knot.size, y), _RULE, _RULE_GREY)
    return (rule, *knot.at(x, y + CAP_HEIGHT * knot.size / 2))


def _head(column: Column, x: float, scale: Scale) -> Iterator[Item]:
    at = x if column.align == "left" else x + column.width
    yield from column.head.at(at, 0.8 * scale.small, column.align)


def _cell(column: Column, row: int, x: float, pitch: float) -> Iterator[Item]:
    cell = column.cells[row]
    baseline = pitch / 2 + CAP_HEIGHT * cell.whole.size / 2
    if "," in cell.whole.text:
        baseline = min(baseline, pitch - _COMMA * cell.whole.size)
    if column.align == "left":
        yield from cell.whole.at(x, baseline)
        return
    edge = x + column.width - column.hang
    yield from cell.whole.at(edge, baseline, "right")
    if cell.fraction is not None:
        lower = CAP_HEIGHT * (cell.fraction.size - cell.whole.size) / 2
        yield from cell.fraction.at(edge + column.gap, baseline + lower)
