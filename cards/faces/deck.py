"""The cards of a deck that belong to no single leader: cover, reference, cautions."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

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
from tagend.cards.faces.flow import flowed
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


@dataclass(frozen=True, slots=True)
class Reference:
    """A table of the reference card: a heading, and rows of as many cells each."""

    heading: str
    rows: tuple[tuple[str, ...], ...]


def cover(all_told: Sequence[Told], imprint: Imprint, panel: Panel) -> tuple[Face, ...]:
    """Return the cover: whose deck it is, and an index with each leader's length and tippet.

    Raises `TooSmall` and `TooWide`.
    """

    def title(width: float) -> Block:
        name = imprint.name or all_told[0].wording.say("leaders")
        words = text_block(name, panel.scale.bold, panel.scale.name, width)
        below = [small_lines([imprint.line], panel.scale, width)] if imprint.line else []
        return stacked([words, *below], panel.gap)

    index = [_entry(number, told, panel) for number, told in enumerate(all_told, start=1)]
    blocks = [with_logo(title, imprint.logo, panel.scale, panel.width), *index]
    sides = filled(blocks, panel.gap, panel.height)
    return side_faces("cover", [CardSide(panel, tuple(side)) for side in sides])


def behind(
    cautions: Sequence[Caution],
    lessons: Sequence[Lesson],
    tables: Sequence[Reference],
    wording: Wording,
    panel: Panel,
) -> tuple[Face, ...]:
    """Return the cautions in full, each knot with its strip, and the tables, on the fewest sides.

    Raises `TooSmall`.
    """
    best: Sequence[CardSide] = ()
    for words, columns in product(_WORDS, columns_of(panel)):
        try:
            care = _care(cautions, wording, panel.scale, columns.width)
            knots = [[_taught(lesson, panel.scale, columns.width, words)] for lesson in lessons]
            told = [[_table(table, panel.scale, columns.width)] for table in tables]
            found = flowed([care, *knots, *told], columns, panel.room, _MOST)
        except (TooSmall, TooWide):
            continue
        sides = [CardSide(panel, (columns.block(each),)) for each in found or ()]
        if sides and (not best or len(sides) < len(best)):
            best = sides
    if not best:
        raise TooSmall("what a deck says besides its leaders does not fit")
    return side_faces("deck", best)


def _care(cautions: Sequence[Caution], wording: Wording, scale: Scale, width: float) -> list[Block]:
    first, *more = (hung("!", caution.long, scale, width) for caution in cautions)
    title = text_block(wording.say("take_care"), scale.bold, scale.body, width)
    return [stacked([title, first]), *more]


def _taught(lesson: Lesson, scale: Scale, width: float, words: Words) -> Block:
    tries = (lesson_block(lesson, scale, width, each, words, drawn=True) for each in HEIGHTS)
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
