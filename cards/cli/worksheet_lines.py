"""Worksheets as lines for a terminal."""

from collections.abc import Iterator, Sequence

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import length, long_length
from tagend.cards.leader.audit.finding import Finding
from tagend.cards.leader.joints import End
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told

_HEADS = ("", "line", "diameter", "strength", "tied", "CUT", "knot to the next")


def audit_lines(sheet: Worksheet) -> list[str]:
    """Return the findings in words, under the leader's name and measure."""
    if not sheet.findings:
        return [_title(sheet.leader), "  nothing to heed"]
    return [_title(sheet.leader), *(_finding_line(finding) for finding in sheet.findings)]


def cut_lines(sheet: Worksheet) -> list[str]:
    """Return the cut list: a row a section, and the ends."""
    leader = sheet.leader
    rows = [_HEADS, *(_row(piece, leader) for piece in leader.pieces), _totals(leader)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADS))]
    lines = [_padded(row, widths) for row in rows]
    head = [_title(leader), f"  at the butt: {_end(leader.butt, leader)}"]
    return [*head, *lines, f"  at the fly: {_end(leader.fly, leader)}", *_asides(sheet)]


def _title(leader: Leader) -> str:
    tippet = leader.tippet.section
    return (
        f"{leader.recipe.name}: {Told(leader, ENGLISH).span(leader.finished)}, "
        f"{counted(len(leader.pieces), 'section')}, "
        f"tippet {tippet.diameter.plain} {tippet.material}"
    )


def _finding_line(finding: Finding) -> str:
    return f"  {finding.severity}: {finding.message} [{finding.rule}; {finding.standing}]"


def _row(piece: Piece, leader: Leader) -> tuple[str, ...]:
    section = piece.section
    last = piece.place == len(leader.pieces)
    finished = (
        section.length.plain
        if leader.recipe.lengths == "finished"
        else Told(leader, ENGLISH).span(piece.finished)
    )
    return (
        str(piece.place),
        section.material,
        section.diameter.plain,
        section.strength.plain if section.strength else "",
        finished,
        "bought" if section.bought else length(piece.cut_mm, leader.unit),
        "" if last else Told(leader, ENGLISH).joint(leader.joints[piece.place - 1]),
    )


def _totals(leader: Leader) -> tuple[str, ...]:
    return (
        "",
        "in all",
        "",
        "",
        Told(leader, ENGLISH).span(leader.finished),
        long_length(leader.cut_mm, leader.unit),
        "",
    )


def _padded(row: Sequence[str], widths: Sequence[int]) -> str:
    cells = (
        cell.rjust(width) if column in (0, 4, 5) else cell.ljust(width)
        for column, (cell, width) in enumerate(zip(row, widths, strict=True))
    )
    return "  " + "  ".join(cells).rstrip()


def _end(end: End, leader: Leader) -> str:
    return Told(leader, ENGLISH).end(end) + (f" ({end.reason})" if end.reason else "")


def _asides(sheet: Worksheet) -> Iterator[str]:
    """Droppers, why the rule chose each knot that it chose, and what `check` has."""
    if words := Told(sheet.leader, ENGLISH).droppers():
        yield f"  {words}"
    if sheet.leader.base.high_mm:
        base = Told(sheet.leader, ENGLISH).span(sheet.leader.base)
        yield f"  base {base}, without what gets replaced"
    for place, joint in enumerate(sheet.leader.joints, start=1):
        if joint.reason:
            yield f"  {place} to {place + 1}: {joint.knot.name}, {joint.reason}"
    grave = sum(finding.severity != "note" for finding in sheet.findings)
    if grave:
        yield f"  `tagend check` has {counted(grave, 'thing')} to heed"
