"""What is to be printed as the page says it, and a shop's job, in; the PDF out."""

from collections.abc import Callable, Mapping, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.desk.typed import Typed
from tagend.cards.faces.label_lines import LabelNote
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.rack_file import Rack
from tagend.cards.printing.bench import bench_pdf
from tagend.cards.printing.card_sheets import SheetWishes
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.counter import counter_pdf
from tagend.cards.printing.job import Job, Printed
from tagend.cards.printing.labels import LabelWishes, labels_pdf, notes_for
from tagend.layouts.base.faults import under
from tagend.layouts.sheets.cutouts import Backs
from tagend.layouts.sheets.imposition import MARGIN
from tagend.layouts.sheets.pouch import Use
from tagend.layouts.sheets.shelves import RunOrder

BACKS: tuple[Backs, ...] = ("fold", "long-edge", "short-edge", "separate")
ORDERS: tuple[RunOrder, ...] = ("sheet", "stack")
POUCHES: tuple[Use | None, ...] = (None, "wet", "dry")
FIRST: tuple[Literal["butt", "fly"] | None, ...] = (None, "butt", "fly")
COPIES_MOST = 1000
SHOPPING_MOST = 10_000
_PLACES_MOST = 1000  # on a sheet of labels


class ToPrint(Struct, frozen=True):
    """Leaders worked out, and what there is to print them with."""

    job: Job
    worksheets: Sequence[Worksheet]
    rack: Rack | None
    typed: Typed

    @property
    def each(self) -> int:
        """How many of each leader."""
        return self.typed.count("copies", COUNT_MOST) or 1

    def stock(self, key: str, known: Callable[[str | None], object]) -> str | None:
        """Return a name of stock, or None for the usual. Raises `Refused` for one not known."""
        name = self.typed.text(key)
        with under(key):
            known(name)
        return name


def _cards(wanted: ToPrint) -> Printed:
    return cards_pdf(wanted.job, wanted.worksheets, _card_wishes(wanted))


def _knots(wanted: ToPrint) -> Printed:
    wishes = replace(_card_wishes(wanted), knots=True)
    return cards_pdf(wanted.job, wanted.worksheets, wishes)


def _card_wishes(wanted: ToPrint) -> CardWishes:
    typed = wanted.typed
    return CardWishes(
        size=wanted.stock("size", wanted.job.card_size),
        paper=wanted.stock("paper", wanted.job.paper),
        sheets=_sheet_wishes(typed),
        copies=typed.count("copies", COPIES_MOST) or 1,
        rack=wanted.rack if typed.flag("spools") else None,
        deck=typed.flag("deck"),
        taught=not typed.flag("brief"),
        large=typed.flag("large"),
        shopping=typed.count("shopping", SHOPPING_MOST),
        ruler=typed.flag("ruler"),
    )


def _sheet_wishes(typed: Typed) -> SheetWishes:
    hole = typed.flag("hole")
    if typed.flag("press"):
        return SheetWishes(press=True, hole=hole)
    return SheetWishes(
        backs=typed.one_of("backs", BACKS),
        order=typed.one_of("order", ORDERS),
        gutter=typed.points("gutter", 0.0),
        margin=typed.points("margin", MARGIN),
        pouch=typed.one_of("pouch", POUCHES),
        hole=hole,
    )


def _labels(wanted: ToPrint) -> Printed:
    typed, job, worksheets = wanted.typed, wanted.job, wanted.worksheets
    note = LabelNote(first_out=typed.one_of("first", FIRST), test_box=typed.flag("test_box"))
    numbered = typed.flag("numbered")
    wishes = LabelWishes(
        stock=wanted.stock("stock", job.label_sheet),
        notes=notes_for(len(worksheets), wanted.each, note, job.wording, numbered=numbered),
        start=typed.count("start", _PLACES_MOST) or 1,
        skip=typed.counts("skip", _PLACES_MOST),
        code=not typed.flag("no_code"),
    )
    return labels_pdf(job, worksheets, wishes)


def _bench(wanted: ToPrint) -> Printed:
    orders = [Order(each.leader, wanted.each) for each in wanted.worksheets]
    rack = None if wanted.typed.flag("no_rack") else wanted.rack
    batch = cut_batch(orders, rack)
    paper = wanted.stock("paper", wanted.job.paper)
    return bench_pdf(wanted.job, wanted.worksheets, batch, paper)


def _counter(wanted: ToPrint) -> Printed:
    paper, codes = wanted.stock("paper", wanted.job.paper), not wanted.typed.flag("no_code")
    return counter_pdf(wanted.job, wanted.worksheets, paper, codes=codes)


KINDS: Mapping[str, Callable[[ToPrint], Printed]] = {
    "cards": _cards,
    "knots": _knots,
    "labels": _labels,
    "bench": _bench,
    "counter": _counter,
}
