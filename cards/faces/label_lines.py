"""What a wallet label says: one leader and a note in; its lines out, with those that give way."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from tagend.cards.leader.naming import all_named
from tagend.cards.words.code_legend import key_of_codes
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.fonts import Chain, Fonts

# What gives way, the highest first; the guard, the use and the key come only where there is room.
_DAY, _LOTS, _TO_TIE, _GUARD, _USE, _KEY = range(1, 7)
EXTRA = (_GUARD, _USE, _KEY)


@dataclass(frozen=True, slots=True)
class LabelNote:
    """What a label says besides its leader."""

    number: str | None = None  # such as `3 of 12`, in the label's language
    tied: date | None = None  # where that is another day than its recipe's
    lots: tuple[str, ...] = ()  # of the line in it
    first_out: Literal["butt", "fly"] | None = None  # the end that leaves the wallet first
    test_box: bool = False  # a box to tick when the leader has been pull-tested


PLAIN = LabelNote()


@dataclass(frozen=True, slots=True)
class LabelLine:
    """A line of a label: text, or text with a place to write or tick."""

    text: str
    fonts: Chain
    place: Literal["none", "blank", "box"] = "none"
    spare: int = 0  # of those above 0, the highest give way first, equal ones together


def label_lines(told: Told, fonts: Fonts, note: LabelNote) -> list[LabelLine]:
    """Return all lines in their order: the name first, lots and number last."""
    say, recipe, medium = told.wording.say, told.leader.recipe, fonts.medium
    lines = [
        LabelLine(recipe.name, fonts.bold),
        LabelLine(told.spans(told.leader.finished), fonts.bold),
        LabelLine(say("tippet", strand=told.strand(told.leader.tippet)), medium),
        *(LabelLine(row, medium, spare=_TO_TIE) for row in (told.lengths(), told.diameters())),
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


def giving_way(lines: Sequence[LabelLine]) -> Iterator[list[LabelLine]]:
    """Yield all lines but the extra ones, then ever fewer."""
    for most in range(EXTRA[0] - 1, -1, -1):
        yield [line for line in lines if line.spare <= most]


def _extra(told: Told) -> Iterator[tuple[str, int]]:
    """Yield what a label says where there is room."""
    say, recipe = told.wording.say, told.leader.recipe
    for piece in told.leader.pieces:
        if piece.part == "bite guard":
            yield say("guard", strand=told.strand(piece)), _GUARD
    weight = say("weight", weight=recipe.line_weight) if recipe.line_weight else ""
    if weight or recipe.use:
        yield " · ".join(filter(None, (weight, recipe.use))), _USE
    yield key_of_codes(all_named(told.leader), told.wording), _KEY


def _tied(number: str | None, day: date | None, wording: Wording, fonts: Chain) -> LabelLine:
    """Return a number and the day; where that is not known, a line to write it on."""
    tied = " ".join(filter(None, (f"{number} ·" if number else "", wording.say("tied"))))
    if day is not None:
        return LabelLine(f"{tied}\u00a0{day.isoformat()}", fonts)
    return LabelLine(tied, fonts, "blank", spare=0 if number else _DAY)
