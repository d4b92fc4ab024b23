"""A deck: worksheets and their cards in; cover, cards, reference and cautions out."""

from collections.abc import Sequence

from cards.card_making import paired
from cards.cautions import cautions_for
from cards.faces.deck import care, cover, reference
from cards.practice import Practice
from cards.reference import reference_tables
from cards.shop_file import Shop
from cards.worksheet import Worksheet
from layouts.formats import CardSize
from layouts.imposition import Card


def deck(
    worksheets: Sequence[Worksheet],
    cards: Sequence[Card],
    practice: Practice,
    shop: Shop,
) -> list[Card]:
    """Return the cards between a cover with an index, and a reference and a cautions card.

    All are of the size and lie as the first card does. Raises `TooSmall` where that is too small.
    """
    first = cards[0].front
    size = CardSize("the deck", first.width, first.height)
    leaders = [worksheet.leader for worksheet in worksheets]
    return [
        *paired(cover(leaders, shop.name, shop.line, size)),
        *cards,
        *paired(reference(reference_tables(practice), size)),
        *paired(care(cautions_for(leaders, practice.materials), size)),
    ]
