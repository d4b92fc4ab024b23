"""Leaders as lines for a terminal: the audit, the cut list and the sum behind each cut."""

from collections.abc import Iterator
from itertools import groupby

from cfractions import Fraction

from tagend.cards.base.shown_lengths import hundredths
from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.taper_lines import taper_lines
from tagend.cards.leader.allowance import Allowance
from tagend.cards.leader.joints import End
from tagend.cards.leader.leader import NOTHING, Extent, Piece
from tagend.cards.words.heed_words import finding_line
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words


def audit_lines(told: Told) -> list[str]:
    """Return the findings in words, under the leader's name and measure."""
    found = [f"  {line}" for line in finding_lines(told)]
    nothing = f"  {told.wording.say('nothing_to_heed')}"
    return [title_line(told), *_assumed_parts(told), *(found or [nothing])]


def finding_lines(told: Told) -> Iterator[str]:
    """Yield each finding in words."""
    return (finding_line(finding, told) for finding in told.findings)


def cut_lines(told: Told, encoding: str | None) -> list[str]:
    """Return the cut list: a drawing, a row a section, and the ends."""
    leader, say = told.leader, told.wording.say
    total, cut = told.span(leader.finished), told.span(NOTHING.longer(leader.cut_mm))
    rows = [_heads(told), *(_row(piece, told) for piece in leader.pieces)]
    rows.append(("", say("altogether"), "", "", total, cut, "", ""))
    return [
        title_line(told),
        *(f"  {line}" for line in taper_lines(leader, encoding)),
        f"  {say('at_the_butt')}: {_end(leader.butt, told)}",
        *(f"  {line}" for line in in_columns(rows, right=(0, 4, 5))),
        f"  {say('at_the_fly')}: {_end(leader.fly, told)}",
        *_asides(told),
    ]


def cut_sum_lines(told: Told) -> list[str]:
    """Return how each cut came about: finished length, what either knot takes, rounding."""
    return [line for piece in told.leader.pieces for line in _sum_lines(piece, told)]


def title_line(told: Told) -> str:
    """Return which leader it is: its name, measure and tippet."""
    leader = told.leader
    return f"{leader.recipe.name}: {told.span(leader.finished)}, {told.sections()}"


def _heads(told: Told) -> tuple[str, ...]:
    say = told.wording.say
    line = say("line"), say("whole_diameter"), say("strength")
    return ("", *line, say("tied_length"), say("cut_length"), say("next_knot"), "")


def _row(piece: Piece, told: Told) -> tuple[str, ...]:
    section, leader, say = piece.section, told.leader, told.wording.say
    is_last = piece.place == len(leader.pieces)
    is_as_written = leader.recipe.lengths == "finished" and not piece.bought
    return (
        str(piece.place),
        told.wording.material(section.material),
        told.diameter(section.diameter),
        told.strength(section.strength) if section.strength else "",
        told.length(section.length) if is_as_written else _on_tape(piece.finished, told),
        say("so_much_bought", length=told.length(section.length))
        if piece.bought
        else told.taken(piece.cut_mm),
        "" if is_last else told.joint(leader.joints[piece.place - 1]),
        "" if is_last else told.lap(piece.place),
    )


def _on_tape(lengths: Extent, told: Told) -> str:
    """Return a length, or a range, to a mark of the tape however long it is."""
    high = told.taken(lengths.high_mm)
    if lengths.low_mm == lengths.high_mm:
        return high
    low = told.taken_number(lengths.low_mm)
    return told.wording.say("range", low=low, high=high)


def _end(end: End, told: Told) -> str:
    words = ", ".join(filter(None, (told.end(end), told.fold(end))))
    return f"{words} ({in_words(end.reason, told)})" if end.reason else words


def _asides(told: Told) -> Iterator[str]:
    """Parts, droppers, the base, and why the rule chose each knot that it chose."""
    leader, say = told.leader, told.wording.say
    yield from _assumed_parts(told)
    if words := told.droppers():
        yield f"  {words}"
    if leader.base.high_mm:
        yield f"  {say('base_length', length=told.span(leader.base))}"
    if leader.loops_mm:
        yield f"  {say('loops_outside', length=told.taken(leader.loops_mm))}"
    for place, joint in enumerate(leader.joints, start=1):
        if joint.reason:
            both = say("range", low=place, high=place + 1)
            knot = told.wording.knot(joint.knot.name)
            yield f"  {both}: {knot}, {in_words(joint.reason, told)}"


def _assumed_parts(told: Told) -> Iterator[str]:
    """Yield which section is taken for which part, where the recipe doesn't say."""
    pieces, say, taken = told.leader.pieces, told.wording.say, []
    for (part, named), run in groupby(pieces, lambda each: (each.part, each.section.part)):
        low, *_, high = (*run,) * 2
        if named is None:
            places = str(low.place)
            if low is not high:
                places = say("range", low=low.place, high=high.place)
            taken.append(say("part_at", sections=places, part=told.wording.term(part)))
    if taken:
        yield f"  {say('parts_taken', parts='; '.join(taken))}"


def _sum_lines(piece: Piece, told: Told) -> Iterator[str]:
    section, leader, say = piece.section, told.leader, told.wording.say
    strand = told.kind(told.diameter(section.diameter), section.material)
    part = told.wording.term(piece.part)
    yield f"  {say('section_and_part', section=piece.place, strand=strand, part=part)}"
    cut = told.taken(piece.cut_mm)
    finished = say("finished_length", length=told.span(piece.finished))
    if piece.bought:
        start = say("length_ready_made", length=told.length(section.length))
        sign, end = "-", finished
    elif leader.recipe.lengths == "cut":
        sign, start, end = "-", say("length_of_cut", length=cut), finished
    else:
        sign, start, end = "+", finished, say("cut_comes_to", length=cut)
    yield f"    {say('as_recipe_says', length=start)}"
    yield from _allowance_lines(f"    {sign}", say("at_butt_end"), piece.at_butt, told)
    yield from _allowance_lines(f"    {sign}", say("at_fly_end"), piece.at_fly, told)
    if section.dropper:
        yield f"    {sign} {say('left_for_dropper', length=told.length(section.dropper))}"
    yield f"    = {end}"


def _allowance_lines(sign: str, where: str, taken: Allowance, told: Told) -> Iterator[str]:
    is_exact, wording = told.leader.recipe.lengths == "cut", told.wording
    takes = _exactly(taken.takes_mm, told) if is_exact else told.taken(taken.takes_mm)
    knot = wording.knot(taken.knot) if taken.knot else wording.say("nothing_to_tie")
    how = [f"{takes} {where}", knot]
    if taken.shares and not is_exact:
        how.append(wording.say("up_to_mark", length=_exactly(taken.mm, told)))
    elif taken.knot and not taken.shares:
        how.append(wording.say("own_lap"))
    yield f"{sign} {', '.join(how)}"
    for share in taken.shares:
        into = wording.term(share.into)
        yield f"        {_exactly(share.mm, told):>8}  {into}: {in_words(share.how, told)}"


def _exactly(mm: Fraction, told: Told) -> str:
    return told.wording.number(hundredths(mm, told.leader.unit))
