"""A panel: one side of a card at one scale of type, to be filled with blocks."""

from collections.abc import Sequence
from typing import NamedTuple

from cards.faces.block import Block, Scale, line_block, stack_height, stacked
from layouts.face import MM, Face, shifted
from layouts.formats import CardSize
from layouts.text import break_lines

INSET = 3 * MM  # what a hand-cut card keeps clear of its edge: common practice, no source
_GAP = 0.4  # between blocks, in small type sizes


class Panel(NamedTuple):
    """The room inside one side of a card, at one scale of type, below its title if it has one."""

    size: CardSize
    scale: Scale
    title: str = ""

    @property
    def width(self) -> float:
        return self.size.width - 2 * INSET

    @property
    def height(self) -> float:
        titled = stack_height([*self._titled(), Block((), 0.0)], self.gap) if self.title else 0.0
        return self.size.height - 2 * INSET - titled

    @property
    def gap(self) -> float:
        return _GAP * self.scale.small

    def holds(self, blocks: Sequence[Block]) -> bool:
        return stack_height(blocks, self.gap) <= self.height

    def face(self, name: str, blocks: Sequence[Block]) -> Face:
        items = shifted(stacked((*self._titled(), *blocks), self.gap).items, INSET, INSET)
        return Face(name, self.size.width, self.size.height, items)

    def _titled(self) -> list[Block]:
        lines = break_lines(self.title, "medium", self.scale.small, self.width)
        return [stacked(map(line_block, lines))] if lines else []


class Side(NamedTuple):
    """A panel with what stands on it."""

    panel: Panel
    blocks: tuple[Block, ...]
