"""The cards of a deck that belong to no single leader: cover, reference, cautions."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    ended,
    filled,
    hung,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.cell_table import cell_table
from tagend.cards.faces.imprint import Imprint, with_logo
from tagend.cards.faces.panel import CardSide, Panel, side_faces
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide, set_line
from tagend.layouts.stock.formats import CardSize

_FACTORS = (1.6, 1.4, 1.2, 1.1, 1.0)


@dataclass(frozen=True, slots=True)
class Reference:
    """A table of the reference card: a heading, and rows of as many cells each."""

    heading: str
    rows: tuple[tuple[str, ...], ...]


def cover(
    all_told: Sequence[Told], imprint: Imprint, size: CardSize, fonts: Fonts
) -> tuple[Face, ...]:
    """Return the cover: whose deck it is, and an index with each leader's length and tippet."""

    def blocks(panel: Panel) -> Iterator[Block]:
        def title(width: float) -> Block:
            name = imprint.name or all_told[0].wording.say("leaders")
            words = text_block(name, panel.scale.bold, panel.scale.name, width)
            below = [small_lines([imprint.line], panel.scale, width)] if imprint.line else []
            return stacked([words, *below], panel.gap)

        yield with_logo(title, imprint.logo, panel.scale, panel.width)
        for number, told in enumerate(all_told, start=1):
            yield _entry(number, told, panel)

    return _faces("cover", size, fonts, blocks)


def reference(tables: Sequence[Reference], size: CardSize, fonts: Fonts) -> tuple[Face, ...]:
    """Return the reference card: the tables one below the other, none of them torn apart."""

    def blocks(panel: Panel) -> Iterator[Block]:
        for table in tables:
            heading = _bold(table.heading, panel.scale.body, panel)
            yield stacked([heading, cell_table(table.rows, panel.scale, panel.width)])

    return _faces("reference", size, fonts, blocks)


def care(
    cautions: Sequence[Caution], wording: Wording, size: CardSize, fonts: Fonts
) -> tuple[Face, ...]:
    """Return the cautions in full."""

    def blocks(panel: Panel) -> Iterator[Block]:
        yield _bold(wording.say("take_care"), panel.scale.name, panel)
        for caution in cautions:
            yield hung("!", caution.long, panel.scale, panel.width)

    return _faces("cautions", size, fonts, blocks)


def _faces(
    name: str, size: CardSize, fonts: Fonts, blocks: Callable[[Panel], Iterator[Block]]
) -> tuple[Face, ...]:
    """Return the fewest sides, in the largest type in which they stay so few."""
    splits = []
    for factor in _FACTORS:
        panel = Panel(size, Scale(factor, fonts))
        try:
            sides = filled(blocks(panel), panel.gap, panel.height)
        except (TooSmall, TooWide):
            continue
        splits.append([CardSide(panel, tuple(side)) for side in sides])
    if not splits:
        raise TooSmall(f"the {name} does not fit")
    return side_faces(name, min(splits, key=len))


def _bold(words: str, size: float, panel: Panel) -> Block:
    return text_block(words, panel.scale.bold, size, panel.width)


def _entry(number: int, told: Told, panel: Panel) -> Block:
    """Set one leader of the index: number and name, then what tells it from the others."""
    leader, bold, size = told.leader, panel.scale.bold, panel.scale.body
    length = set_line(told.span(leader.finished), bold, size)
    room = panel.width - length.width - size
    name = text_block(f"{number}  {leader.recipe.name}", bold, size, room)
    more = (leader.recipe.use, told.second_span(leader.finished), told.tippet())
    return stacked([ended(name, length, panel.width), panel.small("; ".join(filter(None, more)))])
