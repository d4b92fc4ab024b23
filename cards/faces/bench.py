"""The bench sheet: a batch in; pages to work down, with boxes to tick, out."""

from collections.abc import Iterator, Sequence

from tagend.cards.base.shown_lengths import ShownUnit, length, line_length
from tagend.cards.batches.batch import Batch, Cut, Order, Pull
from tagend.cards.faces.block import DROP, Block, Scale, filled, line_block, stacked
from tagend.cards.faces.chart import profile_chart
from tagend.cards.faces.page import MARGIN, pages
from tagend.cards.faces.ticks import tick_boxes
from tagend.cards.leader.leader import Leader
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import diameter, spans, thickness
from tagend.cards.words.shopping import ready_made, shortage_line
from tagend.cards.words.tying_order import Tie, tying_order
from tagend.fonts import Weight
from tagend.layouts.paper.face import Face, Path, segment, shifted
from tagend.layouts.paper.text import SetLine, break_lines, set_line
from tagend.layouts.stock.formats import Paper

SCALE = Scale(14 / 9)  # body type of 14 pt, which is read at arm's length
_GAP = 7.0  # points between blocks
_NEAR = 2.0  # points within a block
_HEADING = 2 * SCALE.body  # what a heading takes of a page
_COLUMN = 0.2  # of the width: where the boxes begin, or further right


def bench_sheet(
    batch: Batch, cautions: Sequence[Caution], wording: Wording, paper: Paper
) -> tuple[Face, ...]:
    """Return the pages: cutting spool by spool, then tying, then what the leader looks like.

    Raises `TooSmall` and `TooWide` for paper that is too small for its type.
    """
    width = paper.width - 2 * MARGIN
    height = paper.height - 2 * MARGIN - 2 * SCALE.small  # for the foot
    blocks = _blocks(batch, cautions, wording, width, height)
    return pages(filled(blocks, _GAP, height), _GAP, paper, wording)


def _blocks(
    batch: Batch, cautions: Sequence[Caution], wording: Wording, width: float, height: float
) -> Iterator[Block]:
    yield from _head(batch, wording, width)
    cutting = _cutting(batch, wording, width, height - _HEADING)
    yield from _with_heading(wording.say("cutting"), cutting, width)
    yield from _with_heading(wording.say("buying"), _buying(batch, wording, width), width)
    for order in batch.orders:
        title = wording.say("tying", count=order.count, name=order.leader.recipe.name)
        yield from _with_heading(title, _tying(order, wording, width), width)
        yield profile_chart(order.leader, wording, Scale(1.1), width)
    care = [_text(caution.long, "medium", SCALE.small, width) for caution in cautions]
    yield from (stacked(part) for part in filled(care, 0.0, height))


def _head(batch: Batch, wording: Wording, width: float) -> Iterator[Block]:
    yield line_block(set_line(wording.say("bench_sheet"), "bold", SCALE.name))
    for order in batch.orders:
        leader = order.leader
        lengths = spans(leader.finished, leader, wording)
        what = f"{order.count} × {leader.recipe.name}, {lengths}"
        strand = thickness(leader.tippet, leader, wording)
        count = len(leader.pieces)
        key = "sections_and_tippet" if count > 1 else "section_and_tippet"
        tippet = wording.say(key, count=count, strand=strand)
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


def _cutting(batch: Batch, wording: Wording, width: float, height: float) -> Iterator[Block]:
    """Yield a block a spool; where its cuts take more than a page, several that name it."""
    for pull in batch.pulls:
        leader = pull.cuts[0].leader if pull.cuts else batch.orders[0].leader
        name = _pull_name(pull, leader, wording)
        top = _pull_head(pull, name, leader.unit, wording, width)
        cuts = [_cut(cut, wording, width) for cut in pull.cuts]
        for part in filled(cuts, _NEAR, height - top.height - _NEAR) or [[]]:
            yield stacked([top, *part], _NEAR)
            top = _text(wording.say("continued", name=name), "bold", SCALE.body, width)


