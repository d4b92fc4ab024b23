"""The pocket card: everything about one leader in; the panels of a card, front first, out."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from cards.cautions import Caution
from cards.faces.back import caution_block, code_block, imprint_block
from cards.faces.block import Block, Scale, TooSmall, filled, stacked
from cards.faces.diagram import diagram
from cards.faces.head import continued_head, head
from cards.faces.table import needed_width, table
from cards.leader import Leader
from cards.materials import Materials
from layouts.face import MM, Face, Symbol, shifted
from layouts.formats import CardSize
from layouts.text import TooWide

INSET = 3 * MM  # what a hand-cut card keeps clear of its edge: common practice, no source
_GAP = 0.4  # between blocks, in small type sizes
_FACTORS = (1.6, 1.5, 1.4, 1.3, 1.2, 1.1, 1.0)  # of the type scale; 1 is as small as allowed
_STRETCHES = (1.0, 1.1, 1.2, 1.4)  # of the table's rows
_LEAST_CAUTIONS = 4


@dataclass(frozen=True, slots=True)
class Content:
    """What a card says besides the leader itself."""

    materials: Materials
    symbol: Symbol
    legend: tuple[str, ...]
    cautions: tuple[Caution, ...]
    shop_name: str | None
    shop_line: str | None


@dataclass(frozen=True, slots=True)
class Panel:
    """The room inside one side of a card, at one scale of type."""

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

    def holds(self, blocks: Sequence[Block]) -> bool:
        return stacked(blocks, self.gap).height <= self.height

    def face(self, name: str, blocks: Sequence[Block]) -> Face:
        items = shifted(stacked(blocks, self.gap).items, INSET, INSET)
        return Face(name, self.size.width, self.size.height, items)


def pocket_card(leader: Leader, content: Content, size: CardSize) -> tuple[Face, ...]:
    """Return the panels of a card, in the largest type in which one side holds the whole table.

    The diagram stands on the front where there is room for it. Raises `TooSmall` where not even
    the smallest type fits, and `NoGlyph`.
    """
    panels = [Panel(size, Scale(factor)) for factor in _FACTORS]
    needed = needed_width(leader, Scale(1.0))
    wide = [panel for panel in panels if needed * panel.scale.factor <= panel.width]
    if not wide:
        raise TooSmall("its table is wider than the card")
    name = leader.recipe.name
    for drawn in (True, False):
        for place, panel in enumerate(wide):
            front = _front(leader, content, panel, drawn=drawn)
            if front is not None:
                extra = None if drawn else leader
                return _faces(name, [(panel, front), *_backs(content, wide[place:], extra)])
    smallest = wide[-1]
    fronts = [(smallest, blocks) for blocks in _split(leader, smallest)]
    return _faces(name, [*fronts, *_backs(content, [smallest], leader)])


Side = tuple[Panel, list[Block]]


def _faces(name: str, sides: Sequence[Side]) -> tuple[Face, ...]:
    return tuple(
        panel.face(f"{name}, side {number}", blocks)
        for number, (panel, blocks) in enumerate(sides, start=1)
    )


def _front(leader: Leader, content: Content, panel: Panel, *, drawn: bool) -> list[Block] | None:
    """Return head and table, its rows as far apart as there is room; None where they don't fit."""
    try:
        above = [head(leader, panel.scale, panel.width)]
    except TooWide:
        return None
    if drawn:
        above.append(diagram(leader, content.materials, panel.scale, panel.width))
    fitting = None
    for stretch in _STRETCHES:
        scale = Scale(panel.scale.factor, stretch)
        rows = table(leader, scale, panel.width)
        blocks = [*above, rows.part(0, len(rows.rows))]
        if not panel.holds(blocks):
            break
        fitting = blocks
    return fitting


def _split(leader: Leader, panel: Panel) -> list[list[Block]]:
    """Return head and table over as many sides as they take."""
    rows = table(leader, panel.scale, panel.width)
    sides: list[list[Block]] = []
    first = 0
    while first < len(rows.rows):
        top = continued_head(leader, panel.scale, panel.width) if sides else None
        side = [top or head(leader, panel.scale, panel.width)]
        last = first
        while last < len(rows.rows) and panel.holds([*side, rows.part(first, last + 1)]):
            last += 1
        if last == first:
            raise TooSmall("no row of its table fits below its name")
        sides.append([*side, rows.part(first, last)])
        first = last
    return sides


def _backs(content: Content, panels: Sequence[Panel], leader: Leader | None) -> list[Side]:
    """Return the back in the largest type that fits one side, else over several sides.

    A leader is given where its diagram found no room on the front.
    """
    for panel in panels:
        fixed, care = _back_blocks(content, panel, leader)
        for count in range(len(content.cautions), _LEAST_CAUTIONS - 1, -1):
            blocks = [*fixed, care(count)]
            if panel.holds(blocks):
                return [(panel, blocks)]
    smallest = panels[-1]
    fixed, care = _back_blocks(content, smallest, leader)

    def sides(count: int) -> list[list[Block]]:
        return filled([*fixed, care(count)], smallest.gap, smallest.height)

    fewest = len(sides(_LEAST_CAUTIONS))
    counts = range(len(content.cautions), _LEAST_CAUTIONS - 1, -1)
    best = next(split for split in map(sides, counts) if len(split) == fewest)
    return [(smallest, side) for side in best]


def _back_blocks(
    content: Content, panel: Panel, leader: Leader | None
) -> tuple[list[Block], Callable[[int], Block]]:
    """Return the blocks that a back must hold, and the one of the first so many cautions."""
    scale, width = panel.scale, panel.width
    blocks = [imprint_block(content.shop_name, content.shop_line, scale, width)]
    if leader is not None:
        blocks.append(diagram(leader, content.materials, scale, width))
    code = code_block(content.symbol, content.legend, scale, width)
    if code is None:
        raise TooSmall(f"its code of {content.symbol.side} modules is too large")
    blocks.append(code)
    return (
        [block for block in blocks if block.items],
        lambda count: caution_block(content.cautions[:count], scale, width),
    )
