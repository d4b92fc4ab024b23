"""Proposed tapers as lines for a terminal."""

from collections.abc import Iterator, Sequence

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import inches
from tagend.cards.cli.worksheet_lines import audit_lines
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.propose import Proposal
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told


def proposal_lines(place: int, proposal: Proposal, sheet: Worksheet) -> list[str]:
    """Return one taper: how it steps, a row a section with its spool, and its audit."""
    leader = sheet.leader
    rows = [
        _row(piece, strand.label)
        for piece, strand in zip(leader.pieces, proposal.strands, strict=True)
    ]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    table = (
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        for row in rows
    )
    knots = counted(len(leader.joints), "knot")
    whole = Told(leader, ENGLISH).span(leader.finished)
    return [
        f"{place}. {whole}, {knots}; {', '.join(_shares(leader))}",
        f"  steps of {', '.join(inches(joint.meeting.step_mm) for joint in leader.joints)}; "
        f"ratios {', '.join(map(_ratio, leader.joints))}",
        *(f"  {line}".rstrip() for line in table),
        *audit_lines(sheet)[1:],
    ]


def _row(piece: Piece, label: str | None) -> Sequence[str]:
    section = piece.section
    strength = section.strength.plain if section.strength else ""
    length = section.length.plain
    return (length, section.diameter.plain, section.material, strength, piece.part, label or "")


def _shares(leader: Leader) -> Iterator[str]:
    for part in dict.fromkeys(piece.part for piece in leader.pieces):
        mm = sum(piece.finished.high_mm for piece in leader.pieces if piece.part == part)
        yield f"{part} {round(100 * mm / leader.finished.high_mm)} %"


def _ratio(joint: Joint) -> str:
    return f"{float(joint.meeting.upper_mm / joint.meeting.lower_mm):.2f}"
