"""The bench sheet: a batch in; pages to work down, with boxes to tick, out."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from tagend.cards.base.shown_lengths import ShownUnit, length, line_length
from tagend.cards.batches.batch import Batch, Cut, Order, Pull
from tagend.cards.faces.block import (
    DROP,
    Block,
    Scale,
    filled,
    line_block,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.chart import profile_chart
from tagend.cards.faces.page import MARGIN, pages
from tagend.cards.faces.ticks import tick_boxes
from tagend.cards.faces.told import Told
from tagend.cards.leader.leader import Leader
from tagend.cards.words.cautions import Caution
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import diameter, spans, thickness
from tagend.cards.words.shopping import ready_made, shortage_line
from tagend.cards.words.tying_words import TyingLine, tying_lines
from tagend.fonts import Chain, Fonts
from tagend.layouts.paper.face import Face, Path, segment, shifted
from tagend.layouts.paper.text import SetLine, set_line
from tagend.layouts.stock.formats import Paper

FACTOR = 14 / 9  # body type of 14 pt, which is read at arm's length
_CHART_FACTOR = 1.1
_GAP = 7.0  # points between blocks
_NEAR = 2.0  # points within a block
_COLUMN = 0.2  # of the width: where the boxes begin, or further right


@dataclass(frozen=True, slots=True)
class _Bench:
    """How a bench sheet is set: its words, its type and the room on a page, in points."""

    wording: Wording
    scale: Scale
    width: float
    height: float

    def bold(self, words: str, width: float | None = None) -> Block:
        """Return words in bold body type, in the page's width or another."""
        return text_block(words, self.scale.bold, self.scale.body, width or self.width)


def bench_sheet(
    all_told: Sequence[Told],
    batch: Batch,
    cautions: Sequence[Caution],
    paper: Paper,
    fonts: Fonts,
) -> tuple[Face, ...]:
    """Return the pages: cutting spool by spool, then tying, then what the leader looks like.

    The batch has an order for each leader that is told, in their order. Raises `TooSmall` and
    `TooWide` for paper that is too small for its type.
    """
    scale, wording = Scale(FACTOR, fonts), all_told[0].wording
    height = paper.height - 2 * MARGIN - 2 * scale.small  # for the foot
    on = _Bench(wording, scale, paper.width - 2 * MARGIN, height)
    blocks = [*_head(batch, on), *_cutting(batch, on), *_buying(batch, on)]
    for told, order in zip(all_told, batch.orders, strict=True):
        blocks += [*_tying(order, on), _chart(told, on)]
    care = [small_lines([caution.long], scale, on.width) for caution in cautions]
    blocks += [stacked(part) for part in filled(care, 0.0, height)]
    return pages(filled(blocks, _GAP, height), _GAP, paper, wording, fonts.medium)


def _head(batch: Batch, on: _Bench) -> Iterator[Block]:
    yield line_block(set_line(on.wording.say("bench_sheet"), on.scale.bold, on.scale.name))
    for order in batch.orders:
        leader = order.leader
        lengths = spans(leader.finished, leader, on.wording)
        what = f"{order.count} × {leader.recipe.name}, {lengths}"
        strand = thickness(leader.tippet, leader, on.wording)
        tippet = on.wording.say("sections_and_tippet", count=len(leader.pieces), strand=strand)
        more = " · ".join(filter(None, (leader.recipe.use, tippet)))
        yield stacked([on.bold(what), small_lines([more], on.scale, on.width)])


def _with_heading(title: str, blocks: Iterable[Block], on: _Bench) -> Iterator[Block]:
    """Yield the blocks, the first with the heading over it; no heading over nothing."""
    for place, block in enumerate(blocks):
        rule = Block((Path(segment(0, 0, on.width, 0), 1.0),), 3.0)
        yield block if place else stacked([rule, on.bold(title), block], _NEAR)


def _cutting(batch: Batch, on: _Bench) -> Iterator[Block]:
    pulls = (block for pull in batch.pulls for block in _pull(pull, batch.orders[0].leader, on))
    return _with_heading(on.wording.say("cutting"), pulls, on)


