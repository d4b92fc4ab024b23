"""All that one leader's card says, in one value."""

from dataclasses import dataclass

from tagend.cards.faces.imprint import Imprint
from tagend.cards.faces.told import Told
from tagend.cards.words.cautions import Caution
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Symbol


@dataclass(frozen=True, slots=True)
class CardText:
    """What a card says of a leader and besides, and how it is to be set."""

    told: Told
    symbol: Symbol
    legend: tuple[str, ...]  # of the code
    cautions: tuple[Caution, ...]
    imprint: Imprint
    lessons: tuple[Lesson, ...] = ()
    shopping: tuple[str, ...] = ()  # what to buy, where that is asked for
    variants: tuple[str, ...] = ()  # a line for each variant of the recipe
    figures: bool = False  # of the knots, even where they take more sides
    ruler: bool = False  # along the edge of the last side
    least: float = 1.0  # factor of its type
