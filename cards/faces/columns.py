"""The columns of a card's table: a leader and type sizes in; measured columns of cells out."""

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit, length_number
from tagend.cards.faces.block import Scale
from tagend.cards.words.leader_words import Told
from tagend.fonts import Chain
from tagend.layouts.paper.face import TextRun
from tagend.layouts.paper.text import CAP_HEIGHT, Align, SetLine, set_line

_INCHES = re.compile(r"0([.,][0-9]+) in")
_DECIMAL = re.compile(r"(\d*)([.,]\d+)")
_COMMA = 0.19  # from a baseline to a rule that a comma stands clear of, in its type sizes


class Cell(Struct, frozen=True):
    """A cell: what aligns, and the fraction or the decimals that hang to its right."""

    whole: SetLine
    fraction: SetLine | None = None
    gap: float = 0.0  # between them
    is_word: bool = False  # which ends where the fractions end


class Column(Struct, frozen=True):
    """One measured column of numbers or words, with its head."""

    head: SetLine
    cells: tuple[Cell, ...]
    align: Align
    hang: float  # what the widest fraction takes, its gap too

    @property
    def width(self) -> float:
        hangs = ((0.0 if cell.is_word else self.hang) + cell.whole.width for cell in self.cells)
        return max(self.head.width, *hangs)

    def head_at(self, x: float, y: float) -> tuple[TextRun, ...]:
        """Return the head with its baseline at y, in a column that starts at x."""
        return self.head.at(x if self.align == "left" else x + self.width, y, self.align)

    def cell_at(self, row: int, x: float, pitch: float) -> Iterator[TextRun]:
        """Yield a row's cell, in the middle of a row as high as the pitch."""
        cell = self.cells[row]
        baseline = pitch / 2 + CAP_HEIGHT * cell.whole.size / 2
        if "," in cell.whole.text or (cell.fraction and "," in cell.fraction.text):
            baseline = min(baseline, pitch - _COMMA * cell.whole.size)
        if self.align == "left":
            yield from cell.whole.at(x, baseline)
            return
        edge = x + self.width - (0.0 if cell.is_word else self.hang)
        yield from cell.whole.at(edge, baseline, "right")
        if cell.fraction is not None:
            yield from cell.fraction.at(edge + cell.gap, baseline)


def columns(told: Told, scale: Scale) -> Iterator[Column]:
    """Yield the columns of a leader's table, the number of the section first."""
    leader, wording = told.leader, told.wording
    pieces, say = leader.pieces, wording.say
    yield column("", [str(piece.place) for piece in pieces], scale, scale.small)
    lines = [
        told.spools.get(piece.place) or wording.material(piece.section.material) for piece in pieces
    ]
    for place, piece in enumerate(pieces):
        if piece.section.tapers_to is not None:
            thin = _bare(told.diameter(piece.section.tapers_to))
            lines[place] = say("line_tapers", line=lines[place], diameter=thin)
        if piece.bought and (place or leader.butt.knot):  # else the knot's row says it
            lines[place] = f"{lines[place]}, {told.length(piece.section.length)}"
    yield column(say("spool" if told.spools else "line"), lines, scale, scale.small, "left")
    yield column(*_diameters(told), scale, scale.body)
    strengths = [piece.section.strength for piece in pieces]
    if any(strengths):
        plain = [told.strength(strength) if strength else "" for strength in strengths]
        unit, bears = quantities("", plain)
        yield column(unit or say("strength"), bears, scale, scale.body)
    tied = [told.span_number(piece.finished) for piece in pieces]
    yield column(say("tied"), tied, scale, scale.body)
    # In capitals, which have no descenders: rows stand closer than lines of this size.
    cuts = _cuts(told, leader.unit, say("buy"))
    yield column(say("cut", unit=leader.unit), cuts, scale, scale.cut, bold=True)
    if second := leader.second_unit:
        yield column(second, _cuts(told, second, ""), scale, scale.body)


def _diameters(told: Told) -> tuple[str, Sequence[str]]:
    """Return their head and cells; thousandths of an inch go without the nought and the unit."""
    thick = [told.diameter(piece.section.diameter) for piece in told.leader.pieces]
    if all(_INCHES.fullmatch(each) or each.endswith("X") for each in thick):
        return told.wording.say("diameter"), list(map(_bare, thick))
    return quantities(told.wording.say("diameter"), thick)


def _bare(diameter: str) -> str:
    """Return `.023` for 0.023 in, `0,43` for 0,43 mm and `4X` as it is."""
    inches = _INCHES.fullmatch(diameter)
    return inches[1] if inches else diameter.partition(" ")[0]


def _cuts(told: Told, unit: ShownUnit, bought: str) -> list[str]:
    return [
        bought if p.bought else told.wording.number(length_number(p.cut_mm, unit))
        for p in told.leader.pieces
    ]


def column(
    head: str,
    cells: Sequence[str],
    scale: Scale,
    size: float,
    align: Align = "right",
    *,
    bold: bool = False,
) -> Column:
    """Return a column of cells in type of a size, its head in the small type of the scale."""
    fonts = scale.bold if bold else scale.medium
    split = [_cell(cell, align, fonts, size) for cell in cells]
    return Column(
        head=set_line(head, fonts, scale.small),
        cells=tuple(split),
        align=align,
        hang=max((cell.gap + cell.fraction.width for cell in split if cell.fraction), default=0.0),
    )


def _cell(text: str, align: Align, fonts: Chain, size: float) -> Cell:
    """Split a number, so that wholes align and the rest hangs: `34 1/4`, `3/4` alone, `8.5`."""

    def hanging(whole: str, rest: str, gap: float) -> Cell:
        return Cell(set_line(whole, fonts, size), set_line(rest, fonts, size), gap)

    whole, _, fraction = text.rpartition(" ")
    if align == "right" and "/" in fraction and "/" not in whole and "–" not in text:
        return hanging(whole, fraction, set_line(" ", fonts, size).width)
    if align == "right" and (decimal := _DECIMAL.fullmatch(text)):
        return hanging(decimal[1], decimal[2], 0.0)
    return Cell(set_line(text, fonts, size), is_word=not any(map(str.isdigit, text)))


def quantities(word: str, quantities: Sequence[str]) -> tuple[str, Sequence[str]]:
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
