"""Worksheets and how a person wants their labels in, the bytes of a PDF of wallet labels out."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from itertools import islice
from typing import Any

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import PLAIN, LabelNote, wallet_label
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.codes import code_of, code_text
from tagend.cards.printing.job import Job, paper_faults, pdf_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.codes.code import DESIGN_MODULE, Level, symbol
from tagend.layouts.paper.face import Code, Face, Symbol, TextRun
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.sheets.imposition import place_labels
from tagend.layouts.sheets.margins import with_rules
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import LabelSheet

__all__ = ["LabelNote", "LabelWishes", "labels_pdf", "labels_sheets"]

_LEVELS: tuple[Level, ...] = ("Q", "M")  # of a label's code; Q where it costs nothing
_NAMED = 3  # sheets in one message


@dataclass(frozen=True, slots=True)
class LabelWishes:
    """What a person wants of a sheet of labels; None leaves the usual."""

    stock: str | None = None
    notes: tuple[tuple[LabelNote, ...], ...] = ()  # of each leader's labels; else one of each
    start: int = 1
    skip: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Label:
    """A leader that wants a label on a sheet."""

    told: Told
    note: LabelNote
    sheet: LabelSheet
    job: Job

    @property
    def recipe(self) -> Recipe:
        return self.told.leader.recipe

    def with_recipe(self, **fields: Any) -> "_Label":
        leader = replace(self.told.leader, recipe=replace(self.recipe, **fields))
        return replace(self, told=replace(self.told, leader=leader))

    def face(self, code: Symbol) -> Face:
        return wallet_label(self.told, code, self.sheet, self.job.fonts, self.note)

    def holds(self, code: Symbol) -> bool:
        """Whether the sheet's labels hold the leader and its note with a code."""
        try:
            self.face(code)
        except TooSmall:
            return False
        return True


# What a label can do without, the first to go first, and at last only what hands do not need.
_NOTED: Mapping[str, Callable[[_Label], _Label]] = {
    "test box": lambda label: replace(label, note=replace(label.note, test_box=False)),
    "first end": lambda label: replace(label, note=replace(label.note, first_out=None)),
    "number": lambda label: replace(label, note=replace(label.note, number=None)),
    "day": lambda label: label.with_recipe(tied=None),
}
_WRITTEN: Mapping[str, Callable[[_Label], _Label]] = {
    "note": lambda label: label.with_recipe(note=None),
    "use": lambda label: label.with_recipe(use=None),
    "strengths": lambda label: label.with_recipe(
        sections=tuple(replace(section, strength=None) for section in label.recipe.sections)
    ),
}
_SPARED = {**_NOTED, **_WRITTEN}


def labels_pdf(job: Job, worksheets: Sequence[Worksheet], wishes: LabelWishes) -> bytes:
    """Return a PDF of wallet labels. Raises `Refused` for what does not fit or cannot be set."""
    make = partial(labels_sheets, job, worksheets, wishes)
    return pdf_of(job, make, worksheets, title=job.title("labels", worksheets))


def labels_sheets(
    job: Job, worksheets: Sequence[Worksheet], wishes: LabelWishes
) -> Sequence[Sheet]:
    """Return their sheets, for `pdf_of`. Raises `Refused`, and what `pdf_of` turns into it."""
    stock = job.label_sheet(wishes.stock)
    notes = wishes.notes or ((PLAIN,),) * len(worksheets)
    faces = [
        face
        for told, of_leader in zip(job.told(worksheets), notes, strict=True)
        for face in _faces(told, of_leader, stock, job)
    ]
    placed = place_labels(faces, stock, wishes.start, wishes.skip)
    return placed if stock.on_roll else with_rules(placed, job.rules(), kept=stock.boxes)


def _faces(told: Told, notes: Sequence[LabelNote], sheet: LabelSheet, job: Job) -> list[Face]:
    """Return the labels of a leader.

    Raises `Refused`, which tells the known sheets that would do and what could be left out,
    where the label is too small.
    """
    made: dict[LabelNote, Face] = {}
    codes: dict[date | None, list[Symbol]] = {}
    with paper_faults(told.leader.recipe.name):
        for note in dict.fromkeys(notes):
            label = _Label(told, replace(note, tied=None), sheet, job)
            label = label.with_recipe(tied=note.tied) if note.tied else label
            leader = label.told.leader
            if note.tied not in codes:
                codes[note.tied] = [code_of(leader, job.practice, way) for way in _LEVELS]
            made[note] = _strongest(label, codes[note.tied])
    return [made[note] for note in notes]


def _strongest(label: _Label, codes: Sequence[Symbol]) -> Face:
    """Return the label with the strongest code that costs no word and no design module.

    The plainest of the codes comes last. Raises `Refused` where not even that fits.
    By the tables of tests/bench/wear.py such a code outlives damage better, and is seen as well.
    """
    *stronger, plainest = codes
    if not label.holds(plainest):
        raise _too_small(label, plainest)
    face = label.face(plainest)
    for code in stronger:
        if code != plainest and label.holds(code):
            other = label.face(code)
            if _module(other) >= DESIGN_MODULE and _words(other) == _words(face):
                return other
    return face


def _module(face: Face) -> float:
    return min(item.module for item in face.items if isinstance(item, Code))


def _words(face: Face) -> list[str]:
    runs = (item.text for item in face.items if isinstance(item, TextRun))
    return sorted(word for run in runs for word in run.split())


def _too_small(label: _Label, code: Symbol) -> Refused:
    ways = []
    if names := [sheet.name for sheet in islice(_that_hold(label, code), _NAMED)]:
        ways.append(f"use --stock {' or '.join(names)}")
    spared = _to_leave_out(label)
    listed = " and ".join(spared)
    noted = bool(spared) and _NOTED.keys() >= {*spared}
    if spared:
        ways.append(f"leave out its {listed}")
    return refused(
        f"its code of {code.side} modules and its {listed if noted else 'words'} do not fit a "
        f"label of {size_in_mm(label.sheet.width, label.sheet.height)}",
        ", or ".join(ways) or "no label known here is large enough",
        label.recipe.name,
    )


def _that_hold(label: _Label, code: Symbol) -> Iterator[LabelSheet]:
    """Yield the sheets whose labels hold the leader: first of the same kind, smallest first."""
    sheet = label.sheet

    def effort(other: LabelSheet) -> tuple[bool, bool, float]:
        another_kind = other.on_roll != sheet.on_roll
        return another_kind, other.paper != sheet.paper, other.width * other.height

    known = sorted(label.job.stock.labels.values(), key=effort)
    return (other for other in known if replace(label, sheet=other).holds(code))


def _to_leave_out(label: _Label) -> list[str]:
    """Return what the label has to do without to fit; nothing where that does not help either."""
    words: list[str] = []
    for word, without in _SPARED.items():
        if without(label) == label or _fits(label, words):
            continue
        words.append(word)
    if not _fits(label, words):
        return []
    for word in words[:-1]:
        fewer = [each for each in words if each != word]
        words = fewer if _fits(label, fewer) else words
    return words


def _fits(label: _Label, words: Sequence[str]) -> bool:
    """Whether the label fits without all this."""
    for word in words:
        label = _SPARED[word](label)
    return label.holds(symbol(code_text(label.told.leader, label.job.practice)))
