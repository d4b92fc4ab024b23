"""All that one leader's card says, in one value."""

from math import inf

from msgspec import Struct

from tagend.cards.faces.block import Block
from tagend.cards.faces.imprint import Imprint
from tagend.cards.faces.panel import Panel
from tagend.cards.words.cautions import Caution
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Symbol


class CardText(Struct, frozen=True):
    """What a card says of a leader and besides, and how it is to be set."""

    told: Told
    symbol: Symbol
    legend: tuple[str, ...]  # of the code
    cautions: tuple[Caution, ...]
    how_to: str  # tie any leader
    imprint: Imprint
    lessons: tuple[Lesson, ...] = ()
    shopping: tuple[str, ...] = ()  # what to buy, where that is asked for
    renewals: tuple[str, ...] = ()  # a line for each new piece, told where there is room
    variants: tuple[str, ...] = ()  # a line for each variant of the recipe
    ruler: bool = False  # along the edge of the last side
    least: float = 1.0  # factor of its type
    most: float = inf

    @property
    def name(self) -> str:
        return self.told.leader.recipe.name

    def over(self, panel: Panel, place: int) -> list[Block]:
        """Return what stands over a side, by its place among the sides of the leader's cards.

        The first front has a head of its own; the others would part from it without a name.
        """
        is_later_front = place > 0 and place % 2 == 0
        return [panel.small(self.name)] if is_later_front else []
