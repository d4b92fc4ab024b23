"""A deck: what its cards say in; cover, cards, reference and cautions out, all lying alike."""

from collections.abc import Sequence
from dataclasses import replace

from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.deck import care, cover, reference
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.card_sizes import CardSizes, cards_alike, cards_of, paired
from tagend.cards.printing.job import Job
from tagend.layouts.base.faults import refused
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize


def deck_cards(texts: Sequence[CardText], sizes: CardSizes) -> list[tuple[Card, ...]]:
    """Return the cards of each leader, all of one size and all lying or all upright.

    A deck that grows takes the next larger size that holds them all. Raises `Refused`.
    """
    for size in sizes.to_try():
        made = cards_alike(texts, size, sizes.fonts)
        if made is not None:
            return made
    for text in texts:  # the one that is too large says so
        cards_of(text, replace(sizes, grows=False))
    raise refused("these leaders fit no deck whose cards all lie alike", "choose a larger --size")


def deck(job: Job, worksheets: Sequence[Worksheet], cards: Sequence[Card]) -> list[Card]:
    """Return the cards between a cover with an index, and a reference and a cautions card.

    All are of the size and lie as the first card does. Raises `TooSmall` where that is too small.
    """
    first = cards[0].front
    size = CardSize("the deck", first.width, first.height)
    tables = reference_tables(job.practice, job.wording)
    return [
        *paired(cover(job.told(worksheets), job.imprint, size, job.fonts)),
        *cards,
        *paired(reference(tables, size, job.fonts)),
        *paired(care(job.cautions(worksheets), job.wording, size, job.fonts)),
    ]
