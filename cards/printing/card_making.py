"""Leaders as cards: what a card is to say and its size in, cards to be placed on sheets out."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from tagend.cards.faces.back_sides import Backing
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.columns import Spools
from tagend.cards.faces.front import Fronting
from tagend.cards.faces.pocket import LARGE, pocket_card
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.cautions import cautions_for
from tagend.cards.words.code_legend import legend
from tagend.cards.words.language import Wording
from tagend.cards.words.lessons import lessons
from tagend.layouts.base.faults import refused
from tagend.layouts.paper.face import Face, Symbol, TextRun
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.paper.raster import Raster
from tagend.layouts.sheets.imposition import Card
from tagend.layouts.stock.formats import CardSize

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack


class CardText(NamedTuple):
    """All that a card says, and the least factor of its type scale."""

    front: Fronting
    backing: Backing
    least: float
    ruled: bool


class CardStyle(NamedTuple):
    """How a run of cards is to be set."""

    taught: bool = True  # with how the knots are tied
    large: bool = False  # in type to be read without glasses
    shopping: int | None = None  # leaders to list the line for
    figures: bool = False  # of the knots, even where they take more sides
    ruler: bool = False  # along the edge of the last side
    logo: Raster | None = None  # the shop's, in the imprint


def card_text(
    leader: Leader,
    code: Symbol,
    practice: Practice,
    shop: Shop,
    wording: Wording,
    style: CardStyle,
    rack: "Rack | None",
) -> CardText:
    """Return what a leader's card says; a rack names the person's own spools."""
    says = Backing(
        symbol=code,
        legend=legend(leader.recipe, code.text, wording),
        cautions=cautions_for([leader], practice.materials, wording),
        lessons=lessons(leader, wording) if style.taught else (),
        shop_name=shop.name,
        shop_line=shop.line,
        shopping=_shopping(leader, style.shopping, wording),
        variants=_variants(leader.recipe, practice, wording),
        figures=style.figures,
        logo=style.logo,
    )
    front = Fronting(leader, practice.materials, wording, _spools(leader, rack))
    return CardText(front, says, LARGE if style.large else 1.0, style.ruler)


# What few cards want is loaded for those alone.


def _spools(leader: Leader, rack: "Rack | None") -> Spools:
    if rack is None:
        return {}
    from tagend.cards.batches.batch import spool_labels

    return spool_labels(leader, rack)


def _shopping(leader: Leader, count: int | None, wording: Wording) -> tuple[str, ...]:
    if count is None:
        return ()
    from tagend.cards.words.shopping import shopping_lines

    return shopping_lines(leader, count, wording)


def _variants(recipe: Recipe, practice: Practice, wording: Wording) -> tuple[str, ...]:
    if not recipe.variants:
        return ()
    from tagend.cards.words.variant_words import variant_lines

    return variant_lines(recipe, practice, wording)


def cards_of(text: CardText, size: CardSize, known: Iterable[CardSize]) -> tuple[Card, ...]:
    """Return the cards of a leader: one, or as many as it takes.

    Raises `Refused`, which tells the known sizes that would do, where the card is too small.
    """
    faces = _either_way(text, size)
    if faces is None:
        instead = " or ".join(card.name for card in islice(_that_hold(text, known), 3))
        raise refused(
            f"this leader needs more room than {size_in_mm(size.width, size.height)} in type "
            "that can be read",
            f"use --size {instead}" if instead else "no card known here is large enough",
            text.front.leader.recipe.name,
        )
    return paired(faces)


def cards_alike(texts: Sequence[CardText], size: CardSize) -> list[tuple[Card, ...]] | None:
    """Return the cards of each leader, all lying or all upright, as that takes fewer sides.

    None where neither way holds them all.
    """
    ways = [[_sides(text, way) for text in texts] for way in (size, _turned(size))]
    whole = [[faces for faces in way if faces is not None] for way in ways if None not in way]
    best = min(whole, key=lambda way: sum(map(len, way)), default=None)
    return None if best is None else [paired(faces) for faces in best]


def paired(faces: Sequence[Face]) -> tuple[Card, ...]:
    """Return sides as cards, each with the next behind it; the last may have a blank back."""
    behind = [*faces[1::2], *([None] if len(faces) % 2 else [])]
    return tuple(Card(front, back) for front, back in zip(faces[::2], behind, strict=True))


def size_that_holds(text: CardText, size: CardSize, known: Iterable[CardSize]) -> CardSize:
    """Return the size itself where it holds the leader, else the next larger one that does."""
    if _either_way(text, size) is not None:
        return size
    return next(_that_hold(text, larger(size, known)), size)


def larger(size: CardSize, known: Iterable[CardSize]) -> list[CardSize]:
    """Return the sizes of more room than one has, the smallest first."""
    return [card for card in sorted(known, key=_room) if _room(card) > _room(size)]


def _room(card: CardSize) -> float:
    return card.width * card.height


def _that_hold(text: CardText, known: Iterable[CardSize]) -> Iterator[CardSize]:
    """Yield the sizes that hold the leader, the smallest first."""
    return (card for card in sorted(known, key=_room) if _either_way(text, card) is not None)


def _either_way(text: CardText, size: CardSize) -> tuple[Face, ...] | None:
    """Return the card's sides, lying or upright; None where neither way holds them.

    A size named upright is made both ways, and that of fewer sides or else of larger type is
    taken. One named lying is turned only where it must be: a table wants the width.
    """
    made = (_sides(text, way) for way in (size, _turned(size)))
    ways = (faces for faces in made if faces is not None)
    return next(ways, None) if size.width >= size.height else min(ways, key=_effort, default=None)


def _turned(size: CardSize) -> CardSize:
    """Return a card's size after a quarter turn."""
    return CardSize(size.name, size.height, size.width, size.corner)


def _effort(faces: Sequence[Face]) -> tuple[int, float]:
    """Return what a card asks of its reader: sides to turn, and small type on any of them."""
    sizes = [item.size for face in faces for item in face.items if isinstance(item, TextRun)]
    return len(faces), -min(sizes, default=0.0)


def _sides(text: CardText, size: CardSize) -> tuple[Face, ...] | None:
    """Return the card's sides, just as the size is named; None where that does not hold them."""
    try:
        return pocket_card(text.front, text.backing, size, text.least, ruled=text.ruled)
    except TooSmall:
        return None
