"""The bench sheet: a batch in; pages to work down, with boxes to tick, out."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from tagend.cards.batches.batch import Batch, Order
from tagend.cards.faces.batch_head import NEW, BatchHead
from tagend.cards.faces.bench_cuts import cut_table
from tagend.cards.faces.bench_knots import blanks, knot_rows, measure_rows
from tagend.cards.faces.block import (
    Block,
    Scale,
    TooSmall,
    beside,
    hung,
    small_lines,
    stacked,
)
from tagend.cards.faces.chart import profile_chart
from tagend.cards.faces.page import NARROW_MARGIN, Page, Row
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.shopping import ready_made, shortage_line
from tagend.fonts import Fonts
from tagend.layouts.paper.face import Face, Path, rectangle, shifted
from tagend.layouts.stock.formats import Paper

FACTOR = 13 / 9  # body type of 13 pt, which is read at arm's length
_CHART_FACTOR = 1.1
_NEAR = 4.0  # points
_FRAME = 4.0  # within the frame of the cautions
_MOST_NAMES = 4  # in the running head


def bench_sheet(
    all_told: Sequence[Told],
    batch: Batch,
    cautions: Sequence[Caution],
    paper: Paper,
    fonts: Fonts,
    head: BatchHead = NEW,
) -> tuple[Face, ...]:
    """Return the pages: cutting spool by spool, then tying, then what a knot took, then cautions.

    The batch has an order for each leader that is told, in their order. Charts stand where the
    last page has room. Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    wording = all_told[0].wording
    running = _running(all_told, head, wording)
    page = Page(paper, Scale(FACTOR, fonts), wording, running, NARROW_MARGIN)
    rows = _heeded([*_rows(all_told, batch, page, head)], cautions, page)
    charts = replace(page.scale, factor=_CHART_FACTOR)
    for told in all_told:
        named = [page.bold(told.leader.recipe.name)] if len(all_told) > 1 else []
        chart = profile_chart(told, charts, page.width)
        more = [*rows, Row(stacked([Block((), _NEAR), *named, chart]))]
        rows = more if _pages(more, page) == _pages(rows, page) else rows
    return page.of_rows(rows, 0.0)


def _running(all_told: Sequence[Told], head: BatchHead, wording: Wording) -> str:
    """Return what heads every page."""
    names = [told.leader.recipe.name for told in all_told]
    if more := len(names[_MOST_NAMES:]):
        names = [wording.say("and_more", names=", ".join(names[:_MOST_NAMES]), more=more)]
    parts = [wording.say("bench_sheet"), ", ".join(names)]
    if head.number is not None:
        parts.append(wording.say("batch", number=head.number))
    if head.day is not None:
        parts.append(" ".join((wording.say("tied"), head.day.isoformat())))
    if head.who is not None:
        parts.append(head.who)
    return " · ".join(parts)


def _rows(all_told: Sequence[Told], batch: Batch, page: Page, head: BatchHead) -> Iterator[Row]:
    """Yield all that must stand on the pages but the cautions."""
    orders, say = list(zip(all_told, batch.orders, strict=True)), page.wording.say
    yield from (Row(_what(told, order, page)) for told, order in orders)
    wanted = [] if head.day else [say("tied")]
    written = blanks([*wanted, say("remark")], page.scale, page.width)
    yield Row(stacked([written, Block((), _NEAR)]))
    table = cut_table(batch, page)
    yield from table.rows(page.bold(say("cutting")))
    over = page.bold(say("buying"))
    for words in _buying(all_told, batch, page):
        yield Row(stacked([over, small_lines([words], page.scale, page.width)]))
        over = Block((), 0.0)
    for told, order in orders:
        yield from knot_rows(told, order, page, table.boxes)
    yield from measure_rows(all_told, page)


def _what(told: Told, order: Order, page: Page) -> Block:
    """Return how many of which leader there are to tie."""
    leader = told.leader
    what = f"{order.count} × {leader.recipe.name}, {told.spans(leader.finished)}"
    strand = told.thickness(leader.tippet)
    tippet = page.wording.say("sections_and_tippet", count=len(leader.pieces), strand=strand)
    more = " · ".join(filter(None, (leader.recipe.use, tippet)))
    return stacked([page.bold(what), small_lines([more], page.scale, page.width)])


def _buying(all_told: Sequence[Told], batch: Batch, page: Page) -> Iterator[str]:
    yield from (shortage_line(shortage, page.wording) for shortage in batch.shortages)
    for told, order in zip(all_told, batch.orders, strict=True):
        yield from ready_made(told, order.count)


def _heeded(rows: list[Row], cautions: Sequence[Caution], page: Page) -> list[Row]:
    """Return the rows with the cautions, in full where that takes no page more."""
    if not cautions:
        return rows
    short = [*rows, Row(_framed([caution.short for caution in cautions], 2, page))]
    full = [*rows, Row(_framed([caution.long for caution in cautions], 1, page))]
    return full if _pages(full, page) <= _pages(short, page) else short


def _framed(texts: Sequence[str], columns: int, page: Page) -> Block:
    """Return cautions in a frame, each with a mark."""
    inside = page.width - 2 * _FRAME
    each = (inside - (columns - 1) * _FRAME) / columns
    marked = [hung("!", text, page.scale, each) for text in texts]
    half = -(-len(marked) // columns)
    parts = [stacked(marked[at : at + half]) for at in range(0, len(marked), half)]
    block = stacked([page.bold(page.wording.say("take_care")), beside(parts, each + _FRAME)])
    frame = Path(rectangle(0, _NEAR, page.width, block.height + 2 * _FRAME), 1.0)
    items = (frame, *shifted(block.items, _FRAME, _NEAR + _FRAME))
    return Block(items, block.height + 2 * _FRAME + 2 * _NEAR)


def _pages(rows: Sequence[Row], page: Page) -> float:
    """Return how many pages rows take, or infinity for one that no page holds."""
    try:
        return len(page.filled(rows, 0.0))
    except TooSmall:
        return float("inf")
