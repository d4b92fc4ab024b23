"""The table of a card: a leader in; a row a section out, each knot at its junction."""

from collections.abc import Iterator
from itertools import accumulate
from typing import NamedTuple

from cards.faces.block import Block, Scale, stacked
from cards.faces.columns import Cell, Column, Spools, columns
from cards.leader import Leader
from cards.words import end_words, joint_words
from layouts.face import Item, Path, segment
from layouts.text import CAP_HEIGHT, SetLine, set_line

_RULE = 0.5  # points, and grey: it leads the eye to the knot
_RULE_GREY = 0.45
_GAP = 0.5  # the least between two columns, in body type sizes


class Table(NamedTuple):
    """The blocks of a table: it may go on to another panel between any two rows."""

    heads: tuple[Block, ...]  # for each row, the heading with the knot above that row
    rows: tuple[Block, ...]  # each with the knot below it at its lower edge
    foot: Block  # room for the lower half of the last knot

    def part(self, first: int, end: int) -> Block:
        """Return the rows from `first` up to `end` with their heading, counted from 0."""
        return stacked([self.heads[first], *self.rows[first:end], self.foot])


def needed_width(leader: Leader, scale: Scale, spools: Spools) -> float:
    """Return the least width of a leader's table, which grows with the factor of the scale."""
    of_columns = columns(leader, scale, spools)
    gaps = len(of_columns) * _GAP * scale.body
    return sum(column.width for column in of_columns) + gaps + _widest(_knots(leader, scale))


def table(leader: Leader, scale: Scale, width: float, spools: Spools) -> Table:
    """Return the table of a leader, its columns spread over the width."""
    of_columns, knots = columns(leader, scale, spools), _knots(leader, scale)
    free = width - sum(column.width for column in of_columns) - _widest(knots)
    gap = free / len(of_columns)
    *starts, knot_x = accumulate((column.width + gap for column in of_columns), initial=0.0)
    placed = list(zip(of_columns, starts, strict=True))
    heads = [item for column, x in placed for item in _head(column, x, scale)]
    head_height = 1.25 * scale.small
    rows = [
        Block(
            (
                *(item for column, x in placed for item in _cell(column, row, x, scale)),
                *_junction(knots[row + 1], knot_x, scale.pitch),
            ),
            scale.pitch,
        )
        for row in range(len(leader.pieces))
    ]
    return Table(
        heads=tuple(
            Block((*heads, *_junction(knot, knot_x, head_height)), head_height)
            for knot in knots[:-1]
        ),
        rows=tuple(rows),
        foot=Block((), 0.6 * scale.small),
    )


def _knots(leader: Leader, scale: Scale) -> list[SetLine]:
    """Return the words at each junction, from the butt to the fly."""
    between = [joint_words(joint) for joint in leader.joints]
    words = [end_words(leader.butt, leader), *between, end_words(leader.fly, leader)]
    return [set_line(knot, "medium", scale.small) for knot in words]


def _widest(lines: list[SetLine]) -> float:
    return max(line.width for line in lines)


def _junction(knot: SetLine, x: float, y: float) -> tuple[Item, ...]:
    """Set a knot's name at x, and a rule that leads to it along the edge between two rows."""
    rule = Path(segment(0, y, x - 0.35 * knot.size, y), _RULE, _RULE_GREY)
    return (rule, *knot.at(x, y + CAP_HEIGHT * knot.size / 2))


def _head(column: Column, x: float, scale: Scale) -> Iterator[Item]:
    at = x if column.align == "left" else x + column.width
    yield from column.head.at(at, 0.8 * scale.small, column.align)


def _cell(column: Column, row: int, x: float, scale: Scale) -> Iterator[Item]:
    cell: Cell = column.cells[row]
    baseline = scale.pitch / 2 + CAP_HEIGHT * cell.whole.size / 2
    if column.align == "left":
        yield from cell.whole.at(x, baseline)
        return
    edge = x + column.width - column.hang
    yield from cell.whole.at(edge, baseline, "right")
    if cell.fraction is not None:
        yield from cell.fraction.at(edge + column.gap, baseline)
