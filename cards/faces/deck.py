"""The cards of a deck that belong to no single leader: cover, reference, cautions."""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from tagend.cards.faces.block import (
    DROP,
    Block,
    Scale,
    TooSmall,
    filled,
    hung,
    line_block,
    stacked,
)
from tagend.cards.faces.imprint import with_logo
from tagend.cards.faces.panel import Panel
from tagend.cards.faces.plain_table import cell_table
from tagend.cards.leader.leader import Leader
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import second_span, span, thickness
from tagend.fonts import Weight
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.raster import Raster
from tagend.layouts.paper.text import TooWide, break_lines, set_line
from tagend.layouts.stock.formats import CardSize

_FACTORS = (1.6, 1.4, 1.2, 1.1, 1.0)


class Reference(NamedTuple):
    """A table of the reference card: a heading, and rows of as many cells each."""

    heading: str
    rows: tuple[tuple[str, ...], ...]


def cover(
    leaders: Sequence[Leader],
    name: str | None,
    line: str | None,
    wording: Wording,
    size: CardSize,
    logo: Raster | None = None,
) -> tuple[Face, ...]:
    """Return the cover: whose deck it is, and an index with each leader's length and tippet."""

    def blocks(panel: Panel) -> Iterator[Block]:
        def title(width: float) -> Block:
            words = _set(name or wording.say("leaders"), "bold", panel.scale.name, width)
            below = [_set(line, "medium", panel.scale.small, width)] if line else []
            return stacked([words, *below], panel.gap)

        yield with_logo(title, logo, panel.scale, panel.width)
        for number, leader in enumerate(leaders, start=1):
            yield _entry(number, leader, wording, panel)

    return _faces("cover", size, blocks)


def reference(tables: Sequence[Reference], size: CardSize) -> tuple[Face, ...]:
    """Return the reference card: the tables one below the other, none of them torn apart."""

    def blocks(panel: Panel) -> Iterator[Block]:
        for table in tables:
            heading = _text(table.heading, "bold", panel.scale.body, panel)
            yield stacked([heading, cell_table(table.rows, panel.scale, panel.width)])

    return _faces("reference", size, blocks)


def care(cautions: Sequence[Caution], wording: Wording, size: CardSize) -> tuple[Face, ...]:
    """Return the cautions in full."""

    def blocks(panel: Panel) -> Iterator[Block]:
        yield _text(wording.say("take_care"), "bold", panel.scale.name, panel)
        for caution in cautions:
            yield hung("!", caution.long, panel.scale, panel.width)

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
    return _set(words, weight, size, panel.width)


def _set(words: str, weight: Weight, size: float, width: float) -> Block:
    return stacked(line_block(line) for line in break_lines(words, weight, size, width))


def _entry(number: int, leader: Leader, wording: Wording, panel: Panel) -> Block:
    """Set one leader of the index: number and name, then what tells it from the others."""
    scale = panel.scale
    length = span(leader.finished, leader, wording)
    name = _row(f"{number}  {leader.recipe.name}", length, panel)
    again = second_span(leader.finished, leader, wording)
    tippet = wording.say("tippet", strand=thickness(leader.tippet, leader, wording))
    words = "; ".join(filter(None, (leader.recipe.use, again, tippet)))
    lines = break_lines(words, "medium", scale.small, panel.width)
    return stacked([name, *map(line_block, lines)])


def _row(left: str, right: str, panel: Panel) -> Block:
    """Set two bold texts, one at either end of a line."""
    size = panel.scale.body
    end = set_line(right, "bold", size)
    start = break_lines(left, "bold", size, panel.width - end.width - size)
    block = stacked(line_block(line) for line in start)
    return Block((*block.items, *end.at(panel.width, DROP * size, "right")), block.height)
