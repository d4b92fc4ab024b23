"""The backs of a card: cautions, the code with its legend, and how the knots are tied."""

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from tagend.cards.faces.back_blocks import caution_block, code_block, lines_block
from tagend.cards.faces.block import Block, TooSmall, filled, stacked
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.faces.panel import More, Panel, Side, Title, nothing
from tagend.cards.faces.taught import Teaching, lesson_blocks, taught_sides
from tagend.cards.words.cautions import Caution
from tagend.cards.words.lessons import Lesson
from tagend.layouts.paper.face import Symbol
from tagend.layouts.paper.raster import Raster

_LEAST_CAUTIONS = 4
_CODE_SHARES = (0.5, 0.35)  # of the width, for the code; the rest is its legend's


class Backing(NamedTuple):
    """What a card says besides the leader itself."""

    symbol: Symbol
    legend: tuple[str, ...]
    cautions: tuple[Caution, ...]
    lessons: tuple[Lesson, ...]
    shop_name: str | None
    shop_line: str | None
    shopping: tuple[str, ...] = ()  # what to buy, where that is asked for
    variants: tuple[str, ...] = ()  # a line for each variant of the recipe
    figures: bool = False  # of the knots, even where they take more sides
    logo: Raster | None = None  # the shop's


class _Back(NamedTuple):
    """One side behind the front, and how many of the cautions stand on it."""

    side: Side
    shown: int


def backs(backing: Backing, panels: Sequence[Panel], extra: More, title: Title) -> list[Side]:
    """Return the sides behind a front, in the largest type in which they are fewest.

    `title` knows how many sides the front takes. `extra` gives the blocks that found no room on
    it. The lessons go on sides of their own where one back does not hold them too, and so does,
    before them, what else is no must. Raises `TooSmall`.
    """

    def more(panel: Panel) -> Sequence[Block]:
        return [*extra(panel), *_asked(backing, panel)]

    if backing.lessons:
        whole = _everything_on_one(backing, panels, more, title)
        if whole is not None:
            return [whole]
    for here, later in ((more, nothing), (nothing, more)):
        for panel in panels:
            back = _one_back(backing, panel, title, here(panel))
            if back is not None:
                sides = _taught(backing, panels, later, title.after(1))
                return [back.side, *_with_more_care(sides, backing.cautions[back.shown :])]
    sides = _several_backs(backing, panels[-1], more(panels[-1]), title)
    return [*sides, *_taught(backing, panels, nothing, title.after(len(sides)))]


def _taught(backing: Backing, panels: Sequence[Panel], before: More, title: Title) -> list[Side]:
    return taught_sides(Teaching(backing.lessons, before, backing.figures, title), panels)


def _everything_on_one(
    backing: Backing, panels: Sequence[Panel], more: More, title: Title
) -> Side | None:
    """Return one side with the lessons too, their figures as well where there is room for them."""
    plain = None
    for panel in panels:
        lessons = lesson_blocks(backing.lessons, panel, "none")
        if not panel.holds(lessons):
            continue
        back = _one_back(backing, panel, title, more(panel), lessons)
        if back is None:
            continue
        lessons = lesson_blocks(backing.lessons, panel, "room")
        roomy = _one_back(backing, panel, title, more(panel), lessons)
        if roomy is not None:
            drawn = lesson_blocks(backing.lessons, panel, "drawn")
            return Side(panel, (*roomy.side.blocks[: -len(drawn)], *drawn))
        plain = plain or back.side
    return None if backing.figures else plain


def _one_back(
    backing: Backing,
    panel: Panel,
    title: Title,
    more: Sequence[Block],
    lessons: Sequence[Block] = (),
) -> _Back | None:
    """Return one side with as many cautions as it holds, or None where too few find room."""
    care, over = _care(backing.cautions, panel), title.over(panel)
    for share in _CODE_SHARES:
        must = _must(backing, panel, share)
        for count in _counts(backing) if must else ():
            blocks = (*over, *must, *more, stacked(care[:count]), *lessons)
            if panel.holds(blocks):
                return _Back(Side(panel, blocks), count)
    return None


def _with_more_care(sides: Sequence[Side], cautions: Sequence[Caution]) -> list[Side]:
    """Return the sides with as many more cautions as they have room for, each in its turn."""
    fuller: list[Side] = []
    for panel, blocks in sides:
        care = _care(cautions, panel)
        counts = range(len(care), 0, -1)
        held = next((n for n in counts if panel.holds((*blocks, stacked(care[:n])))), 0)
        more = [stacked(care[:held])] if held else []
        fuller.append(Side(panel, (*blocks, *more)))
        cautions = cautions[held:]
    return fuller


def _several_backs(
    backing: Backing, panel: Panel, more: Sequence[Block], title: Title
) -> list[Side]:
    """Return the fewest sides, with as many cautions as they hold."""
    musts = (_must(backing, panel, share) for share in _CODE_SHARES)
    must = next(
        (each for each in musts if each and max(b.height for b in each) <= panel.height), None
    )
    if must is None:
        raise TooSmall(f"its code of {backing.symbol.side} modules is too large")
    care, over = _care(backing.cautions, panel), partial(title.over, panel)
    splits = [
        filled([*must, *more, stacked(care[:count])], panel.gap, panel.height, over)
        for count in _counts(backing)
    ]
    best = min(splits, key=len)  # of equals the first, which has most cautions
    return [Side(panel, tuple(blocks)) for blocks in best]


def _must(backing: Backing, panel: Panel, share: float) -> list[Block]:
    """Return what every back says; nothing where the code does not fit its share of the width."""
    scale, width = panel.scale, panel.width
    code = code_block(backing.symbol, backing.legend, scale, width, share)
    if code is None:
        return []
    imprint = imprint_block(backing.shop_name, backing.shop_line, backing.logo, scale, width)
    return [block for block in (imprint, code) if block.items]


def _asked(backing: Backing, panel: Panel) -> list[Block]:
    """Return what was asked for besides: the variants, and what to buy."""
    lines = [lines for lines in (backing.variants, backing.shopping) if lines]
    return [lines_block(each, panel.scale, panel.width) for each in lines]


def _care(cautions: Sequence[Caution], panel: Panel) -> list[Block]:
    return [caution_block([caution], panel.scale, panel.width) for caution in cautions]


def _counts(backing: Backing) -> range:
    """How many cautions to try, the most first."""
    return range(len(backing.cautions), _LEAST_CAUTIONS - 1, -1)
