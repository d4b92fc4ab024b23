"""The cards of a deck that belong to no single leader: cover, reference, cautions."""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from cards.cautions import Caution
from cards.faces.block import Block, Scale, TooSmall, filled, line_block, stacked
from cards.faces.panel import Panel
from cards.leader import Leader
from cards.words import span, thickness
from fonts import Weight
from layouts.face import Face
from layouts.formats import CardSize
from layouts.text import TooWide, break_lines, set_line

_FACTORS = (1.6, 1.4, 1.2, 1.1, 1.0)


class Reference(NamedTuple):
    """What the reference card lists, each a heading and its lines of two columns."""

    heading: str
    rows: tuple[tuple[str, str], ...]


def cover(
    leaders: Sequence[Leader], name: str | None, line: str | None, size: CardSize
) -> tuple[Face, ...]:
    """Return the cover: whose deck it is, and an index with each leader's length and tippet."""

    def blocks(panel: Panel) -> Iterator[Block]:
        yield _text(name or "Leaders", "bold", panel.scale.name, panel)
        if line:
            yield _text(line, "medium", panel.scale.small, panel)
        for number, leader in enumerate(leaders, start=1):
            yield _entry(number, leader, panel)

    return _faces("cover", size, blocks)


def reference(tables: Sequence[Reference], size: CardSize) -> tuple[Face, ...]:
    """Return the reference card: the tables one below the other, none of them torn apart."""

    def blocks(panel: Panel) -> Iterator[Block]:
        for table in tables:
            heading = _text(table.heading, "bold", panel.scale.body, panel)
            yield stacked([heading, *(_row(left, right, panel) for left, right in table.rows)])

    return _faces("reference", size, blocks)


def care(cautions: Sequence[Caution], size: CardSize) -> tuple[Face, ...]:
    """Return the cautions in full."""

    def blocks(panel: Panel) -> Iterator[Block]:
        yield _text("Take care", "bold", panel.scale.name, panel)
        for caution in cautions:
            yield _text(caution.long, "medium", panel.scale.small, panel)

    return _faces("cautions", size, blocks)


def _faces(
    name: str, size: CardSize, blocks: Callable[[Panel], Iterator[Block]]
) -> tuple[Face, ...]:
    """Return the fewest sides, in the largest type in which they stay so few."""
    splits = []
    for factor in _FACTORS:
        panel = Panel(size, Scale(factor))
        try:
            splits.append((panel, filled(blocks(panel), panel.gap, panel.height)))
        except (TooSmall, TooWide):
            continue
    if not splits:
        raise TooSmall(f"the {name} does not fit")
    panel, sides = min(splits, key=lambda split: len(split[1]))
    return tuple(panel.face(f"{name}, side {n}", side) for n, side in enumerate(sides, start=1))


def _text(words: str, weight: Weight, size: float, panel: Panel) -> Block:
    return stacked(line_block(line) for line in break_lines(words, weight, size, panel.width))


def _entry(number: int, leader: Leader, panel: Panel) -> Block:
    """Set one leader of the index: number and name, then what tells it from the others."""
    scale = panel.scale
    name = _row(f"{number}  {leader.recipe.name}", span(leader.finished, leader), panel, "bold")
    use = f"{leader.recipe.use}; " if leader.recipe.use else ""
    words = break_lines(
        f"{use}tippet {thickness(leader.tippet)}", "medium", scale.small, panel.width
    )
    return stacked([name, *(line_block(line) for line in words)])


def _row(left: str, right: str, panel: Panel, weight: Weight = "medium") -> Block:
    """Set two texts at either end of a line; the right one goes below where they would meet."""
    size = panel.scale.body if weight == "bold" else panel.scale.small
    end = set_line(right, weight, size)
    room = panel.width - end.width - size
    start = break_lines(left, weight, size, room)
    block = stacked(line_block(line) for line in start)
    return Block((*block.items, *end.at(panel.width, 0.82 * size, "right")), block.height)
