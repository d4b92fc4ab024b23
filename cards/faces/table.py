"""The table of a card: a leader in; a row a section out, each knot at its junction."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from cards.faces.block import Block, Scale, stacked
from cards.leader import Leader, Piece
from cards.spell import length_number
from cards.units import Quantity
from cards.words import end_words, span_number
from fonts import Weight
from layouts.face import Item, Path, segment
from layouts.text import CAP_HEIGHT, set_line
from layouts.typeset import GAP_WIDTH

_RULE = 0.5  # points, and grey: it leads the eye to the knot
_RULE_GREY = 0.45


@dataclass(frozen=True, slots=True)
class Column:
    """One column of numbers or words: its head, its cells and how they are set."""

    head: str
    cells: tuple[str, ...]
    weight: Weight
    size: float
    align: Literal["left", "right"]

    def width(self, head_size: float) -> float:
        whole, fraction = self.shares()
        return max(set_line(self.head, "medium", head_size).width, whole + fraction)

    def shares(self) -> tuple[float, float]:
        """Return the widest whole part and the widest hanging fraction."""
        split = [_hang(cell, self.align) for cell in self.cells]
        wholes = max(set_line(whole, self.weight, self.size).width for whole, _ in split)
        fractions = max(set_line(part, self.weight, self.size).width for _, part in split)
        return wholes, fractions + (GAP_WIDTH * self.size if fractions else 0.0)


@dataclass(frozen=True, slots=True)
class Table:
    """The blocks of a table: it may go on to another panel between any two rows."""

    heads: tuple[Block, ...]  # for each row, the heading with the knot above that row
    rows: tuple[Block, ...]  # each with the knot below it at its lower edge
    foot: Block  # room for the lower half of the last knot
    width: float  # what the columns need

    def part(self, first: int, end: int) -> Block:
        """Return the rows from `first` up to `end` with their heading, counted from 0."""
        return stacked([self.heads[first], *self.rows[first:end], self.foot])


def table(leader: Leader, scale: Scale, width: float) -> Table:
    """Return the table of a leader, its columns spread over the width."""
    columns = _columns(leader, scale)
    widths = [column.width(scale.small) for column in columns]
    knots = _knots(leader)
    knot_width = max(set_line(knot, "medium", scale.small).width for knot in knots)
    needed = sum(widths) + knot_width + len(columns) * _least_gap(scale)
    gap = (width - sum(widths) - knot_width) / len(columns)
    starts = list(accumulate((w + gap for w in widths), initial=0.0))
    knot_x = starts[-1]

    def junction(knot: str, y: float) -> tuple[Item, ...]:
        rule = Path(segment(0, y, knot_x - 0.35 * scale.small, y), _RULE, _RULE_GREY)
        baseline = y + CAP_HEIGHT * scale.small / 2
        return (rule, *set_line(knot, "medium", scale.small).at(knot_x, baseline))

    heads = [
        item
        for column, x, w in zip(columns, starts, widths, strict=False)
        for item in _head(column, x, w, scale)
    ]
    head_height = 1.25 * scale.small
    rows = [
        Block(
            (
                *_cells(columns, starts, widths, row, scale),
                *junction(knots[row + 1], scale.pitch),
            ),
            scale.pitch,
        )
        for row in range(len(leader.pieces))
    ]
    all_heads = [Block((*heads, *junction(knot, head_height)), head_height) for knot in knots[:-1]]
    return Table(tuple(all_heads), tuple(rows), Block((), 0.6 * scale.small), needed)


def _least_gap(scale: Scale) -> float:
    return 0.6 * scale.body


def _columns(leader: Leader, scale: Scale) -> list[Column]:
    pieces = leader.pieces
    sections = [piece.section for piece in pieces]
    places = tuple(str(piece.place) for piece in pieces)
    dia_head, dia = _quantities("dia.", [section.diameter for section in sections])
    columns = [
        Column("", places, "medium", scale.small, "right"),
        Column("line", tuple(s.material for s in sections), "medium", scale.body, "left"),
        Column(dia_head, dia, "medium", scale.body, "right"),
    ]
    if any(section.strength for section in sections):
        head, cells = _quantities("", [section.strength for section in sections])
        columns.append(Column(head, cells, "medium", scale.body, "right"))
    tied = tuple(span_number(piece.finished, leader) for piece in pieces)
    cuts = tuple(_cut(piece, leader) for piece in pieces)
    columns.append(Column(f"tied, {leader.unit}", tied, "medium", scale.body, "right"))
    columns.append(Column(f"CUT, {leader.unit}", cuts, "bold", scale.cut, "right"))
    return columns


def _quantities(word: str, quantities: Sequence[Quantity | None]) -> tuple[str, tuple[str, ...]]:
    """Return a head and cells: the unit stands in the head where all have the same."""
    units = {quantity.plain.partition(" ")[2] for quantity in quantities if quantity}
    if len(units) > 1 or units == {""}:
        return word or "strength", tuple(
            quantity.plain if quantity else "" for quantity in quantities
        )
    cells = tuple(quantity.plain.partition(" ")[0] if quantity else "" for quantity in quantities)
    return ", ".join(filter(None, (word, units.pop()))), cells


def _cut(piece: Piece, leader: Leader) -> str:
    return "bought" if piece.section.bought else length_number(piece.cut_mm, leader.unit)


def _knots(leader: Leader) -> list[str]:
    """Return the words at each junction, from the butt to the fly."""
    between = [joint.knot.name for joint in leader.joints]
    return [end_words(leader.butt, leader), *between, end_words(leader.fly, leader)]


def _head(column: Column, x: float, width: float, scale: Scale) -> Iterable[Item]:
    line = set_line(column.head, "bold" if column.weight == "bold" else "medium", scale.small)
    at = x if column.align == "left" else x + width
    return line.at(at, 0.8 * scale.small, column.align)


def _cells(
    columns: Sequence[Column],
    starts: Sequence[float],
    widths: Sequence[float],
    row: int,
    scale: Scale,
) -> Iterable[Item]:
    for column, x, width in zip(columns, starts, widths, strict=False):
        baseline = scale.pitch / 2 + CAP_HEIGHT * column.size / 2
        whole, fraction = _hang(column.cells[row], column.align)
        line = set_line(whole, column.weight, column.size)
        if column.align == "left":
            yield from line.at(x, baseline)
            continue
        hang = x + width - column.shares()[1]
        yield from line.at(hang, baseline, "right")
        part = set_line(fraction, column.weight, column.size)
        yield from part.at(hang + GAP_WIDTH * column.size, baseline)


def _hang(cell: str, align: str) -> tuple[str, str]:
    """Split a mixed number, so that wholes align and fractions hang: `34 1/4`, and `3/4` alone."""
    whole, _, fraction = cell.rpartition(" ")
    if align == "left" or "/" not in fraction or "/" in whole or "–" in cell:
        return cell, ""
    return whole, fraction
