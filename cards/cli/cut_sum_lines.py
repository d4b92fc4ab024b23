"""The sum behind each cut, as lines for a terminal."""

from collections.abc import Iterator

from tagend.cards.base.shown_lengths import hundredths, length
from tagend.cards.leader.allowance import Allowance
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told


def cut_sum_lines(leader: Leader) -> list[str]:
    """Return how each cut came about: finished length, what either knot takes, rounding."""
    return [line for piece in leader.pieces for line in _piece_lines(piece, leader)]


def _piece_lines(piece: Piece, leader: Leader) -> Iterator[str]:
    section = piece.section
    yield f"  section {piece.place}, {section.diameter.plain} {section.material}, {piece.part}"
    if section.bought:
        yield f"    {section.length.plain} bought ready made"
        return
    if leader.recipe.lengths == "cut":
        yield f"    {length(piece.cut_mm, leader.unit)} cut, as the recipe says"
    else:
        yield f"    {Told(leader, ENGLISH).span(piece.finished)} knot to knot, as the recipe says"
    yield from _end_lines("at the butt end", piece.at_butt, leader)
    yield from _end_lines("at the fly end", piece.at_fly, leader)
    if leader.recipe.lengths == "cut":
        yield f"    = {Told(leader, ENGLISH).span(piece.finished)} knot to knot"
        return
    exact = piece.finished.high_mm + piece.allowance_mm
    yield (
        f"    = {hundredths(exact, leader.unit)}, "
        f"cut {length(piece.cut_mm, leader.unit)} (rounded up to the tape)"
    )


def _end_lines(where: str, allowance: Allowance, leader: Leader) -> Iterator[str]:
    sign = "-" if leader.recipe.lengths == "cut" else "+"
    knot = allowance.knot or "bare end"
    yield f"    {sign} {hundredths(allowance.mm, leader.unit)} {where}, {knot}"
    for share in allowance.shares:
        yield f"        {hundredths(share.mm, leader.unit):>8}  {share.into}: {share.how}"
