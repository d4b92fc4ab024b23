"""A panel: one side of a card at one scale of type, to be filled with blocks."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from tagend.cards.faces.block import Block, Scale, small_lines, stack_height, stacked
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.stock.formats import CardSize

INSET = 3 * MM  # what a hand-cut card keeps clear of its edge: common practice, no source
_GAP = 0.4  # between blocks, in small type sizes


class Panel(NamedTuple):
    """The room inside one side of a card, at one scale of type, to be filled with blocks."""

    size: CardSize
    scale: Scale
    narrow: bool = False  # for a table as narrow as can be: the head has its loops' sizes

    @property
    def width(self) -> float:
        return self.size.width - 2 * INSET

    @property
    def height(self) -> float:
        return self.size.height - 2 * INSET

    @property
    def gap(self) -> float:
        return _GAP * self.scale.small

    def holds(self, blocks: Sequence[Block]) -> bool:
        return stack_height(blocks, self.gap) <= self.height

    def face(self, name: str, blocks: Sequence[Block]) -> Face:
        items = shifted(stacked(blocks, self.gap).items, INSET, INSET)
        return Face(name, self.size.width, self.size.height, items)


class Title(NamedTuple):
    """A leader's name, for sides that begin after so many others of its cards."""

    name: str
    before: int

    def after(self, sides: int) -> "Title":
        """Return the title for what comes so many sides later."""
        return Title(self.name, self.before + sides)

    def over(self, panel: Panel, number: int = 0) -> list[Block]:
        """Return the name for the first side, or a later one, where that is a front.

        The first front has a head of its own; the others would part from it without a name.
        """
        place = self.before + number
        if place == 0 or place % 2:
            return []
        return [small_lines([self.name], panel.scale, panel.width)]


class CardSide(NamedTuple):
    """A panel with what stands on it."""

    panel: Panel
    blocks: tuple[Block, ...]


More = Callable[[Panel], Sequence[Block]]  # blocks to stand on a panel, set for it


def nothing(_: Panel) -> Sequence[Block]:
    """Return no more blocks."""
    return ()
