"""The cards of a deck that belong to no single leader: cover, cautions, knots, reference."""

from collections.abc import Sequence
from itertools import product

from msgspec import Struct

from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    ended,
    hung,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.cell_table import cell_table
from tagend.cards.faces.flow import Grid, flowed
from tagend.cards.faces.imprint import Imprint, with_logo
from tagend.cards.faces.lesson import HEIGHTS, Words, lesson_block
from tagend.cards.faces.panel import CardSide, Panel, columns_of, side_faces
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide, set_line

_MOST = 40  # sides
_WORDS: tuple[Words, ...] = ("seat", "none")  # below a strip, where that takes no more sides


class Reference(Struct, frozen=True):
    """A table of the reference card: a heading, and rows of as many cells each."""

    heading: str
    rows: tuple[tuple[str, ...], ...]


class Leaf(Struct, frozen=True):
    """The two sides of each leaf: a front has less room, since its number stands there."""

    front: Panel
    back: Panel

    def side(self, number: int) -> Panel:
        """Return a side by its number from 0."""
        return self.back if number % 2 else self.front

    def room(self, number: int) -> float:
        """Return what a side has for blocks."""
        return self.side(number).height


def cover(
    all_told: Sequence[Told], cautions: Sequence[Caution], imprint: Imprint, leaf: Leaf
) -> tuple[Face, ...]:
    """Return whose deck it is, an index with each leader's length and tippet, then all cautions.

    These begin on a side of their own, or below the index where that saves a leaf; and for that
    the last of them are said in short. Raises `TooSmall` and `TooWide`.
    """
    panel, wording = leaf.front, all_told[0].wording

    def title(width: float) -> Block:
        name = imprint.name or wording.say("leaders")
        words = text_block(name, panel.scale.bold, panel.scale.name, width)
        below = [small_lines([imprint.line], panel.scale, width)] if imprint.line else []
        return stacked([words, *below], panel.gap)

    index = [_entry(number, told, panel) for number, told in enumerate(all_told, start=1)]
    first = [with_logo(title, imprint.logo, panel.scale, panel.width), *index]
    alone, ways = _sides(first, leaf), []
    for in_full in range(len(cautions), -1, -1):
        care = _care(cautions, in_full, wording, panel)
        ways += [alone + _sides(care, leaf, len(alone)), _sides([*first, *care], leaf)]
    return side_faces("cover", min(ways, key=lambda way: (len(way) + 1) // 2))


def _sides(blocks: Sequence[Block], leaf: Leaf, before: int = 0) -> list[CardSide]:
    """Return blocks in their order on as few sides as they take, after so many others."""
    one = Grid(1, leaf.front.width, 0.0, leaf.front.least_gap)
    found = flowed([blocks], one, lambda number: leaf.room(before + number), _MOST)
    if found is None:
        raise TooSmall("the cover and the cautions need more room")
    return [CardSide(leaf.side(before + n), tuple(side[0])) for n, side in enumerate(found)]


def behind(lessons: Sequence[Lesson], tables: Sequence[Reference], leaf: Leaf) -> tuple[Face, ...]:
    """Return each knot with its strip, and then the tables, on the fewest sides.

    Raises `TooSmall`.
    """
    best: Sequence[CardSide] = ()
    for words, columns in product(_WORDS, columns_of(leaf.front)):
        try:
            scale, width = leaf.front.scale, columns.width
            knots = [[_taught(lesson, scale, width, words)] for lesson in lessons]
            told = [[_table(table, scale, width)] for table in tables]
            found = flowed([*knots, *told], columns, leaf.room, _MOST)
        except (TooSmall, TooWide):
            continue
        sides = [CardSide(leaf.side(n), (columns.block(s),)) for n, s in enumerate(found or ())]
        if sides and (not best or len(sides) < len(best)):
            best = sides
    if not best:
        raise TooSmall("what a deck says besides its leaders does not fit")
    return side_faces("deck", best)


def _care(cautions: Sequence[Caution], in_full: int, wording: Wording, panel: Panel) -> list[Block]:
    """Return the cautions, so many of them in full and the rest in short."""
    scale, width = panel.scale, panel.width
    said = [each.long if n < in_full else each.short for n, each in enumerate(cautions)]
    first, *more = (hung("!", words, scale, width) for words in said)
    title = text_block(wording.say("take_care"), scale.bold, scale.body, width)
    return [stacked([title, first]), *more]


def _taught(lesson: Lesson, scale: Scale, width: float, words: Words) -> Block:
    tries = (lesson_block(lesson, scale, width, each, words) for each in HEIGHTS)
    block = next((each for each in tries if each is not None), None)
    if block is None:
        raise TooSmall(f"the {lesson.name} is wider than its column")
    return block


def _table(table: Reference, scale: Scale, width: float) -> Block:
    heading = text_block(table.heading, scale.bold, scale.small, width)
    return stacked([heading, cell_table(table.rows, scale, width)])


def _entry(number: int, told: Told, panel: Panel) -> Block:
    """Set one leader of the index: number and name, then what tells it from the others."""
    leader, bold, size = told.leader, panel.scale.bold, panel.scale.body
    length = set_line(told.span(leader.finished), bold, size)
    room = panel.width - length.width - size
    name = text_block(f"{number}  {leader.recipe.name}", bold, size, room)
    more = (leader.recipe.use, told.second_span(leader.finished), told.tippet())
    return stacked([ended(name, length, panel.width), panel.small("; ".join(filter(None, more)))])
