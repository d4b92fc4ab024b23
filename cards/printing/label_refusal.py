"""A label that a sheet of labels is too small for, in; what would hold it, in a line, out."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import wallet_label
from tagend.cards.faces.label_lines import LabelNote
from tagend.cards.printing.codes import code_text
from tagend.cards.printing.job import Job
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.leader_words import Told
from tagend.cards.words.refusal_words import words_in
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.codes.code import symbol
from tagend.layouts.paper.face import Face, Symbol
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.stock.formats import LabelSheet

_NAMED = 3  # sheets in one message


class Label(Struct, frozen=True):
    """A leader that wants a label on a sheet."""

    told: Told
    note: LabelNote
    sheet: LabelSheet
    job: Job

    @property
    def recipe(self) -> Recipe:
        return self.told.leader.recipe

    def with_recipe(self, **fields: Any) -> "Label":
        leader = replace(self.told.leader, recipe=replace(self.recipe, **fields))
        return replace(self, told=replace(self.told, leader=leader))

    def face(self, code: Symbol | None) -> Face:
        return wallet_label(self.told, code, self.sheet, self.job.fonts, self.note)

    def holds(self, code: Symbol | None, *, all_of_it: bool = False) -> bool:
        """Whether the sheet's labels hold the leader and its note with a code, or without one.

        `all_of_it`: with whatever a person may miss.
        """
        try:
            return not (self.face(code).left_out and all_of_it)
        except TooSmall:
            return False


# What a label can do without, the first to go first, and at last only what hands do not need.
_NOTED: Mapping[str, Callable[[Label], Label]] = {
    "test box": lambda label: replace(label, note=replace(label.note, test_box=False)),
    "first end": lambda label: replace(label, note=replace(label.note, first_out=None)),
    "number": lambda label: replace(label, note=replace(label.note, number=None)),
    "day": lambda label: label.with_recipe(tied=None),
}
_WRITTEN: Mapping[str, Callable[[Label], Label]] = {
    "note": lambda label: label.with_recipe(note=None),
    "use": lambda label: label.with_recipe(use=None),
    "strengths": lambda label: label.with_recipe(
        sections=tuple(replace(section, strength=None) for section in label.recipe.sections)
    ),
}
_SPARED = {**_NOTED, **_WRITTEN}


_MISSED = {"to tie": "the lines to tie by", "lots": "the lots", "tippet": "the whole tippet"}


def too_small(label: Label, code: Symbol | None) -> Refused:
    """Return the refusal, which tells the known sheets that would do and what could be left out."""
    ways = _ways(label, code)
    spared = _to_leave_out(label, coded=code is not None)
    listed = " and ".join(spared)
    noted = bool(spared) and _NOTED.keys() >= {*spared}
    if spared:
        ways.append(f"leave out its {listed}")
    what = f"its code of {code.side} modules and its " if code else "its "
    does = "does" if code is None and noted and len(spared) == 1 else "do"
    return refused(
        f"{what}{listed if noted else 'words'} {does} not fit a label of {_size(label)}",
        ", or ".join(ways) or "no label known here is large enough",
        label.recipe.name,
    )


def found_no_room(label: Label, code: Symbol | None, left_out: Sequence[str]) -> str:
    """Return a line of what a label left out, and which would hold it, in the shop's language."""
    what = " and ".join(_MISSED[each] for each in left_out)
    ways = ", or ".join(_ways(label, code, all_of_it=True))
    found = f"{label.recipe.name}: a label of {_size(label)} has no room for {what}"
    return words_in(label.job.wording.language, f"{found}; {ways}" if ways else found)


def _size(label: Label) -> str:
    return size_in_mm(label.sheet.width, label.sheet.height)


def _ways(label: Label, code: Symbol | None, *, all_of_it: bool = False) -> list[str]:
    """Return the known sheets that hold the label, and whether words alone fit its own."""
    holding = islice(_that_hold(label, code, all_of_it=all_of_it), _NAMED)
    names = " or ".join(sheet.name for sheet in holding)
    alone = code is not None and label.holds(None, all_of_it=all_of_it)
    by_sheet = [f"use --stock {names}"] if names else []
    return [*by_sheet, *(["print words alone with --no-code"] if alone else [])]


def _that_hold(label: Label, code: Symbol | None, *, all_of_it: bool) -> Iterator[LabelSheet]:
    """Yield the sheets whose labels hold the leader: first of the same kind, smallest first."""
    sheet = label.sheet

    def effort(other: LabelSheet) -> tuple[bool, bool, float]:
        another_kind = other.on_roll != sheet.on_roll
        return another_kind, other.paper != sheet.paper, other.width * other.height

    known = sorted(label.job.stock.labels.values(), key=effort)
    return (
        other for other in known if replace(label, sheet=other).holds(code, all_of_it=all_of_it)
    )


def _to_leave_out(label: Label, *, coded: bool) -> list[str]:
    """Return what the label has to do without to fit; nothing where that does not help either."""
    words: list[str] = []
    for word, without in (_SPARED if coded else _NOTED).items():
        if without(label) == label or _fits(label, words, coded=coded):
            continue
        words.append(word)
    if not _fits(label, words, coded=coded):
        return []
    for word in words[:-1]:
        fewer = [each for each in words if each != word]
        words = fewer if _fits(label, fewer, coded=coded) else words
    return words


def _fits(label: Label, words: Sequence[str], *, coded: bool) -> bool:
    """Whether the label fits without all this."""
    for word in words:
        label = _SPARED[word](label)
    text = code_text(label.told.leader, label.job.practice) if coded else None
    return label.holds(symbol(text) if text else None)
