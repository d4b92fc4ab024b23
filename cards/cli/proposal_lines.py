"""Proposed tapers as lines for a terminal."""

from collections.abc import Iterator

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import thickness
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.worksheet_lines import audit_lines
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.passing import Percent, turned_back
from tagend.cards.leader.waves import measure
from tagend.cards.propose.proposal import Proposal
from tagend.cards.words.leader_words import Told


def proposal_lines(place: int, proposal: Proposal, told: Told) -> list[str]:
    """Return one taper: how it steps, a row a section with its spool, and its audit."""
    leader = told.leader
    meetings = [joint.meeting for joint in leader.joints]
    falls = [meeting for meeting in meetings if meeting.step_mm >= 0]  # to a bite guard it rises
    steps = ", ".join(thickness(meeting.step_mm, leader.unit) for meeting in falls)
    ratios = ", ".join(f"{float(meet.upper_mm / meet.lower_mm):.2f}" for meet in falls)
    rows = [
        _row(piece, strand.label or "", told)
        for piece, strand in zip(leader.pieces, proposal.strands, strict=True)
    ]
    whole, knots = told.span(leader.finished), counted(len(meetings), "knot")
    return [
        f"{place}. {whole}, {knots}; {', '.join(_shares(leader))}",
        f"  steps of {steps}; ratios {ratios}",
        f"  {_waves(leader)}",
        *(f"  {line}" for line in in_columns(rows)),
        *audit_lines(told)[1:],
    ]


def _waves(leader: Leader) -> str:
    """Return what a wave meets on its way down."""
    found = measure(leader)
    turned = map(turned_back, found.joints)
    shares = (str(Percent.of(share)) if share else "unknown" for share in turned)
    passed = f"; {Percent.of(found.passed)} of its energy passes" if found.passed else ""
    told = f"{', '.join(shares)} of a wave turn back{passed}"
    return f"{told} (computed for an ideal string: to compare leaders)"


def _row(piece: Piece, label: str, told: Told) -> tuple[str, ...]:
    section = piece.section
    strength = told.strength(section.strength) if section.strength else ""
    length, thick = told.length(section.length), told.diameter(section.diameter)
    return (length, thick, section.material, strength, piece.part, label)


def _shares(leader: Leader) -> Iterator[str]:
    for part in dict.fromkeys(piece.part for piece in leader.pieces):
        mm = sum(piece.finished.high_mm for piece in leader.pieces if piece.part == part)
        yield f"{part} {round(100 * mm / leader.finished.high_mm)} %"
