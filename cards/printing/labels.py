"""Worksheets and how a person wants their labels in, the bytes of a PDF of wallet labels out."""

from collections.abc import Sequence
from contextlib import suppress
from datetime import date
from functools import cache, partial

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label_lines import PLAIN, LabelNote
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.codes import code_text
from tagend.cards.printing.job import Job, Printed, paper_faults, pdf_of
from tagend.cards.printing.label_refusal import Label, found_no_room, too_small
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.cores import made_of
from tagend.layouts.codes.code import LASTING_MODULE, Level, symbol
from tagend.layouts.codes.code_proof import proven
from tagend.layouts.paper.face import Code, Face, Symbol, TextRun
from tagend.layouts.sheets.imposition import place_labels
from tagend.layouts.sheets.margins import with_rules
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import LabelSheet

__all__ = ["LabelNote", "LabelWishes", "labels_pdf", "labels_sheets", "notes_for"]

_A_CORE = 20  # leaders; for fewer, another core costs more than it saves
_LEVELS: tuple[Level, ...] = ("Q", "M")  # of a label's code; Q where it costs nothing


class LabelWishes(Struct, frozen=True):
    """What a person wants of a sheet of labels; None leaves the usual."""

    stock: str | None = None
    notes: tuple[tuple[LabelNote, ...], ...] = ()  # of each leader's labels; else one of each
    start: int = 1
    skip: tuple[int, ...] = ()
    code: bool = True  # or words alone, as the smallest labels hold


def notes_for(
    leaders: int, count: int, note: LabelNote, wording: Wording, *, numbered: bool
) -> tuple[tuple[LabelNote, ...], ...]:
    """Return the notes of so many labels of each leader; numbered ones say `3 of 12`."""
    places = (wording.say("one_of", number=n, count=count) for n in range(1, count + 1))
    notes = tuple(replace(note, number=place) for place in places) if numbered else (note,) * count
    return (notes,) * leaders


def labels_pdf(job: Job, worksheets: Sequence[Worksheet], wishes: LabelWishes) -> Printed:
    """Return a PDF of wallet labels. Raises `Refused` for what does not fit or cannot be set."""
    make = partial(labels_sheets, job, worksheets, wishes)
    return pdf_of(job, make, worksheets, title=job.title("labels", worksheets))


def labels_sheets(
    job: Job, worksheets: Sequence[Worksheet], wishes: LabelWishes
) -> Sequence[Sheet]:
    """Return their sheets, for `pdf_of`. Raises `Refused`, and what `pdf_of` turns into it."""
    stock = job.label_sheet(wishes.stock)
    notes = wishes.notes or ((PLAIN,),) * len(worksheets)
    leaders = list(zip(job.told(worksheets), notes, strict=True))
    made = made_of(leaders, lambda each: _faces(*each, stock, job, wishes), _A_CORE)
    faces = [face for of_leader in made for face in of_leader]
    placed = place_labels(faces, stock, wishes.start, wishes.skip)
    return placed if stock.on_roll else with_rules(placed, job.rules(), kept=stock.boxes)


def _faces(
    told: Told, notes: Sequence[LabelNote], sheet: LabelSheet, job: Job, wishes: LabelWishes
) -> list[Face]:
    """Return the labels of a leader.

    Raises `Refused`, which tells the known sheets that would do and what could be left out,
    where the label is too small.
    """
    made: dict[LabelNote, Face] = {}
    codes: dict[date | None, list[Symbol | None]] = {}
    prove = cache(proven)
    missed: dict[tuple[str, ...], tuple[str, ...]] = {(): ()}  # what is told of each
    with paper_faults(told.leader.recipe.name):
        for note in dict.fromkeys(notes):
            label = Label(told, replace(note, tied=None), sheet, job)
            label = label.with_recipe(tied=note.tied) if note.tied else label
            leader = label.told.leader
            if note.tied not in codes:
                text = code_text(leader, job.practice) if wishes.code else ""
                codes[note.tied] = [symbol(text, way) for way in _LEVELS] if text else [None]
            face = _strongest(label, codes[note.tied])
            for code in (item for item in face.items if isinstance(item, Code)):
                prove(code.symbol)
            if face.left_out not in missed:
                missed[face.left_out] = (found_no_room(label, codes[note.tied][-1], face.left_out),)
            made[note] = replace(face, left_out=missed[face.left_out])
    return [made[note] for note in notes]


def _strongest(label: Label, codes: Sequence[Symbol | None]) -> Face:
    """Return the label with the strongest code that costs no word, nor a module that lasts.

    The plainest of the codes comes last. Raises `Refused` where not even that fits.
    """
    *stronger, plainest = codes
    try:
        face = label.face(plainest)
    except TooSmall:
        raise too_small(label, plainest) from None
    for code in stronger:
        with suppress(TooSmall):
            if code != plainest and _is_no_worse(other := label.face(code), face):
                return other
    return face


def _is_no_worse(other: Face, face: Face) -> bool:
    lasts = _module(other) >= min(_module(face), LASTING_MODULE)
    return lasts and _words(other) == _words(face)


def _module(face: Face) -> float:
    return min(item.module for item in face.items if isinstance(item, Code))


def _words(face: Face) -> list[str]:
    runs = (item.text for item in face.items if isinstance(item, TextRun))
    return sorted(word for run in runs for word in run.split())
