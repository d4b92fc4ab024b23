"""Worksheets as lines for a terminal: the audit, the cut list and the sum behind each cut."""

from collections.abc import Iterator
from itertools import groupby

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import hundredths, length, long_length
from tagend.cards.cli.columns import in_columns
from tagend.cards.leader.allowance import Allowance
from tagend.cards.leader.joints import End
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told

_HEADS = ("", "line", "diameter", "strength", "tied", "CUT", "knot to the next")


def audit_lines(sheet: Worksheet) -> list[str]:
    """Return the findings in words, under the leader's name and measure."""
    findings = [
        f"  {finding.severity}: {finding.message} [{finding.rule}; {finding.standing}]"
        for finding in sheet.findings
    ]
    found = findings or ["  nothing to heed"]
    return [_title(sheet.leader), *_assumed_parts(sheet.leader), *found]


def cut_lines(sheet: Worksheet) -> list[str]:
    """Return the cut list: a row a section, and the ends."""
    leader = sheet.leader
    total, cut = (
        Told(leader, ENGLISH).span(leader.finished),
        long_length(leader.cut_mm, leader.unit),
    )
    rows = [_HEADS, *(_row(piece, leader) for piece in leader.pieces)]
    rows.append(("", "in all", "", "", total, cut, ""))
    return [
        _title(leader),
        f"  at the butt: {_end(leader.butt, leader)}",
        *(f"  {line}" for line in in_columns(rows, right=(0, 4, 5))),
        f"  at the fly: {_end(leader.fly, leader)}",
        *_asides(sheet),
    ]


def cut_sum_lines(leader: Leader) -> list[str]:
    """Return how each cut came about: finished length, what either knot takes, rounding."""
    return [line for piece in leader.pieces for line in _sum_lines(piece, leader)]


def _title(leader: Leader) -> str:
    tippet = leader.tippet.section
    return (
        f"{leader.recipe.name}: {Told(leader, ENGLISH).span(leader.finished)}, "
        f"{counted(len(leader.pieces), 'section')}, "
        f"tippet {tippet.diameter.plain} {tippet.material}"
    )


def _row(piece: Piece, leader: Leader) -> tuple[str, ...]:
    section = piece.section
    is_last = piece.place == len(leader.pieces)
    is_as_written = leader.recipe.lengths == "finished"
    return (
        str(piece.place),
        section.material,
        section.diameter.plain,
        section.strength.plain if section.strength else "",
        section.length.plain if is_as_written else Told(leader, ENGLISH).span(piece.finished),
        "bought" if section.bought else length(piece.cut_mm, leader.unit),
        "" if is_last else Told(leader, ENGLISH).joint(leader.joints[piece.place - 1]),
    )


def _end(end: End, leader: Leader) -> str:
    return Told(leader, ENGLISH).end(end) + (f" ({end.reason})" if end.reason else "")


def _asides(sheet: Worksheet) -> Iterator[str]:
    """Parts, droppers, why the rule chose each knot that it chose, and what `check` has."""
    yield from _assumed_parts(sheet.leader)
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


def _assumed_parts(leader: Leader) -> Iterator[str]:
    """Yield which section is taken for which part, where the recipe doesn't say."""
    taken = []
    for (part, named), run in groupby(leader.pieces, lambda each: (each.part, each.section.part)):
        places = [str(piece.place) for piece in run]
        if named is None:
            taken.append(f"{' to '.join(dict.fromkeys([places[0], places[-1]]))} {part}")
    if taken:
        yield f"  parts, as taken from their places: {'; '.join(taken)}"


def _sum_lines(piece: Piece, leader: Leader) -> Iterator[str]:
    section = piece.section
    yield f"  section {piece.place}, {section.diameter.plain} {section.material}, {piece.part}"
    if section.bought:
        yield f"    {section.length.plain} bought ready made"
        return
    cut = length(piece.cut_mm, leader.unit)
    finished = f"{Told(leader, ENGLISH).span(piece.finished)} knot to knot"
    exact = hundredths(piece.finished.high_mm + piece.allowance_mm, leader.unit)
    if leader.recipe.lengths == "cut":
        sign, start, end = "-", f"{cut} cut", finished
    else:
        sign, start, end = "+", finished, f"{exact}, cut {cut} (rounded up to the tape)"
    yield f"    {start}, as the recipe says"
    yield from _allowance_lines(f"    {sign}", "at the butt end", piece.at_butt, leader)
    yield from _allowance_lines(f"    {sign}", "at the fly end", piece.at_fly, leader)
    yield f"    = {end}"


def _allowance_lines(sign: str, where: str, taken: Allowance, leader: Leader) -> Iterator[str]:
    yield f"{sign} {hundredths(taken.mm, leader.unit)} {where}, {taken.knot or 'bare end'}"
    for share in taken.shares:
        yield f"        {hundredths(share.mm, leader.unit):>8}  {share.into}: {share.how}"