def _pull_name(pull: Pull, leader: Leader, wording: Wording) -> str:
    if pull.spool is None:
        return thickness(pull.cuts[0].piece, leader, wording)
    thick = diameter(pull.spool.diameter, leader, wording)
    strand = wording.say("strand", diameter=thick, material=wording.material(pull.material))
    return f"{pull.spool.label}: {strand}"


def _pull_head(pull: Pull, name: str, unit: ShownUnit, wording: Wording, width: float) -> Block:
    says = [wording.say("draws", amount=wording.number(line_length(pull.mm, unit)))]
    if pull.left_mm is not None:
        left = wording.number(line_length(pull.left_mm, unit))
        says.append(wording.say("stays", amount=left))
    if pull.runs_out_at is not None:
        says.append(wording.say("runs_out", leader=pull.runs_out_at))
    lines = [
        _text(name, "bold", SCALE.body, width),
        _text("; ".join(says), "medium", SCALE.small, width),
    ]
    return stacked(lines)


def _cut(cut: Cut, wording: Wording, width: float) -> Block:
    """Set the length large, and beside it whose piece it is and a box for each piece."""
    leader = cut.leader
    number = _cut_length(cut, leader.unit, wording, "bold", 1.5 * SCALE.body)
    column = _beside(number, width)
    whose = wording.say(
        "pieces_of", count=cut.count, section=cut.piece.place, name=leader.recipe.name
    )
    words = _text(whose, "medium", SCALE.small, width - column)
    boxes = tick_boxes(cut.count, wording, width - column, SCALE.small)
    beside = stacked([words, boxes], _NEAR)
    items = (*number.at(0, DROP * number.size), *shifted(beside.items, column, 0))
    height = max(beside.height, number.size)
    if leader.second_unit:
        again = _cut_length(cut, leader.second_unit, wording, "medium", SCALE.body)
        items = (*items, *again.at(0, number.size + DROP * again.size))
        height = max(height, number.size + again.size)
    return Block(items, height + 3)


def _cut_length(
    cut: Cut, unit: ShownUnit, wording: Wording, weight: Weight, size: float
) -> SetLine:
    return set_line(wording.number(length(cut.piece.cut_mm, unit)), weight, size)


def _beside(words: SetLine, width: float) -> float:
    """Return where a column beside some words begins."""
    return max(_COLUMN * width, words.width + 0.5 * SCALE.body)


def _buying(batch: Batch, wording: Wording, width: float) -> Iterator[Block]:
    for shortage in batch.shortages:
        yield _text(shortage_line(shortage, wording), "medium", SCALE.body, width)
    for order in batch.orders:
        for piece in order.leader.pieces:
            if piece.section.bought:
                says = ready_made(piece, order.leader, order.count, wording)
                yield _text(says, "medium", SCALE.body, width)


def _tying(order: Order, wording: Wording, width: float) -> Iterator[Block]:
    for tie in tying_order(order.leader, wording):
        yield _tie(tie, order.count, wording, width)


def _tie(tie: Tie, count: int, wording: Wording, width: float) -> Block:
    """Set where the knot is, and beside it the knot, how it is seated and a box for each."""
    where = set_line(tie.where, "bold", SCALE.body)
    column = _beside(where, width)
    room = width - column
    lines = [_text(tie.says, "bold", SCALE.body, room)]
    below = filter(None, (tie.asks, tie.knot.seat))
    lines += [_text(says, "medium", SCALE.small, room) for says in below]
    boxes = tick_boxes(count, wording, room, SCALE.small)
    beside = stacked([*lines, Block((), 2.0), boxes])
    return Block(
        (*where.at(0, DROP * where.size), *shifted(beside.items, column, 0)), beside.height + 2
    )


def _text(words: str, weight: Weight, size: float, width: float) -> Block:
    return stacked(line_block(line) for line in break_lines(words, weight, size, width))
