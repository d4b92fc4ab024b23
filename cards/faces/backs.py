"""The backs of a card: cautions, the code with its legend, and how the knots are tied."""

from collections.abc import Sequence

from tagend.cards.faces.block import Block, TooSmall, filled, hung, stacked
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.code_block import code_block
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.faces.lesson_sides import lesson_blocks, lesson_sides
from tagend.cards.faces.panel import CardSide, More, Panel, nothing
from tagend.cards.words.cautions import Caution

_LEAST_CAUTIONS = 4
_CODE_SHARES = (0.5, 0.35)  # of the width, for the code; the rest is its legend's


def backs(text: CardText, panels: Sequence[Panel], extra: More, place: int) -> list[CardSide]:
    """Return the sides behind a front, in the largest type in which they are fewest.

    `place` sides stand before them. `extra` gives the blocks that found no room there. The lessons
    go on sides of their own where one back does not hold them too, and so does, before them, what
    else is no must. Raises `TooSmall`.
    """

    def more(panel: Panel) -> Sequence[Block]:
        asked = (lines for lines in (text.variants, text.shopping) if lines)
        return [*extra(panel), *(panel.small(*lines) for lines in asked)]

    whole = _everything_on_one(text, panels, more, place) if text.lessons else None
    if whole is not None:
        return [whole]
    for here, later in ((more, nothing), (nothing, more)):
        for panel in panels:
            side, shown = _one_back(text, panel, place, here(panel))
            if side is not None:
                lessons = lesson_sides(text, panels, later, place + 1)
                return [side, *_with_more_care(lessons, text.cautions[shown:])]
    sides = _several_backs(text, panels[-1], more(panels[-1]), place)
    return [*sides, *lesson_sides(text, panels, nothing, place + len(sides))]


def _everything_on_one(
    text: CardText, panels: Sequence[Panel], more: More, place: int
) -> CardSide | None:
    """Return one side with the lessons too, their figures as well where there is room for them."""
    plain = None
    for panel in panels:
        lessons = lesson_blocks(text.lessons, panel, "none")
        side, _ = _one_back(text, panel, place, more(panel), lessons)
        if side is None:
            continue
        roomy = lesson_blocks(text.lessons, panel, "room")
        if _one_back(text, panel, place, more(panel), roomy)[0] is not None:
            drawn = lesson_blocks(text.lessons, panel, "drawn")
            return _one_back(text, panel, place, more(panel), drawn)[0]
        plain = plain or side
    return None if text.figures else plain


def _one_back(
    text: CardText, panel: Panel, place: int, more: Sequence[Block], lessons: Sequence[Block] = ()
) -> tuple[CardSide | None, int]:
    """Return one side with as many cautions as it holds, and how many; None for too few."""
    care, over = _care(text.cautions, panel), text.over(panel, place)
    for share in _CODE_SHARES:
        must = _must(text, panel, share)
        for count in _counts(text) if must else ():
            side = CardSide(panel, (*over, *must, *more, stacked(care[:count]), *lessons))
            if side.fits:
                return side, count
    return None, 0


def _with_more_care(sides: Sequence[CardSide], cautions: Sequence[Caution]) -> list[CardSide]:
    """Return the sides with as many more cautions as they have room for, each in its turn."""
    fuller: list[CardSide] = []
    for side in sides:
        care = _care(cautions, side.panel)
        tries = ((side.plus([stacked(care[:n])]), n) for n in range(len(care), 0, -1))
        more, held = next((each for each in tries if each[0].fits), (side, 0))
        fuller.append(more)
        cautions = cautions[held:]
    return fuller


def _several_backs(
    text: CardText, panel: Panel, more: Sequence[Block], place: int
) -> list[CardSide]:
    """Return the fewest sides, with as many cautions as they hold."""
    musts = (_must(text, panel, share) for share in _CODE_SHARES)
    held = (must for must in musts if must and max(b.height for b in must) <= panel.height)
    must = next(held, None)
    if must is None:
        raise TooSmall(f"its code of {text.symbol.side} modules is too large")
    care = _care(text.cautions, panel)

    def over(number: int) -> list[Block]:
        return text.over(panel, place + number)

    splits = [
        filled([*must, *more, stacked(care[:count])], panel.gap, panel.height, over)
        for count in _counts(text)
    ]
    best = min(splits, key=len)  # of equals the first, which has most cautions
    return [CardSide(panel, tuple(blocks)) for blocks in best]


def _must(text: CardText, panel: Panel, share: float) -> list[Block]:
    """Return what every back says; nothing where the code does not fit its share of the width."""
    code = code_block(text.symbol, text.legend, panel.scale, panel.width, share)
    if code is None:
        return []
    imprint = imprint_block(text.imprint, panel.scale, panel.width)
    return [block for block in (imprint, code) if block.items]


def _care(cautions: Sequence[Caution], panel: Panel) -> list[Block]:
    return [hung("!", caution.short, panel.scale, panel.width) for caution in cautions]


def _counts(text: CardText) -> range:
    """How many cautions to try, the most first."""
    return range(len(text.cautions), _LEAST_CAUTIONS - 1, -1)
