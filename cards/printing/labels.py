"""Worksheets and how a person wants their labels in, the bytes of a PDF of wallet labels out."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice, repeat
from typing import Literal

from tagend.cards.code.notation import write_notation
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import LabelNote, wallet_label
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.codes import code_of
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

_LEVELS: tuple[Level, ...] = ("Q", "M")  # of a label's code; Q where it costs nothing
_NAMED = 3  # sheets in one message
# What a recipe can do without, the first to go first: hands need the rest.
_SPARED: tuple[tuple[str, Callable[[Recipe], Recipe]], ...] = (
    ("note", lambda recipe: replace(recipe, note=None)),
    ("use", lambda recipe: replace(recipe, use=None)),
    (
        "strengths",
        lambda recipe: replace(
            recipe, sections=tuple(replace(section, strength=None) for section in recipe.sections)
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class LabelWishes:
    """What a person wants of a sheet of labels; None leaves the usual."""

    stock: str | None = None
    count: int = 1
    start: int = 1
    skip: tuple[int, ...] = ()
    numbers: tuple[tuple[str, ...], ...] = ()  # of each recipe's labels, where they are numbered
    first_out: Literal["butt", "fly"] | None = None  # the end that leaves the wallet first
    test_box: bool = False  # a box to tick when the leader has been pull-tested


@dataclass(frozen=True, slots=True)
class _Label:
    """A leader that wants labels on a sheet."""

    told: Told
    sheet: LabelSheet
    job: Job

    def face(self, code: Symbol, note: LabelNote) -> Face:
        return wallet_label(self.told, code, self.sheet, self.job.fonts, note)

    def holds(self, code: Symbol) -> bool:
        """Whether the sheet's labels hold the leader with a code, and no note."""
        try:
            self.face(code, LabelNote())
        except TooSmall:
            return False
        return True


def labels_pdf(job: Job, worksheets: Sequence[Worksheet], wishes: LabelWishes) -> bytes:
    """Return a PDF of wallet labels. Raises `Refused` for what does not fit or cannot be set."""

    def sheets() -> Sequence[Sheet]:
        stock = job.label_sheet(wishes.stock)
        labels = (_Label(told, stock, job) for told in job.told(worksheets))
        faces = [
            face
            for label, numbers in zip(labels, wishes.numbers or repeat(()), strict=False)
            for face in _faces(label, numbers, wishes)
        ]
        placed = place_labels(faces, stock, wishes.start, wishes.skip)
        return placed if stock.on_roll else with_rules(placed, job.rules(), kept=stock.boxes)

    return pdf_of(job, sheets, worksheets, title=job.title("labels", worksheets))


def _faces(label: _Label, numbers: Sequence[str], wishes: LabelWishes) -> list[Face]:
    """Return the labels of a leader.

    Raises `Refused`, which tells the known sheets that would do and what could be left out,
    where the label is too small.
    """
    recipe = label.told.leader.recipe
    plain = LabelNote(first_out=wishes.first_out, test_box=wishes.test_box)
    notes = [replace(plain, number=number) for number in numbers] or [plain]
    with paper_faults(recipe.name):
        codes = [code_of(recipe, label.job.practice, level) for level in _LEVELS]
        try:
            made = [_strongest(label, codes, note) for note in notes]
        except TooSmall:
            raise _too_small(label, codes[-1]) from None
    return made if numbers else made * wishes.count


def _strongest(label: _Label, codes: Sequence[Symbol], note: LabelNote) -> Face:
    """Return the label with the strongest code that costs no word and no design module.

    The plainest of the codes comes last.
    By the tables of tests/bench/wear.py such a code outlives damage better, and is seen as well.
    """
    *stronger, plainest = codes
    face = label.face(plainest, note)
    for code in stronger:
        if code != plainest and label.holds(code):
            other = label.face(code, note)
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
    if words := _to_leave_out(label):
        ways.append(f"leave out its {' and '.join(words)}")
    return refused(
        f"its code of {code.side} modules and its words do not fit a label of "
        f"{size_in_mm(label.sheet.width, label.sheet.height)}",
        ", or ".join(ways) or "no label known here is large enough",
        label.told.leader.recipe.name,
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
    """Return what the recipe has to do without to fit; nothing where that does not help either."""
    practice, recipe = label.job.practice, label.told.leader.recipe
    left_out = []
    for word, without in _SPARED:
        if (shorter := without(recipe)) == recipe:
            continue
        recipe = shorter
        left_out.append(word)
        if label.holds(symbol(write_notation(recipe, practice.knots, practice.materials))):
            return left_out
    return []
