"""Cards and how a person wants them on paper in, the sheets to print out."""

from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import length
from tagend.cards.printing.job import Job
from tagend.layouts.paper.face import MM
from tagend.layouts.paper.lengths import in_mm
from tagend.layouts.sheets.cutouts import Backs, Card
from tagend.layouts.sheets.imposition import MARGIN, place_cards
from tagend.layouts.sheets.margins import registered, with_rules
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.sheets.shelves import RunOrder
from tagend.layouts.stock.formats import CardSize, Paper

if TYPE_CHECKING:
    from tagend.layouts.sheets.pouch import Use


class SheetWishes(Struct, frozen=True):
    """How cards are to stand on their sheets; lengths are points."""

    backs: Backs = "fold"
    order: RunOrder = "sheet"
    gutter: float = 0.0
    margin: float = MARGIN
    pouch: "Use | None" = None  # for what use the cards are laminated
    press: bool = False  # for a print shop, each side on a page of its own
    hole: bool = False  # for a ring: beside each card, in its paper or in its film


def card_sheets(
    cards: Sequence[Card],
    corner: float,
    paper: Paper,
    wishes: SheetWishes,
    job: Job,
) -> tuple[Sheet, ...]:
    """Return the sheets, not yet corrected for the printer. Raises as `place_cards` does."""
    if wishes.hole and wishes.pouch is None:
        from tagend.cards.printing.hole import with_hole

        cards = [with_hole(card) for card in cards]
    if wishes.press:
        from tagend.layouts.sheets.press import press_sheets

        return press_sheets(cards)
    sheets = place_cards(
        cards,
        paper,
        margin=wishes.margin,
        gutter=wishes.gutter,
        backs=wishes.backs,
        order=wishes.order,
        corner=corner,
    )
    if wishes.backs == "long-edge" or wishes.backs == "short-edge":
        sheets = registered(sheets, wishes.backs)
    return with_rules((*sheets, *_pouches(cards, corner, paper, wishes, job)), job.rules())


def _pouches(
    cards: Sequence[Card], corner: float, paper: Paper, wishes: SheetWishes, job: Job
) -> tuple[Sheet, ...]:
    """Return one sheet for each size of card: it is laid under every pouch in turn."""
    use = wishes.pouch
    if use is None:
        return ()
    from tagend.layouts.sheets.pouch import HOLE, SEALED, pouch_sheet

    wording, medium = job.wording, job.fonts.medium
    film, across = (_measure(points, job) for points in (SEALED[use], HOLE))
    if wishes.hole:
        steps, last = (
            wording.steps("pouch_hole"),
            wording.say("film_and_hole", film=film, hole=across),
        )
    else:
        steps, last = wording.steps("pouch"), wording.say("film_around", film=film)
    told = (*(f"{number}. {step}" for number, step in enumerate(steps, 1)), last)
    sizes = Counter((card.front.width, card.front.height) for card in cards)
    return tuple(
        pouch_sheet(
            CardSize("card", *size, corner),
            count,
            paper,
            use,
            told,
            medium,
            wishes.margin,
            hole=wishes.hole,
        )
        for size, count in sizes.items()
    )


def _measure(points: float, job: Job) -> str:
    """Return a measure of film as the person's own ruler has it."""
    mm = Fraction(points / MM)
    return job.wording.number(length(mm, "in") if job.practice.unit == "in" else in_mm(points))
