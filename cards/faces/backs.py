"""The backs of a card: cautions, the code with its legend, and how the knots are tied."""

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from tagend.cards.faces.block import Block, TooSmall, filled, hung, small_lines, stacked
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.code_block import code_block
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.faces.lesson_sides import Teaching, lesson_blocks, lesson_sides
from tagend.cards.faces.panel import CardSide, More, Panel, Title, nothing
from tagend.cards.words.cautions import Caution

_LEAST_CAUTIONS = 4
_CODE_SHARES = (0.5, 0.35)  # of the width, for the code; the rest is its legend's


class _Back(NamedTuple):
    """One side behind the front, and how many of the cautions stand on it."""

    side: CardSide
    shown: int


def backs(text: CardText, panels: Sequence[Panel], extra: More, title: Title) -> list[CardSide]:
    """Return the sides behind a front, in the largest type in which they are fewest.

    `title` knows how many sides the front takes. `extra` gives the blocks that found no room on
    it. The lessons go on sides of their own where one back does not hold them too, and so does,
    before them, what else is no must. Raises `TooSmall`.
    """

    def more(panel: Panel) -> Sequence[Block]:
        return [*extra(panel), *_asked(text, panel)]

    if text.lessons:
        whole = _everything_on_one(text, panels, more, title)
        if whole is not None:
            return [whole]
    for here, later in ((more, nothing), (nothing, more)):
        for panel in panels:
            back = _one_back(text, panel, title, here(panel))
            if back is not None:
                sides = _taught(text, panels, later, title.after(1))
                return [back.side, *_with_more_care(sides, text.cautions[back.shown :])]
    sides = _several_backs(text, panels[-1], more(panels[-1]), title)
    return [*sides, *_taught(text, panels, nothing, title.after(len(sides)))]


def _taught(text: CardText, panels: Sequence[Panel], before: More, title: Title) -> list[CardSide]:
    return lesson_sides(Teaching(text.lessons, before, text.figures, title), panels)


def _everything_on_one(
    text: CardText, panels: Sequence[Panel], more: More, title: Title
) -> CardSide | None:
    """Return one side with the lessons too, their figures as well where there is room for them."""
    plain = None
    for panel in panels:
        lessons = lesson_blocks(text.lessons, panel, "none")
        if not panel.holds(lessons):
            continue
        back = _one_back(text, panel, title, more(panel), lessons)
        if back is None:
            continue
        lessons = lesson_blocks(text.lessons, panel, "room")
        roomy = _one_back(text, panel, title, more(panel), lessons)
        if roomy is not None:
            drawn = lesson_blocks(text.lessons, panel, "drawn")
            return CardSide(panel, (*roomy.side.blocks[: -len(drawn)], *drawn))
        plain = plain or back.side
    return None if text.figures else plain


def _one_back(
    text: CardText,
    panel: Panel,
    title: Title,
    more: Sequence[Block],
    lessons: Sequence[Block] = (),
) -> _Back | None:
    """Return one side with as many cautions as it holds, or None where too few find room."""
    care, over = _care(text.cautions, panel), title.over(panel)
    for share in _CODE_SHARES:
        must = _must(text, panel, share)
        for count in _counts(text) if must else ():
            blocks = (*over, *must, *more, stacked(care[:count]), *lessons)
            if panel.holds(blocks):
                return _Back(CardSide(panel, blocks), count)
    return None


def _with_more_care(sides: Sequence[CardSide], cautions: Sequence[Caution]) -> list[CardSide]:
    """Return the sides with as many more cautions as they have room for, each in its turn."""
    fuller: list[CardSide] = []
    for panel, blocks in sides:
        care = _care(cautions, panel)
        counts = range(len(care), 0, -1)
        held = next((n for n in counts if panel.holds((*blocks, stacked(care[:n])))), 0)
        more = [stacked(care[:held])] if held else []
        fuller.append(CardSide(panel, (*blocks, *more)))
        cautions = cautions[held:]
    return fuller


def _several_backs(
    text: CardText, panel: Panel, more: Sequence[Block], title: Title
) -> list[CardSide]:
    """Return the fewest sides, with as many cautions as they hold."""
    musts = (_must(text, panel, share) for share in _CODE_SHARES)
    must = next(
        (each for each in musts if each and max(b.height for b in each) <= panel.height), None
    )
    if must is None:
        raise TooSmall(f"its code of {text.symbol.side} modules is too large")
    care, over = _care(text.cautions, panel), partial(title.over, panel)
    splits = [
        filled([*must, *more, stacked(care[:count])], panel.gap, panel.height, over)
        for count in _counts(text)
    ]
    best = min(splits, key=len)  # of equals the first, which has most cautions
    return [CardSide(panel, tuple(blocks)) for blocks in best]


def _must(text: CardText, panel: Panel, share: float) -> list[Block]:
    """Return what every back says; nothing where the code does not fit its share of the width."""
    scale, width = panel.scale, panel.width
    code = code_block(text.symbol, text.legend, scale, width, share)
    if code is None:
        return []
    imprint = imprint_block(text.imprint, scale, width)
    return [block for block in (imprint, code) if block.items]


def _asked(text: CardText, panel: Panel) -> list[Block]:
    """Return what was asked for besides: the variants, and what to buy."""
    lines = [lines for lines in (text.variants, text.shopping) if lines]
    return [small_lines(each, panel.scale, panel.width) for each in lines]


def _care(cautions: Sequence[Caution], panel: Panel) -> list[Block]:
    return [hung("!", caution.short, panel.scale, panel.width) for caution in cautions]


def _counts(text: CardText) -> range:
    """How many cautions to try, the most first."""
    return range(len(text.cautions), _LEAST_CAUTIONS - 1, -1)