def _pull(pull: Pull, leader: Leader, on: _Bench) -> Iterator[Block]:
    """Yield a spool's block; where its cuts take more than a page, several that name it."""
    leader = pull.cuts[0].leader if pull.cuts else leader
    name = _pull_name(pull, leader, on.wording)
    says = "; ".join(_pull_says(pull, leader.unit, on.wording))
    top = stacked([on.bold(name), small_lines([says], on.scale, on.width)])
    room = on.height - 2 * on.scale.body - top.height - _NEAR  # below a heading
    cuts = [_cut(cut, on) for cut in pull.cuts]
    for part in filled(cuts, _NEAR, room) or [[]]:
        yield stacked([top, *part], _NEAR)
        top = on.bold(on.wording.say("continued", name=name))


def _pull_name(pull: Pull, leader: Leader, wording: Wording) -> str:
    if pull.spool is None:
        return thickness(pull.cuts[0].piece, leader, wording)
    thick = diameter(pull.spool.diameter, leader, wording)
    strand = wording.say("strand", diameter=thick, material=wording.material(pull.material))
    return f"{pull.spool.label}: {strand}"


def _pull_says(pull: Pull, unit: ShownUnit, wording: Wording) -> Iterator[str]:
    yield wording.say("draws", amount=wording.number(line_length(pull.mm, unit)))
    if pull.left_mm is not None:
        yield wording.say("stays", amount=wording.number(line_length(pull.left_mm, unit)))
    if pull.runs_out_at is not None:
        yield wording.say("runs_out", leader=pull.runs_out_at)


def _cut(cut: Cut, on: _Bench) -> Block:
    """Set the length large, and beside it whose piece it is and a box for each piece."""
    leader, scale = cut.leader, on.scale
    number = _cut_length(cut, leader.unit, on.wording, scale.bold, 1.5 * scale.body)
    column = _beside(number, on)
    whose = on.wording.say(
        "pieces_of", count=cut.count, section=cut.piece.place, name=leader.recipe.name
    )
    words = small_lines([whose], scale, on.width - column)
    boxes = tick_boxes(cut.count, on.wording, scale, on.width - column)
    beside = stacked([words, boxes], _NEAR)
    items = (*number.at(0, DROP * number.size), *shifted(beside.items, column, 0))
    height = max(beside.height, number.size)
    if leader.second_unit:
        again = _cut_length(cut, leader.second_unit, on.wording, scale.medium, scale.body)
        items = (*items, *again.at(0, number.size + DROP * again.size))
        height = max(height, number.size + again.size)
    return Block(items, height + 3)


def _cut_length(cut: Cut, unit: ShownUnit, wording: Wording, fonts: Chain, size: float) -> SetLine:
    return set_line(wording.number(length(cut.piece.cut_mm, unit)), fonts, size)


def _beside(words: SetLine, on: _Bench) -> float:
    """Return where a column beside some words begins."""
    return max(_COLUMN * on.width, words.width + 0.5 * on.scale.body)


def _buying(batch: Batch, on: _Bench) -> Iterator[Block]:
    says = (
        *(shortage_line(shortage, on.wording) for shortage in batch.shortages),
        *(
            ready_made(piece, order.leader, order.count, on.wording)
            for order in batch.orders
            for piece in order.leader.pieces
            if piece.section.bought
        ),
    )
    medium, size = on.scale.medium, on.scale.body
    blocks = (text_block(each, medium, size, on.width) for each in says)
    return _with_heading(on.wording.say("buying"), blocks, on)


def _tying(order: Order, on: _Bench) -> Iterator[Block]:
    title = on.wording.say("tying", count=order.count, name=order.leader.recipe.name)
    ties = (_tie(tie, order.count, on) for tie in tying_lines(order.leader, on.wording))
    return _with_heading(title, ties, on)


def _tie(tie: TyingLine, count: int, on: _Bench) -> Block:
    """Set where the knot is, and beside it the knot, how it is seated and a box for each."""
    where = set_line(tie.where, on.scale.bold, on.scale.body)
    column = _beside(where, on)
    room = on.width - column
    below = small_lines(filter(None, (tie.asks, tie.seat)), on.scale, room)
    boxes = tick_boxes(count, on.wording, on.scale, room)
    beside = stacked([on.bold(tie.says, room), below, Block((), 2.0), boxes])
    return Block(
        (*where.at(0, DROP * where.size), *shifted(beside.items, column, 0)), beside.height + 2
    )


def _chart(told: Told, on: _Bench) -> Block:
    return profile_chart(told, on.scale._replace(factor=_CHART_FACTOR), on.width)
