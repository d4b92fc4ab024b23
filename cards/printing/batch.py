"""A batch of the book in; its bench sheet, cards and labels as one PDF out."""

from collections.abc import Iterator, Mapping, Sequence
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.book.leaders import BookLeader
from tagend.cards.book.tying import TiedBatch
from tagend.cards.faces.batch_head import BatchHead
from tagend.cards.faces.label_lines import PLAIN, LabelNote
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.rack_file import Rack
from tagend.cards.printing.bench import bench_sheets
from tagend.cards.printing.cards import CardWishes, cards_sheets
from tagend.cards.printing.job import Job, Printed, pdf_of
from tagend.cards.printing.labels import LabelWishes, labels_sheets
from tagend.cards.words.language import Wording
from tagend.cards.words.shopping import spool_name
from tagend.layouts.sheets.sheet import Sheet


class BatchWishes(Struct, frozen=True, kw_only=True):
    """What a person wants of a batch on paper; None leaves a kind out."""

    bench: bool = False
    cards: CardWishes | None = None
    labels: LabelWishes | None = None  # without notes, which the book has
    note: LabelNote = PLAIN  # what each label says besides
    paper: str | None = None


def batch_pdf(
    job: Job, tied: TiedBatch, leaders: Sequence[BookLeader], wishes: BatchWishes
) -> Printed:
    """Return a PDF of what is wanted; labels are of these leaders alone.

    Raises `Refused` for what does not fit or cannot be set.
    """
    sheets = [_worksheet(job, tied, place) for place in range(len(tied.batch.orders))]

    def make() -> Iterator[Sheet]:
        if wishes.bench:
            head = BatchHead(tied.number, tied.tied, tied.who)
            yield from bench_sheets(job, sheets, tied.batch, wishes.paper, head)
        if wishes.cards is not None:
            yield from cards_sheets(
                job, sheets, replace(wishes.cards, rack=_rack(tied, job.wording))
            )
        if wishes.labels is not None:
            yield from _labels(job, [tied], leaders, wishes.labels, wishes.note)

    names = ", ".join(sheet.leader.recipe.name for sheet in sheets)
    title = job.wording.say("batch_of", number=tied.number, leaders=names)
    return pdf_of(job, lambda: tuple(make()), sheets, title=title)


def labels_again_pdf(
    job: Job,
    batches: Sequence[TiedBatch],
    leaders: Sequence[BookLeader],
    wishes: LabelWishes,
    note: LabelNote = PLAIN,
) -> Printed:
    """Return a PDF of labels of these leaders, which are of any of the batches.

    Raises `Refused` for what does not fit or cannot be set.
    """
    recipes = [
        _worksheet(job, tied, place) for tied in batches for place in range(len(tied.batch.orders))
    ]
    make = partial(_labels, job, batches, leaders, wishes, note)
    return pdf_of(job, make, recipes, title=job.title("labels", recipes))


def _labels(
    job: Job,
    batches: Sequence[TiedBatch],
    leaders: Sequence[BookLeader],
    wishes: LabelWishes,
    note: LabelNote,
) -> Sequence[Sheet]:
    by_number = {leader.number: leader for leader in leaders}
    noted = [
        (_worksheet(job, tied, place), notes)
        for tied in batches
        for place, order in enumerate(tied.batch.orders)
        if (notes := _notes(job, order.numbers, by_number, note))
    ]
    labels = replace(wishes, notes=tuple(notes for _, notes in noted))
    return labels_sheets(job, [sheet for sheet, _ in noted], labels)


def _worksheet(job: Job, tied: TiedBatch, place: int) -> Worksheet:
    recipe = replace(tied.batch.orders[place].leader.recipe, tied=tied.tied)
    return worksheet(recipe, job.practice)


def _notes(
    job: Job, numbers: Sequence[int], leaders: Mapping[int, BookLeader], note: LabelNote
) -> tuple[LabelNote, ...]:
    return tuple(
        replace(
            note,
            number=job.wording.say("number", number=number),
            tied=leaders[number].tied,
            lots=leaders[number].lots,
        )
        for number in numbers
        if number in leaders
    )


def _rack(tied: TiedBatch, wording: Wording) -> Rack:
    """Return the spools that the batch was cut from, each called with its lot."""
    spools = [pull.spool for pull in tied.batch.pulls if pull.spool is not None]
    names = (spool_name(spool.label, spool.lot, wording) for spool in spools)
    return Rack(
        tuple(replace(spool, label=name) for spool, name in zip(spools, names, strict=True))
    )
