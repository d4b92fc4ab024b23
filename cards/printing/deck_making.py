"""A deck: what its cards say in; cover, cards, reference and cautions out, all lying alike."""

from collections.abc import Iterable, Sequence

from tagend.cards.faces.deck import care, cover, reference
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.card_making import CardText, cards_alike, cards_of, larger, paired
from tagend.cards.words.cautions import cautions_for
from tagend.cards.words.language import Wording
from tagend.layouts.base.faults import refused
from tagend.layouts.paper.raster import Raster
from tagend.layouts.sheets.imposition import Card
from tagend.layouts.stock.formats import CardSize


def deck_cards(
    texts: Sequence[CardText], size: CardSize, known: Iterable[CardSize], *, grows: bool
) -> list[tuple[Card, ...]]:
    """Return the cards of each leader, all of one size and all lying or all upright.

    A deck that `grows` takes the next larger size that holds them all. Raises `Refused`.
    """
    for each in (size, *(larger(size, known) if grows else ())):
        made = cards_alike(texts, each)
        if made is not None:
            return made
    for text in texts:  # the one that is too large says so
        cards_of(text, size, known)
    raise refused("these leaders fit no deck whose cards all lie alike", "choose a larger --size")


def deck(
    worksheets: Sequence[Worksheet],
    cards: Sequence[Card],
    practice: Practice,
    shop: Shop,
    wording: Wording,
    logo: Raster | None = None,
) -> list[Card]:
    """Return the cards between a cover with an index, and a reference and a cautions card.

    All are of the size and lie as the first card does. Raises `TooSmall` where that is too small.
    """
    first = cards[0].front
    size = CardSize("the deck", first.width, first.height)
    leaders = [worksheet.leader for worksheet in worksheets]
    return [
        *paired(cover(leaders, shop.name, shop.line, wording, size, logo)),
        *cards,
        *paired(reference(reference_tables(practice, wording), size)),
        *paired(care(cautions_for(leaders, practice.materials, wording), wording, size)),
    ]
