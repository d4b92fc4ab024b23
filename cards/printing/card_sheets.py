"""Cards and how a person wants them on paper in, the sheets to print out."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from tagend.cards.printing.job import Job
from tagend.layouts.paper.lengths import in_mm
from tagend.layouts.sheets.cutouts import Backs, Card
from tagend.layouts.sheets.imposition import MARGIN, place_cards
from tagend.layouts.sheets.margins import registered, with_rules
from tagend.layouts.sheets.pouch import SEALED, Use, pouch_sheet
from tagend.layouts.sheets.press import press_sheets
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.sheets.shelves import RunOrder
from tagend.layouts.stock.formats import CardSize, Paper


@dataclass(frozen=True, slots=True)
class SheetWishes:
    """How cards are to stand on their sheets; lengths are points."""

    backs: Backs = "fold"
    order: RunOrder = "sheet"
    gutter: float = 0.0
    margin: float = MARGIN
    pouch: Use | None = None  # for what use the cards are laminated
    press: bool = False  # for a print shop, each side on a page of its own


def card_sheets(
    cards: Sequence[Card],
    corner: float,
    paper: Paper,
    wishes: SheetWishes,
    job: Job,
) -> tuple[Sheet, ...]:
    """Return the sheets, not yet corrected for the printer. Raises as `place_cards` does."""
    if wishes.press:
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
    wording, medium = job.wording, job.fonts.medium
    film = wording.number(in_mm(SEALED[use]))
    steps = (f"{number}. {step}" for number, step in enumerate(wording.steps("pouch"), 1))
    told = (*steps, wording.say("film_around", film=film))
    sizes = Counter((card.front.width, card.front.height) for card in cards)
    return tuple(
        pouch_sheet(CardSize("card", *size, corner), count, paper, use, told, medium, wishes.margin)
        for size, count in sizes.items()
    )
