"""Proposed tapers as lines for a terminal."""

from tagend.cards.base.plural import counted
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.worksheet_lines import audit_lines
from tagend.cards.leader.leader import Piece
from tagend.cards.propose.proposal import Proposal
from tagend.cards.words.leader_words import Told
from tagend.cards.words.taper_words import TaperTold, taper_told


def proposal_lines(place: int, proposal: Proposal, told: Told) -> list[str]:
    """Return one taper: how it steps, a row a section with its spool, and its audit."""
    leader, taper = told.leader, taper_told(told)
    rows = [
        _row(piece, strand.label or "", told)
        for piece, strand in zip(leader.pieces, proposal.strands, strict=True)
    ]
    whole, knots = told.span(leader.finished), counted(len(leader.joints), "knot")
    shares = ", ".join(f"{part} {share} %" for part, share in taper.shares)
    return [
        f"{place}. {whole}, {knots}; {shares}",
        f"  steps of {', '.join(taper.steps)}; ratios {', '.join(taper.ratios)}",
        f"  {_waves(taper)}",
        *(f"  {line}" for line in in_columns(rows)),
        *audit_lines(told)[1:],
    ]


def _waves(taper: TaperTold) -> str:
    """Return what a wave meets on its way down."""
    shares = ", ".join(share or "unknown" for share in taper.turned_back)
    passed = f"; {taper.passed} of its energy passes" if taper.passed else ""
    return (
        f"{shares} of a wave turn back{passed} (computed for an ideal string: to compare leaders)"
    )


def _row(piece: Piece, label: str, told: Told) -> tuple[str, ...]:
    section = piece.section
    strength = told.strength(section.strength) if section.strength else ""
    length, thick = told.length(section.length), told.diameter(section.diameter)
    return (length, thick, section.material, strength, piece.part, label)
