"""Worksheets as lines for a terminal: the audit, the cut list and the sum behind each cut."""

from collections.abc import Iterator
from itertools import groupby

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import (
    ShownUnit,
    hundredths,
    length,
    length_number,
    long_length,
)
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.taper_lines import taper_lines
from tagend.cards.leader.allowance import Allowance
from tagend.cards.leader.audit import Finding
from tagend.cards.leader.joints import End
from tagend.cards.leader.leader import Extent, Leader, Piece
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told

_HEADS = ("", "line", "diameter", "strength", "tied", "CUT", "knot to the next", "")


def audit_lines(sheet: Worksheet) -> list[str]:
    """Return the findings in words, under the leader's name and measure."""
    found = [f"  {finding_line(finding)}" for finding in sheet.findings] or ["  nothing to heed"]
    return [title_line(sheet.leader), *_assumed_parts(sheet.leader), *found]


def finding_line(finding: Finding) -> str:
    """Return one finding in words, with its rule and how well that stands."""
    return f"{finding.severity}: {finding.message} [{finding.rule}; {finding.standing}]"


def cut_lines(leader: Leader, encoding: str | None) -> list[str]:
    """Return the cut list: a drawing, a row a section, and the ends."""
    total, cut = (
        Told(leader, ENGLISH).span(leader.finished),
        long_length(leader.cut_mm, leader.unit),
    )
    rows = [_HEADS, *(_row(piece, leader) for piece in leader.pieces)]
    rows.append(("", "in all", "", "", total, cut, "", ""))
    return [
        title_line(leader),
        *(f"  {line}" for line in taper_lines(leader, encoding)),
        f"  at the butt: {_end(leader.butt, leader)}",
        *(f"  {line}" for line in in_columns(rows, right=(0, 4, 5))),
        f"  at the fly: {_end(leader.fly, leader)}",
        *_asides(leader),
    ]


def cut_sum_lines(leader: Leader) -> list[str]:
    """Return how each cut came about: finished length, what either knot takes, rounding."""
    return [line for piece in leader.pieces for line in _sum_lines(piece, leader)]


def title_line(leader: Leader) -> str:
    """Return which leader it is: its name, measure and tippet."""
    told, tippet = Told(leader, ENGLISH), leader.tippet.section
    return (
        f"{leader.recipe.name}: {told.span(leader.finished)}, "
        f"{counted(len(leader.pieces), 'section')}, "
        f"tippet {told.diameter(tippet.diameter)} {tippet.material}"
    )


def _row(piece: Piece, leader: Leader) -> tuple[str, ...]:
    section, told = piece.section, Told(leader, ENGLISH)
    is_last = piece.place == len(leader.pieces)
    is_as_written = leader.recipe.lengths == "finished" and not piece.bought
    return (
        str(piece.place),
        section.material,
        told.diameter(section.diameter),
        told.strength(section.strength) if section.strength else "",
        told.length(section.length) if is_as_written else _on_tape(piece.finished, leader.unit),
        f"{told.length(section.length)} bought"
        if piece.bought
        else length(piece.cut_mm, leader.unit),
        "" if is_last else told.joint(leader.joints[piece.place - 1]),
        "" if is_last else told.lap(piece.place),
    )


def _on_tape(lengths: Extent, unit: ShownUnit) -> str:
    """Return a length, or a range, to a mark of the tape however long it is."""
    longest = length(lengths.high_mm, unit)
    is_one = lengths.low_mm == lengths.high_mm
    return longest if is_one else f"{length_number(lengths.low_mm, unit)} to {longest}"


def _end(end: End, leader: Leader) -> str:
    told = Told(leader, ENGLISH)
    words = ", ".join(filter(None, (told.end(end), told.fold(end))))
    return f"{words} ({end.reason})" if end.reason else words


def _asides(leader: Leader) -> Iterator[str]:
    """Parts, droppers, the base, and why the rule chose each knot that it chose."""
    yield from _assumed_parts(leader)
    if words := Told(leader, ENGLISH).droppers():
        yield f"  {words}"
    if leader.base.high_mm:
        base = Told(leader, ENGLISH).span(leader.base)
        yield f"  base {base}, without what gets replaced"
    if leader.loops_mm:
        loops = length(leader.loops_mm, leader.unit)
        yield f"  loops, which stand out beyond the knots: {loops}"
    for place, joint in enumerate(leader.joints, start=1):
        if joint.reason:
            yield f"  {place} to {place + 1}: {joint.knot.name}, {joint.reason}"


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
    section, told = piece.section, Told(leader, ENGLISH)
    thick = told.diameter(section.diameter)
    yield f"  section {piece.place}, {thick} {section.material}, {piece.part}"
    cut = length(piece.cut_mm, leader.unit)
    finished = f"{told.span(piece.finished)} knot to knot"
    if piece.bought:
        sign, start, end = "-", f"{told.length(section.length)} bought ready made", finished
    elif leader.recipe.lengths == "cut":
        sign, start, end = "-", f"{cut} cut", finished
    else:
        sign, start, end = "+", finished, f"cut {cut}"
    yield f"    {start}, as the recipe says"
    yield from _allowance_lines(f"    {sign}", "at the butt end", piece.at_butt, leader)
    yield from _allowance_lines(f"    {sign}", "at the fly end", piece.at_fly, leader)
    if section.dropper:
        yield f"    {sign} {told.length(section.dropper)} left long for a dropper"
    yield f"    = {end}"


def _allowance_lines(sign: str, where: str, taken: Allowance, leader: Leader) -> Iterator[str]:
    is_exact = leader.recipe.lengths == "cut"
    takes = (hundredths if is_exact else length)(taken.takes_mm, leader.unit)
    if taken.shares:
        how = "" if is_exact else f", {hundredths(taken.mm, leader.unit)} up to a mark"
    else:
        how = ", your own lap" if taken.knot else ""
    yield f"{sign} {takes} {where}, {taken.knot or 'nothing to tie'}{how}"
    for share in taken.shares:
        mm = hundredths(share.mm, leader.unit)
        yield f"        {mm:>8}  {share.into}: {share.told(leader.unit)}"
