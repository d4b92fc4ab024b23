"""A leader told, in; its lengths and its diameters to tie it by from eye, a line each, out."""

from collections.abc import Sequence

from tagend.cards.base.shown_lengths import thickness
from tagend.cards.base.units import Diameter
from tagend.cards.words.leader_words import Told, along


def lengths_row(told: Told) -> str:
    """Return the finished lengths from the butt: `finished 46 · 24 · 30 in`."""
    numbers = [told.span_number(piece.finished) for piece in told.leader.pieces]
    row = _in_a_row([*numbers[:-1], f"{numbers[-1]} {told.leader.unit}"])
    return told.wording.say("finished_lengths", lengths=row)


def diameters_row(told: Told, *, short: bool) -> str:
    """Return the diameters from the butt, a unit that all have once: `0.023 · 0.020 in`.

    X sizes among others are said in the leader's unit. A short row says those that are whole
    thousandths of an inch so: `23 · 20 thou`.
    """
    pieces = told.leader.pieces
    rows = [told.along(piece) for piece in pieces]
    if short and told.leader.unit == "in" and not any("/" in along(p, _in_thou) for p in pieces):
        rows = [along(piece, _in_thou) for piece in pieces]
    elif len({_unit(row) for row in rows}) > 1:
        rows = [along(piece, lambda thick: _in_unit(thick, told)) for piece in pieces]
    if " " in rows[-1]:
        rows = [*(row.rpartition(" ")[0] for row in rows[:-1]), rows[-1]]
    return _in_a_row(rows)


def _in_a_row(told: Sequence[str]) -> str:
    """Return all in one line, which may only be broken behind a point."""
    return "\u00a0· ".join(each.replace(" ", "\u00a0") for each in told)


def _in_thou(thick: Diameter) -> str:
    return f"{thick.thou} thou"


def _in_unit(thick: Diameter, told: Told) -> str:
    return told.wording.number(thickness(thick.mm, told.leader.unit))


def _unit(row: str) -> str:
    return row.rpartition(" ")[2] if " " in row else "X"
