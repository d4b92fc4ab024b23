"""The columns of a card's table: a leader and type sizes in; measured columns of cells out."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from tagend.cards.base.shown_lengths import ShownUnit, length_number
from tagend.cards.faces.block import Scale
from tagend.cards.faces.told import Told
from tagend.cards.leader.leader import Piece
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import diameter, span_number
from tagend.fonts import Chain
from tagend.layouts.paper.text import Align, SetLine, set_line
from tagend.layouts.paper.typeset import GAP_WIDTH

_FRACTION = 1.12  # of the whole number's size: as high as a row lets its small figures be


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


def columns(told: Told, scale: Scale) -> tuple[Column, ...]:
    """Return the columns of a leader's table, the number of the section first."""
    return tuple(_columns(told, scale))


def _columns(told: Told, scale: Scale) -> Iterator[Column]:
    leader, wording = told.leader, told.wording
    pieces, say = leader.pieces, wording.say
    yield _column("", [str(piece.place) for piece in pieces], scale, scale.small)
    lines = [
        told.spools.get(piece.place) or wording.material(piece.section.material) for piece in pieces
    ]
    yield _column(say("spool" if told.spools else "line"), lines, scale, scale.body, "left")
    thick = [diameter(piece.section.diameter, leader, wording) for piece in pieces]
    yield _column(*_quantities(say("diameter"), thick), scale, scale.body)
    strengths = [piece.section.strength for piece in pieces]
    if any(strengths):
        plain = [wording.number(strength.plain) if strength else "" for strength in strengths]
        unit, bears = _quantities("", plain)
        yield _column(unit or say("strength"), bears, scale, scale.body)
    tied = [span_number(piece.finished, leader, wording) for piece in pieces]
    yield _column(say("finished", unit=leader.unit), tied, scale, scale.body)
    cuts = [_cut(piece, leader.unit, wording) for piece in pieces]
    yield _column(say("cut", unit=leader.unit), cuts, scale, scale.cut, bold=True)
    if leader.second_unit:
        again = [
            "" if piece.section.bought else _cut(piece, leader.second_unit, wording)
            for piece in pieces
        ]
        yield _column(leader.second_unit, again, scale, scale.body)


def _column(
    head: str,
    cells: Sequence[str],
    scale: Scale,
    size: float,
    align: Align = "right",
    *,
    bold: bool = False,
) -> Column:
    fonts = scale.bold if bold else scale.medium
    gap = GAP_WIDTH * size
    split = [_cell(cell, align, fonts, size) for cell in cells]
    hang = max((gap + cell.fraction.width for cell in split if cell.fraction), default=0.0)
    return Column(set_line(head, fonts, scale.small), tuple(split), align, gap, hang)


def _cell(text: str, align: Align, fonts: Chain, size: float) -> Cell:
    """Split a mixed number, so that wholes align and fractions hang: `34 1/4`, and `3/4` alone."""
    whole, _, fraction = text.rpartition(" ")
    if align == "left" or "/" not in fraction or "/" in whole or "–" in text:
        return Cell(set_line(text, fonts, size), None)
    return Cell(set_line(whole, fonts, size), set_line(fraction, fonts, _FRACTION * size))


def _quantities(word: str, quantities: Sequence[str]) -> tuple[str, Sequence[str]]:
    """Return a head and cells: the unit stands in the head where all have the same."""
    units = {_unit(quantity) for quantity in quantities if quantity}
    if len(units) > 1:
        return word, quantities
    (unit,) = units
    cells = [quantity.removesuffix(f" {unit}") for quantity in quantities]
    return ", ".join(filter(None, (word, unit))), cells


def _unit(quantity: str) -> str:
    """Return the unit, which an X size has none of."""
    return quantity.rpartition(" ")[2] if " " in quantity else ""


def _cut(piece: Piece, unit: ShownUnit, wording: Wording) -> str:
    # In capitals, which have no descenders: rows stand closer than lines of this size.
    if piece.section.bought:
        return wording.say("buy")
    return wording.number(length_number(piece.cut_mm, unit))
