"""The pull sheet: leaders that a search has found in; pages to go through the wallets with out."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import accumulate

from msgspec import Struct

from tagend.cards.book.leaders import IN_WALLET, State
from tagend.cards.faces.block import (
    DROP,
    LEADING,
    Block,
    Scale,
    rule,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.page import NARROW_MARGIN, Page, Row
from tagend.cards.words.language import Wording
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, Path, rectangle, shifted
from tagend.layouts.paper.text import SetLine, set_line
from tagend.layouts.stock.formats import Paper

_FACTOR = 13 / 9  # body type of 13 pt, which is read at arm's length
_NUMBER = 18.0  # points
_BOX = 13.0
_GAP = 9.0  # between two columns
_ABOVE = 4.0  # between a rule and what stands below it
_SHARES = (0.32, 0.34, 0.34)  # of what is left: the recipe's, the spool's and the state's column


class FoundLeader(Struct, frozen=True, kw_only=True):
    """One numbered leader that a search has found."""

    number: int
    recipe: str
    tied: date
    holds: str  # the spool and lot that were looked for
    state: State
    remark: str | None = None


class PullSheet(Struct, frozen=True):
    """What was looked for, on which day, and the leaders that hold it."""

    title: str
    day: date
    rows: tuple[FoundLeader, ...]


class _PullColumns(Struct, frozen=True):
    """Where the columns stand after the box: number, recipe, day, spool and state."""

    starts: tuple[float, ...]
    widths: tuple[float, ...]


def pull_sheet(pull: PullSheet, paper: Paper, wording: Wording, fonts: Fonts) -> tuple[Face, ...]:
    """Return the pages: by number, first what may be in a wallet, then given away, then discarded.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type, and `NoGlyph`.
    """
    head = " · ".join((wording.say("pull_sheet"), pull.title, pull.day.isoformat()))
    page = Page(paper, Scale(_FACTOR, fonts), wording, head, NARROW_MARGIN)
    columns = _columns(pull, page)
    rows = [Row(page.bold(pull.title))]
    kept = [row for row in pull.rows if row.state in IN_WALLET]
    given, gone = (
        [row for row in pull.rows if row.state == state] for state in ("given", "discarded")
    )
    rows += _part(wording.say("pull_from_wallets", count=len(kept)), kept, page, columns)
    rows += _part(wording.say("pull_given", count=len(given)), given, page, columns)
    rows += _part(wording.say("pull_discarded", count=len(gone)), gone, page, columns)
    return page.of_rows(rows, 0.0)


def _columns(pull: PullSheet, page: Page) -> _PullColumns:
    scale, say = page.scale, page.wording.say
    numbers = [_number(row, scale).width for row in pull.rows]
    number = max([*numbers, set_line(say("pull_number"), scale.medium, scale.small).width])
    day = set_line(pull.day.isoformat(), scale.medium, scale.body).width
    left = page.width - _BOX - number - day - 5 * _GAP
    recipe, holds, state = (share * left for share in _SHARES)
    widths = (number, recipe, day, holds, state)
    starts = accumulate((_BOX, *widths[:-1]), lambda x, width: x + width + _GAP)
    return _PullColumns(tuple(x + _GAP for x in starts), widths)


def _part(
    title: str, found: Sequence[FoundLeader], page: Page, columns: _PullColumns
) -> Iterator[Row]:
    say = page.wording.say
    words = say("pull_number"), say("leader"), say("tied"), say("spool"), say("pull_state")
    heads = _row([small_lines([word], page.scale, page.width) for word in words], columns)
    over, again = stacked([Block((), _ABOVE), page.bold(title), heads]), None
    for leader in sorted(found, key=lambda each: each.number):
        yield Row(stacked([over, _leader(leader, page, columns)]), again)
        again = stacked([page.bold(say("continued", name=title)), heads])
        over = Block((), 0.0)


def _leader(leader: FoundLeader, page: Page, columns: _PullColumns) -> Block:
    """Set a leader's row under a rule, with a box to tick."""
    scale, say = page.scale, page.wording.say
    state = say(f"is_{leader.state}")
    says = (
        [leader.recipe],
        [leader.tied.isoformat()],
        [leader.holds],
        [state, *([leader.remark] if leader.remark else [])],
    )
    number = _number(leader, scale)
    # All stand on the baseline of the number.
    down = DROP * (_NUMBER - scale.body)
    cells = [Block(number.at(0, DROP * _NUMBER), LEADING * _NUMBER)]
    for words, width in zip(says, columns.widths[1:], strict=True):
        cell = stacked(text_block(each, scale.medium, scale.body, width) for each in words)
        cells.append(Block(shifted(cell.items, 0, down), cell.height + down))
    row = _row(cells, columns)
    box = Path(rectangle(0, DROP * _NUMBER - _BOX, _BOX, _BOX), 0.8)
    block = Block((box, *row.items), row.height)
    return stacked([rule(page.width, 0.5, _ABOVE), block, Block((), _ABOVE)])


def _row(cells: Sequence[Block], columns: _PullColumns) -> Block:
    """Set cells beside each other."""
    placed = zip(cells, columns.starts, strict=True)
    items = tuple(item for cell, x in placed for item in shifted(cell.items, x, 0))
    return Block(items, max(cell.height for cell in cells))


def _number(leader: FoundLeader, scale: Scale) -> SetLine:
    return set_line(str(leader.number), scale.bold, _NUMBER)
