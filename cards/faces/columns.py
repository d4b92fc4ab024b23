"""The columns of a card's table: a leader and type sizes in; measured columns of cells out."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from cards.faces.block import Scale
from cards.leader import Leader, Piece
from cards.spell import length_number
from cards.units import Diameter, Strength
from cards.words import span_number
from fonts import Weight
from layouts.text import Align, SetLine, set_line
from layouts.typeset import GAP_WIDTH

Spools = Mapping[int, str]  # what a person calls the spool of a section, by its place


class Cell(NamedTuple):
    """A cell: what aligns, and the fraction that hangs to its right."""

    whole: SetLine
    fraction: SetLine | None


class Column(NamedTuple):
    """One measured column of numbers or words, with its head."""

    head: SetLine
    cells: tuple[Cell, ...]
    align: Align
    gap: float  # between a whole and its hanging fraction
    hang: float  # what the widest fraction takes, its gap too

    @property
    def width(self) -> float:
        return max(self.head.width, self.hang + max(cell.whole.width for cell in self.cells))


def columns(leader: Leader, scale: Scale, spools: Spools) -> tuple[Column, ...]:
    """Return the columns of a leader's table, the number of the section first."""
    return tuple(_columns(leader, scale, spools))


def _columns(leader: Leader, scale: Scale, spools: Spools) -> Iterator[Column]:
    pieces = leader.pieces
    sections = [piece.section for piece in pieces]
    yield _column("", [str(piece.place) for piece in pieces], scale, scale.small)
    lines = [spools.get(piece.place, piece.section.material) for piece in pieces]
    yield _column("spool" if spools else "line", lines, scale, scale.body, "left")
    yield _column(
        *_quantities("dia.", [section.diameter for section in sections]), scale, scale.body
    )
    if any(section.strength for section in sections):
        strengths = _quantities("", [section.strength for section in sections])
        yield _column(*strengths, scale, scale.body)
    tied = [span_number(piece.finished, leader) for piece in pieces]
    yield _column(f"tied, {leader.unit}", tied, scale, scale.body)
    cuts = [_cut(piece, leader) for piece in pieces]
    yield _column(f"CUT, {leader.unit}", cuts, scale, scale.cut, weight="bold")


def _column(
    head: str,
    cells: Sequence[str],
    scale: Scale,
    size: float,
    align: Align = "right",
    weight: Weight = "medium",
) -> Column:
    gap = GAP_WIDTH * size
    split = [_cell(cell, align, weight, size) for cell in cells]
    hang = max((gap + cell.fraction.width for cell in split if cell.fraction), default=0.0)
    return Column(set_line(head, weight, scale.small), tuple(split), align, gap, hang)


def _cell(text: str, align: Align, weight: Weight, size: float) -> Cell:
    """Split a mixed number, so that wholes align and fractions hang: `34 1/4`, and `3/4` alone."""
    whole, _, fraction = text.rpartition(" ")
    if align == "left" or "/" not in fraction or "/" in whole or "–" in text:
        return Cell(set_line(text, weight, size), None)
    return Cell(set_line(whole, weight, size), set_line(fraction, weight, size))


def _quantities(
    word: str, quantities: Sequence[Diameter | Strength | None]
) -> tuple[str, list[str]]:
    """Return a head and cells: the unit stands in the head where all have the same."""
    units = {quantity.unit for quantity in quantities if quantity}
    if len(units) > 1 or units == {"X"}:
        return word or "strength", [quantity.plain if quantity else "" for quantity in quantities]
    (unit,) = units
    cells = [quantity.plain.removesuffix(f" {unit}") if quantity else "" for quantity in quantities]
    return ", ".join(filter(None, (word, unit))), cells


def _cut(piece: Piece, leader: Leader) -> str:
    # In capitals, which have no descenders: rows stand closer than lines of this size.
    return "BUY" if piece.section.bought else length_number(piece.cut_mm, leader.unit)
