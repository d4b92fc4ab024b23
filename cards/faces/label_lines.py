"""What a wallet label says: one leader and a note in; its lines out, with those that give way."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Literal

from msgspec import Struct

from tagend.cards.leader.naming import all_named
from tagend.cards.words.code_legend import how_it_reads, key_of_codes
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.to_tie import diameters_row, lengths_row
from tagend.fonts import Chain, Fonts

# What gives way, the highest first; the guard, the use and the key come only where there is room.
_DAY, _LOTS, _TO_TIE, _GUARD, _USE, _KEY = range(1, 7)
GIVING_WAY = range(_TO_TIE, -1, -1)
EXTRA = (_GUARD, _USE, _KEY)
_MISSED = {_TO_TIE: "to tie", _LOTS: "lots"}

# With the finished length on the name's line and diameters in thousandths it is `tight`; `brief` it
# says no more than the name, the finished length and the tippet's diameter.
Form = Literal["whole", "tight", "brief"]


class LabelNote(Struct, frozen=True):
    """What a label says besides its leader."""

    number: str | None = None  # such as `3 of 12`, in the label's language
    tied: date | None = None  # where that is another day than its recipe's
    lots: tuple[str, ...] = ()  # of the line in it
    first_out: Literal["butt", "fly"] | None = None  # the end that leaves the wallet first
    test_box: bool = False  # a box to tick when the leader has been pull-tested


PLAIN = LabelNote()


class LabelLine(Struct, frozen=True):
    """A line of a label: text, or text with a place to write or tick."""

    text: str
    fonts: Chain
    place: Literal["none", "blank", "box"] = "none"
    spare: int = 0  # of those above 0, the highest give way first, equal ones together


def label_lines(told: Told, fonts: Fonts, note: LabelNote, form: Form = "whole") -> list[LabelLine]:
    """Return all lines in their order: the name first, lots and number last."""
    say, recipe, medium = told.wording.say, told.leader.recipe, fonts.medium
    to_tie = lengths_row(told), diameters_row(told, short=form != "whole")
    lines = [
        *_head(told, fonts, form),
        *(LabelLine(row, medium, spare=_TO_TIE) for row in to_tie),
        *(LabelLine(row, medium, spare=spare) for row, spare in _extra(told)),
    ]
    if note.first_out is not None:
        lines.append(LabelLine(say(f"{note.first_out}_first"), medium))
    if note.test_box:
        lines.append(LabelLine(say("pull_tested"), medium, "box"))
    if note.lots:
        lots = say("lots_of", count=len(note.lots), lots=", ".join(note.lots))
        lines.append(LabelLine(lots, medium, spare=_LOTS))
    return [*lines, _tied(note.number, note.tied or recipe.tied, told.wording, medium)]


def _head(told: Told, fonts: Fonts, form: Form) -> list[LabelLine]:
    """Return the name, the finished length and the tippet."""
    name, leader = told.leader.recipe.name, told.leader
    if form == "brief":
        inches = f"{told.span_number(leader.finished)} {leader.unit}"
        short = min(told.span(leader.finished), inches, key=len)  # `11 ft`, but `143–149 in`
        tippet = told.diameter(leader.tippet.section.diameter)
        return [LabelLine(name, fonts.bold), LabelLine(f"{short}, {tippet}", fonts.medium)]
    said = told.spans(leader.finished)
    names = (name, said) if form == "whole" else (", ".join((name, said.replace(" ", "\u00a0"))),)
    strand = told.wording.say("tippet", strand=told.strand(leader.tippet))
    return [*(LabelLine(each, fonts.bold) for each in names), LabelLine(strand, fonts.medium)]


def left_out(lines: Sequence[LabelLine], form: Form, most: int) -> tuple[str, ...]:
    """Return what a person may miss of a label in this form, without what gives way sooner."""
    spared = {line.spare for line in lines if most < line.spare}
    gone = (name for spare, name in _MISSED.items() if spare in spared)
    return (*gone, "tippet") if form == "brief" else tuple(gone)


def _extra(told: Told) -> Iterator[tuple[str, int]]:
    """Yield what a label says where there is room."""
    say, recipe = told.wording.say, told.leader.recipe
    for piece in told.leader.pieces:
        if piece.part == "bite guard":
            yield say("guard", strand=told.strand(piece)), _GUARD
    weight = say("weight", weight=recipe.line_weight) if recipe.line_weight else ""
    if weight or recipe.use:
        yield "\u00a0· ".join(filter(None, (weight, recipe.use))), _USE
    tied = all_named(told.leader)
    yield "; ".join(how_it_reads(tied, told.wording)), _KEY
    if key := key_of_codes(tied, told.wording):
        yield key, _KEY


def _tied(number: str | None, day: date | None, wording: Wording, fonts: Chain) -> LabelLine:
    """Return a number and the day; where that is not known, a line to write it on."""
    tied = " ".join(filter(None, (f"{number} ·" if number else "", wording.say("tied"))))
    if day is not None:
        return LabelLine(f"{tied}\u00a0{day.isoformat()}", fonts)
    return LabelLine(tied, fonts, "blank", spare=0 if number else _DAY)
