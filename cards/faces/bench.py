"""The bench sheet: a batch in; pages to work down, with boxes to tick, out."""

from collections.abc import Iterator, Sequence

from cards.batch import Batch, Cut, Order, Pull
from cards.cautions import Caution
from cards.faces.block import DROP, Block, Scale, filled, line_block, stacked
from cards.faces.chart import profile_chart
from cards.faces.page import MARGIN, page
from cards.faces.ticks import tick_boxes
from cards.fitness import inches
from cards.order import Tie, tying_order
from cards.shopping import shortage_line
from cards.spell import length, line_length
from cards.words import span, thickness
from fonts import Weight
from layouts.face import Face, Path, segment, shifted
from layouts.formats import Paper
from layouts.text import SetLine, break_lines, set_line

SCALE = Scale(14 / 9)  # body type of 14 pt, which is read at arm's length
_GAP = 7.0  # points between blocks
_NEAR = 2.0  # points within a block
_HEADING = 2 * SCALE.body  # what a heading takes of a page
_COLUMN = 0.2  # of the width: where the boxes begin, or further right


def bench_sheet(batch: Batch, cautions: Sequence[Caution], paper: Paper) -> tuple[Face, ...]:
    """Return the pages: cutting spool by spool, then tying, then what the leader looks like.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    width = paper.width - 2 * MARGIN
    height = paper.height - 2 * MARGIN - 2 * SCALE.small  # for the foot
    pages = filled(_blocks(batch, cautions, width, height), _GAP, height)
    return tuple(
        page(stacked(blocks, _GAP), f"page {number} of {len(pages)}", paper)
        for number, blocks in enumerate(pages, start=1)
    )


def _blocks(
    batch: Batch, cautions: Sequence[Caution], width: float, height: float
) -> Iterator[Block]:
    yield from _head(batch, width)
    cutting = _cutting(batch, width, height - _HEADING)
    yield from _with_heading("Cut, one spool at a time", cutting, width)
    yield from _with_heading("Buy", _buying(batch, width), width)
    for order in batch.orders:
        title = f"Tie {order.count} × {order.leader.recipe.name}, from the butt to the fly"
        yield from _with_heading(title, _tying(order, width), width)
        yield profile_chart(order.leader, Scale(1.1), width)
    care = [_text(caution.long, "medium", SCALE.small, width) for caution in cautions]
    yield from (stacked(part) for part in filled(care, 0.0, height))


def _head(batch: Batch, width: float) -> Iterator[Block]:
    yield line_block(set_line("Bench sheet", "bold", SCALE.name))
    for order in batch.orders:
        leader = order.leader
        what = f"{order.count} × {leader.recipe.name}, {span(leader.finished, leader)}"
        tippet = f"{len(leader.pieces)} sections, tippet {thickness(leader.tippet)}"
        more = " · ".join(filter(None, (leader.recipe.use, tippet)))
        yield stacked(
            [_text(what, "bold", SCALE.body, width), _text(more, "medium", SCALE.small, width)]
        )


def _with_heading(title: str, blocks: Iterator[Block], width: float) -> Iterator[Block]:
    """Yield the blocks, the first with the heading over it; no heading over nothing."""
    first = next(blocks, None)
    if first is None:
        return
    rule = Block((Path(segment(0, 0, width, 0), 1.0),), 3.0)
    heading = _text(title, "bold", SCALE.body, width)
    yield stacked([rule, heading, first], _NEAR)
    yield from blocks


def _cutting(batch: Batch, width: float, height: float) -> Iterator[Block]:
    """Yield a block a spool; where its cuts take more than a page, several that name it."""
    for pull in batch.pulls:
        top = _pull_head(pull, width)
        cuts = [_cut(cut, width) for cut in pull.cuts]
        for part in filled(cuts, _NEAR, height - top.height - _NEAR) or [[]]:
            yield stacked([top, *part], _NEAR)
            top = _text(f"{_pull_name(pull)}, continued", "bold", SCALE.body, width)


def _pull_name(pull: Pull) -> str:
    if pull.spool is None:
        return f"{inches(pull.diameter_mm)} {pull.material}"
    return f"{pull.spool.label}: {pull.spool.diameter.plain} {pull.material}"


def _pull_head(pull: Pull, width: float) -> Block:
    name = _text(_pull_name(pull), "bold", SCALE.body, width)
    unit = pull.cuts[0].leader.unit if pull.cuts else "in"
    says = f"draws {line_length(pull.mm, unit)}"
    if pull.left_mm is not None:
        says += f", {line_length(pull.left_mm, unit)} stays"
    if pull.runs_out_at is not None:
        says += f"; runs out at leader {pull.runs_out_at}"
    return stacked([name, _text(says, "medium", SCALE.small, width)])


def _cut(cut: Cut, width: float) -> Block:
    """Set the length large, and beside it whose piece it is and a box for each piece."""
    leader = cut.leader
    number = set_line(length(cut.piece.cut_mm, leader.unit), "bold", 1.5 * SCALE.body)
    column = _beside(number, width)
    whose = f"{cut.count} × section {cut.piece.place} of {leader.recipe.name}"
    words = _text(whose, "medium", SCALE.small, width - column)
    boxes = tick_boxes(cut.count, width - column, SCALE.small)
    beside = stacked([words, boxes], _NEAR)
    return Block(
        (*number.at(0, DROP * number.size), *shifted(beside.items, column, 0)),
        max(beside.height, number.size) + 3,
    )


def _beside(words: SetLine, width: float) -> float:
    """Return where a column beside some words begins."""
    return max(_COLUMN * width, words.width + 0.5 * SCALE.body)


def _buying(batch: Batch, width: float) -> Iterator[Block]:
    for shortage in batch.shortages:
        yield _text(shortage_line(shortage), "medium", SCALE.body, width)
    for order in batch.orders:
        for piece in order.leader.pieces:
            if piece.section.bought:
                says = (
                    f"{order.count} × {piece.section.length.plain}, {thickness(piece)}, ready made"
                )
                yield _text(says, "medium", SCALE.body, width)


def _tying(order: Order, width: float) -> Iterator[Block]:
    for tie in tying_order(order.leader):
        yield _tie(tie, order.count, width)


def _tie(tie: Tie, count: int, width: float) -> Block:
    """Set where the knot is, and beside it the knot, how it is seated and a box for each."""
    where = set_line(tie.where, "bold", SCALE.body)
    column = _beside(where, width)
    room = width - column
    lines = [_text(tie.says, "bold", SCALE.body, room)]
    below = filter(None, (tie.asks, tie.knot.seat))
    lines += [_text(says, "medium", SCALE.small, room) for says in below]
    boxes = tick_boxes(count, room, SCALE.small)
    beside = stacked([*lines, Block((), 2.0), boxes])
    return Block(
        (*where.at(0, DROP * where.size), *shifted(beside.items, column, 0)), beside.height + 2
    )


def _text(words: str, weight: Weight, size: float, width: float) -> Block:
    return stacked(line_block(line) for line in break_lines(words, weight, size, width))
