"""A panel: one side of a card at one scale of type, to be filled with blocks."""

from collections.abc import Sequence

from msgspec import Struct

from tagend.cards.faces.block import Block, Scale, small_lines, stack_height, stacked
from tagend.cards.faces.flow import Grid
from tagend.layouts.paper.face import MM, Face, shifted
from tagend.layouts.paper.lengths import fits
from tagend.layouts.stock.formats import CardSize

INSET = 3 * MM  # what a hand-cut card keeps clear of its edge: common practice, no source
_GAP = 0.4  # between blocks, in small type sizes
_LEAST_GAP = 0.12
_COLUMN = 98.0  # points at factor 1, of which there may be more than one on a side
_GUTTER = 10.0
_BETWEEN = 0.3  # blocks of a column, in small type sizes


class Panel(Struct, frozen=True):
    """The room inside one side of a card, at one scale of type, to be filled with blocks."""

    size: CardSize
    scale: Scale

    @property
    def width(self) -> float:
        return self.size.width - 2 * INSET

    @property
    def height(self) -> float:
        return self.size.height - 2 * INSET

    @property
    def gap(self) -> float:
        return _GAP * self.scale.small

    @property
    def least_gap(self) -> float:
        """What a gap shrinks to where there is little room."""
        return _LEAST_GAP * self.scale.small

    def room(self, _: int) -> float:
        """Return what any side has for blocks."""
        return self.height

    def small(self, *texts: str) -> Block:
        """Return texts in small type, each on lines of its own."""
        return small_lines(texts, self.scale, self.width)


class CardSide(Struct, frozen=True):
    """A panel with what stands on it, or would stand on it if it fits."""

    panel: Panel
    blocks: tuple[Block, ...]

    @property
    def fits(self) -> bool:
        return fits(stack_height(self.blocks, self.panel.least_gap), self.panel.height)

    @property
    def room(self) -> float:
        """What is free below its blocks and a gap."""
        gaps = self.panel.gap if self.blocks else 0.0
        return self.panel.height - stack_height(self.blocks, self.panel.gap) - gaps

    @property
    def gap(self) -> float:
        """What stands between its blocks: the usual, or what the height leaves."""
        count = len(self.blocks) - 1
        if count < 1:
            return self.panel.gap
        return min(self.panel.gap, (self.panel.height - stack_height(self.blocks, 0.0)) / count)

    def face(self, name: str) -> Face:
        size = self.panel.size
        items = shifted(stacked(self.blocks, self.gap).items, INSET, INSET)
        return Face(name, size.width, size.height, items)


def columns_of(panel: Panel) -> list[Grid]:
    """Return how a side may be parted."""
    factor = panel.scale.factor
    gutter, least = _GUTTER * factor, _COLUMN * factor
    gap = _BETWEEN * panel.scale.small
    most = max(1, int((panel.width + gutter) / (least + gutter)))
    return [
        Grid(count, (panel.width - (count - 1) * gutter) / count, gutter, gap)
        for count in range(1, most + 1)
    ]


def side_faces(name: str, sides: Sequence[CardSide]) -> tuple[Face, ...]:
    """Return sides as faces, named by what they show and their number."""
    return tuple(side.face(f"{name}, side {n}") for n, side in enumerate(sides, start=1))
