"""Worksheets and a card size in; the cards that teach their knots, each once, out."""

from collections.abc import Sequence

from tagend.cards.faces.knots import knots_card
from tagend.cards.faces.pocket import FACTORS, LARGE
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.card_sizes import paired
from tagend.cards.printing.job import Job
from tagend.cards.words.lessons import lessons
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize


def knots_cards(
    job: Job, worksheets: Sequence[Worksheet], size: CardSize, *, large: bool
) -> tuple[Card, ...]:
    """Return the cards, in `large` type where that is asked for. Raises `TooSmall`."""
    taught = lessons(*job.told(worksheets))
    factors = [factor for factor in FACTORS if factor >= LARGE or not large]
    return paired(knots_card(taught, size, job.fonts, factors, job.imprint))
