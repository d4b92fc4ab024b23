"""The bench sheet: a batch in; pages to work down, with boxes to tick, out."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace

from tagend.cards.base.shown_lengths import ShownUnit, length, line_length
from tagend.cards.batches.batch import Batch, Cut, Order, Pull
from tagend.cards.faces.batch_head import NEW, BatchHead
from tagend.cards.faces.block import (
    DROP,
    Block,
    Scale,
    beside,
    filled,
    line_block,
    rule,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.chart import profile_chart
from tagend.cards.faces.page import Page
from tagend.cards.faces.ticks import tick_boxes
from tagend.cards.words.cautions import Caution
from tagend.cards.words.leader_words import Told
from tagend.cards.words.shopping import ready_made, shortage_line
from tagend.cards.words.tying_words import TyingLine, tying_lines
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import SetLine, set_line
from tagend.layouts.stock.formats import Paper

FACTOR = 14 / 9  # body type of 14 pt, which is read at arm's length
_CHART_FACTOR = 1.1
_GAP = 7.0  # points between blocks
_NEAR = 2.0  # points within a block
_COLUMN = 0.2  # of the width: where the boxes begin, or further right


def bench_sheet(
    all_told: Sequence[Told],
    batch: Batch,
    cautions: Sequence[Caution],
    paper: Paper,
    fonts: Fonts,
    head: BatchHead = NEW,
) -> tuple[Face, ...]:
    """Return the pages: cutting spool by spool, then tying, then what the leader looks like.

    The batch has an order for each leader that is told, in their order. Raises `TooSmall` and
    `TooWide` for paper that is too small for its type.
    """
    page = Page(paper, Scale(FACTOR, fonts), all_told[0].wording)
    orders = list(zip(all_told, batch.orders, strict=True))
    title = set_line(page.wording.say("bench_sheet"), page.scale.bold, page.scale.name)
    blocks = [line_block(title), *(_what(told, order, page) for told, order in orders)]
    pulls = (block for pull in batch.pulls for block in _pull(pull, all_told[0], page))
    blocks += _headed(page.wording.say("cutting"), pulls, page)
    blocks += _headed(page.wording.say("buying"), _buying(all_told, batch, page), page)
    chart_scale = replace(page.scale, factor=_CHART_FACTOR)
    for told, order in orders:
        tying = page.wording.say("tying", count=order.count, name=told.leader.recipe.name)
        blocks += _headed(tying, (_tie(tie, order, page) for tie in tying_lines(told)), page)
        blocks.append(profile_chart(told, chart_scale, page.width))
    care = [small_lines([caution.long], page.scale, page.width) for caution in cautions]
    blocks += [stacked(part) for part in filled(care, 0.0, page.height)]
    return page.faces(blocks, _GAP)


def _what(told: Told, order: Order, page: Page) -> Block:
    """Return how many of which leader there are to tie."""
    leader = told.leader
    what = f"{order.count} × {leader.recipe.name}, {told.spans(leader.finished)}"
    strand = told.thickness(leader.tippet)
    tippet = page.wording.say("sections_and_tippet", count=len(leader.pieces), strand=strand)
    more = " · ".join(filter(None, (leader.recipe.use, tippet)))
    return stacked([page.bold(what), small_lines([more], page.scale, page.width)])


def _headed(title: str, blocks: Iterable[Block], page: Page) -> Iterator[Block]:
    """Yield the blocks, the first with the heading over it; no heading over nothing."""
    for place, block in enumerate(blocks):
        over = () if place else (rule(page.width, 1.0, 3.0), page.bold(title))
        yield stacked([*over, block], _NEAR)


def _pull(pull: Pull, first: Told, page: Page) -> Iterator[Block]:
    """Yield a spool's block; where its cuts take more than a page, several that name it."""
    told = Told(pull.cuts[0].leader, page.wording) if pull.cuts else first
    name = _pull_name(pull, told)
    says = "; ".join(_pull_says(pull, told))
    top = stacked([page.bold(name), small_lines([says], page.scale, page.width)])
    room = page.height - 2 * page.scale.body - top.height - _NEAR  # below a heading
    cuts = [_cut(cut, page) for cut in pull.cuts]
    for part in filled(cuts, _NEAR, room) or [[]]:
        yield stacked([top, *part], _NEAR)
        top = page.bold(page.wording.say("continued", name=name))


def _pull_name(pull: Pull, told: Told) -> str:
    if pull.spool is None:
        return told.thickness(pull.cuts[0].piece)
    return f"{pull.spool.label}: {told.kind(told.diameter(pull.spool.diameter), pull.material)}"


def _pull_says(pull: Pull, told: Told) -> Iterator[str]:
    unit, wording = told.leader.unit, told.wording
    yield wording.say("draws", amount=wording.number(line_length(pull.mm, unit)))
    if pull.left_mm is not None:
        yield wording.say("stays", amount=wording.number(line_length(pull.left_mm, unit)))
    if pull.runs_out_at is not None:
        number, name = pull.runs_out_at.number, pull.runs_out_at.order.leader.recipe.name
        yield wording.say("runs_out", leader=number, name=name)


def _cut(cut: Cut, page: Page) -> Block:
    """Set the length large, and beside it whose piece it is and a box for each piece."""
    leader, scale, wording = cut.leader, page.scale, page.wording

    def cut_length(unit: ShownUnit) -> str:
        return wording.number(length(cut.piece.cut_mm, unit))

    def whose(room: float) -> Block:
        section, name = cut.piece.place, leader.recipe.name
        words = wording.say("pieces_of", count=cut.count, section=section, name=name)
        boxes = tick_boxes(cut.count, wording, scale, room)
        return stacked([small_lines([words], scale, room), boxes], _NEAR)

    number = set_line(cut_length(leader.unit), scale.bold, 1.5 * scale.body)
    block = _beside(number, whose, page)
    if leader.second_unit:
        again = set_line(cut_length(leader.second_unit), scale.medium, scale.body)
        items = (*block.items, *again.at(0, number.size + DROP * again.size))
        block = Block(items, max(block.height, number.size + again.size))
    return Block(block.items, block.height + 3)


def _beside(line: SetLine, words: Callable[[float], Block], page: Page) -> Block:
    """Return a line with words beside it, which are set into the width that they have there."""
    column = max(_COLUMN * page.width, line.width + 0.5 * page.scale.body)
    at_left = Block(line.at(0, DROP * line.size), line.size)
    return beside([at_left, words(page.width - column)], column)


def _buying(all_told: Sequence[Told], batch: Batch, page: Page) -> Iterator[Block]:
    says = [shortage_line(shortage, page.wording) for shortage in batch.shortages]
    for told, order in zip(all_told, batch.orders, strict=True):
        says += ready_made(told, order.count)
    medium, size = page.scale.medium, page.scale.body
    return (text_block(each, medium, size, page.width) for each in says)


def _tie(tie: TyingLine, order: Order, page: Page) -> Block:
    """Set where the knot is, and beside it the knot, how it is seated and a box for each."""

    def words(room: float) -> Block:
        below = small_lines(filter(None, (tie.asks, tie.seat)), page.scale, room)
        boxes = tick_boxes(order.count, page.wording, page.scale, room)
        return stacked([page.bold(tie.says, room), below, Block((), 2.0), boxes, Block((), 2.0)])

    return _beside(set_line(tie.where, page.scale.bold, page.scale.body), words, page)
