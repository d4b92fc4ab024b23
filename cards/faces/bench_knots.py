"""The tying of a batch: leaders in; a table of knots to tick, and one of what they took, out."""

from collections.abc import Iterator, Sequence

from tagend.cards.batches.batch import Order
from tagend.cards.faces.block import (
    DROP,
    LEADING,
    Block,
    Scale,
    led,
    rule,
    small_lines,
    stacked,
)
from tagend.cards.faces.page import Page, Row
from tagend.cards.faces.ticks import ticked
from tagend.cards.leader.tying_order import tying_order
from tagend.cards.practice.knots import Knot
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.leader_words import Told
from tagend.cards.words.tying_words import TyingLine, tying_lines
from tagend.layouts.paper.face import Item, Path, segment, shifted
from tagend.layouts.paper.text import SetLine, set_line

_GAP = 8.0
_ABOVE = 2.5  # between a rule and what stands below it
_LEAST = 110.0  # points: a knot and what is said of it need so much beside its boxes
_MEASURE = 210.0  # points, to write what a knot took
_WRITTEN = 17.0  # points, as high as a hand writes
_SPACE = 4.0  # before and after a line to write on
_PEN = 0.5


def knot_rows(told: Told, order: Order, page: Page, boxes: float) -> Iterator[Row]:
    """Yield a row for each knot in the order of tying; boxes begin at `boxes`, or below at 0."""
    say = page.wording.say
    title = say("tying", count=order.count, name=told.leader.recipe.name)
    over = stacked([Block((), 4.0), page.bold(title)])
    lines = tying_lines(told)
    left = max((_where(line, page).width for line in lines), default=0.0) + _GAP
    boxes = boxes if boxes - left - _GAP >= _LEAST else 0.0
    again = None
    for line in lines:
        yield Row(stacked([over, _knot(line, order, page, left, boxes)]), again)
        over, again = Block((), 0.0), page.bold(say("continued", name=title))


def measure_rows(all_told: Sequence[Told], page: Page) -> Iterator[Row]:
    """Yield a row for each different knot: how it is seated, and a place for what it took."""
    ties = (tie for told in all_told for tie in tying_order(told.leader))
    say = page.wording.say
    short = small_lines([say("measure_knots")], page.scale, page.width)
    over = stacked([Block((), 4.0), page.bold(say("knots")), short])
    for knot in {tie.knot.name: tie.knot for tie in ties}.values():
        yield Row(stacked([over, _measure(knot_in(page.wording, knot), page)]))
        over = Block((), 0.0)


def blanks(words: Sequence[str], scale: Scale, width: float) -> Block:
    """Return words with an equally long line to write on after each, all within a width."""
    lines = [set_line(word, scale.medium, scale.small) for word in words]
    free = width - sum(line.width for line in lines) - (2 * len(lines) - 1) * _SPACE
    items: list[Item] = []
    x, y = 0.0, DROP * _WRITTEN
    for line in lines:
        start = x + line.width + _SPACE
        end = start + free / len(lines)
        items += (*line.at(x, y), Path(segment(start, y + 2.0, end, y + 2.0), _PEN))
        x = end + _SPACE
    return Block(tuple(items), _WRITTEN + 2.0)


def _where(line: TyingLine, page: Page) -> SetLine:
    return set_line(line.where, page.scale.bold, page.scale.body)


def _knot(line: TyingLine, order: Order, page: Page, left: float, boxes: float) -> Block:
    """Set where the knot is, the knot, a box for each and what must wait for it."""
    where = _where(line, page).at(0, DROP * page.scale.body)
    says = page.bold(line.says, (boxes or page.width) - left - _GAP)
    block = Block((*where, *shifted(says.items, left, 0)), says.height)
    block = ticked(block, order, page, boxes or -left, LEADING * page.scale.body)
    if not line.asks:
        return _ruled([block], page)
    asks = small_lines([line.asks], page.scale, page.width - left)
    return _ruled([block, Block(shifted(asks.items, left, 0), asks.height)], page)


def _measure(knot: Knot, page: Page) -> Block:
    """Set a knot's name, how it is seated and, where a tape can tell what it took, lines for it."""
    scale, say = page.scale, page.wording.say
    right = page.width - _MEASURE
    block = led(page.wording.knot(knot.name), knot.seat, scale, right - _GAP)
    if "joint" not in knot.places:
        lines = blanks([say("measured_cut"), say("measured_tied")], scale, _MEASURE)
    elif knot.lapped:
        lines = blanks([say("measured_cut"), "+", say("measured_tied")], scale, _MEASURE)
    else:
        return _ruled([block], page)
    return _ruled(
        [Block((*block.items, *shifted(lines.items, right, 0)), max(block.height, lines.height))],
        page,
    )


def _ruled(blocks: Sequence[Block], page: Page) -> Block:
    over = rule(page.width, 0.5, _ABOVE)
    return stacked([over, *blocks, Block((), _ABOVE)])
