"""What cards say and the sizes there are in; cards out that hold it, or what would do."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice, zip_longest

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.faces.backs import Missing
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.pocket import PocketCard, holds_all, pocket_card
from tagend.fonts import Fonts
from tagend.layouts.base.faults import refused
from tagend.layouts.paper.face import Face, TextRun
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize

_NAMED = 3  # sizes in one message
_OF_CARD = 2  # sides


class CardSizes(Struct, frozen=True):
    """The size that the cards of a run are to have, and what else may be taken or told."""

    size: CardSize
    known: tuple[CardSize, ...]
    grows: bool  # to a larger one, where that must be
    fonts: Fonts

    def to_try(self) -> list[CardSize]:
        """Return the size, and where it grows, the known ones of more room, the smallest first."""
        known = sorted(self.known, key=_room) if self.grows else []
        return [self.size, *(card for card in known if _room(card) > _room(self.size))]


class LeaderCards(Struct, frozen=True):
    """The cards of a leader, and what they have no room for."""

    cards: tuple[Card, ...]
    missing: Missing


def cards_of(text: CardText, sizes: CardSizes) -> LeaderCards:
    """Return the cards of a leader: one, or as many as it takes; one that grows, until it is one.

    Raises `Refused`, which tells the known sizes that would do, where the card is too small.
    """
    tried = (_either_way(text, size, sizes.fonts) for size in sizes.to_try())
    held = [made for made in _until_one(tried) if made is not None]
    if held:
        made = min(held, key=lambda each: len(each.faces))  # of equals the smallest
        return LeaderCards(paired(made.faces), made.missing)
    known = sorted(sizes.known, key=_room)
    holding = (card.name for card in known if _either_way(text, card, sizes.fonts) is not None)
    instead = " or ".join(islice(holding, _NAMED))
    raise refused(
        f"this leader needs more room than {size_in_mm(sizes.size.width, sizes.size.height)} in "
        "type that can be read",
        f"use --size {instead}" if instead else "no card known here is large enough",
        text.name,
    )


def size_for_all(texts: Sequence[CardText], sizes: CardSizes) -> str | None:
    """Return the name of the smallest known size of which one card leaves nothing out, for each.

    What does not hold all holds it neither cut smaller, which is not tried.
    """
    left, found = replace(sizes, grows=True).to_try()[1:], None
    while left:
        middle = len(left) // 2
        size = left[middle]
        if all(any(holds_all(text, way, sizes.fonts) for way in _ways(size)) for text in texts):
            found, left = size.name, left[:middle]
        else:
            left = [each for each in left if not _within(each, size)]
    return found


def _until_one(tried: Iterable[PocketCard | None]) -> Iterator[PocketCard | None]:
    """Yield what is tried, up to the first that is a single card."""
    for made in tried:
        yield made
        if made is not None and len(made.faces) <= _OF_CARD:
            return


def paired(faces: Sequence[Face]) -> tuple[Card, ...]:
    """Return sides as cards, each with the next behind it; the last may have a blank back."""
    return tuple(Card(*sides) for sides in zip_longest(faces[::2], faces[1::2]))


def _room(card: CardSize) -> float:
    return card.width * card.height


def _either_way(text: CardText, size: CardSize, fonts: Fonts) -> PocketCard | None:
    """Return the card's sides, lying or upright; None where neither way holds them.

    A size named upright is made both ways, and that of fewer sides, then of less left out, then of
    larger type is taken. One named lying is turned only where it must be: a table wants the width.
    """
    made = (_sides(text, way, fonts) for way in (size, turned(size)))
    ways = (each for each in made if each is not None)
    return next(ways, None) if size.width >= size.height else min(ways, key=_effort, default=None)


def _ways(size: CardSize) -> list[CardSize]:
    """Return a size as a card may lie on it: one named lying stays so, as its table wants."""
    return [size] if size.width >= size.height else [size, turned(size)]


def _within(small: CardSize, large: CardSize) -> bool:
    """Whether a card can be cut from another, whichever way either is laid out."""
    return all(
        any(way.width <= of.width and way.height <= of.height for of in _ways(large))
        for way in _ways(small)
    )


def turned(size: CardSize) -> CardSize:
    """Return a card's size after a quarter turn."""
    return CardSize(size.name, size.height, size.width, size.corner)


def _effort(made: PocketCard) -> tuple[int, int, float]:
    """Return what a card asks of its reader: sides to turn, what is missing, and small type."""
    sizes = [item.size for face in made.faces for item in face.items if isinstance(item, TextRun)]
    return len(made.faces), len(made.missing), -min(sizes, default=0.0)


def _sides(text: CardText, size: CardSize, fonts: Fonts) -> PocketCard | None:
    """Return the card's sides, just as the size is named; None where that does not hold them."""
    try:
        return pocket_card(text, size, fonts)
    except TooSmall:
        return None
