"""The cutting of a batch: its pulls in; one table out, by the spool, with a row for equal cuts."""

from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import length, length_number, line_length
from tagend.cards.batches.batch import Batch, Cut, Pull
from tagend.cards.faces.block import (
    DROP,
    Block,
    filled,
    led,
    rule,
    small_lines,
    stacked,
    text_block,
)
from tagend.cards.faces.columns import Column, column, quantities
from tagend.cards.faces.page import Page, Row
from tagend.cards.faces.ticks import boxes_width, ticked
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.shopping import spool_name
from tagend.layouts.paper.face import Item, shifted
from tagend.layouts.paper.text import TooWide

CUT = 18.0  # points, which is read at arm's length
_PITCH = 1.15  # of a row, in sizes of the cut
_HEADS = 9.5  # points
_GAP, _WIDEST = 8.0, 24.0  # between two columns, at the least and at the most
_MOST = 0.62  # of the width: what boxes take beside the rest
_LEAST = 0.3  # of the width: less is no room beside it
_ABOVE = 2.0  # between a rule and what stands below it


class CutTable(Struct, frozen=True):
    """The table of a batch's cuts, as it is set on a page."""

    batch: Batch
    page: Page
    columns: tuple[tuple[Column, float], ...]  # each with its place
    boxes: float  # where they begin; 0 where they stand below the rest

    def rows(self, title: Block) -> Iterator[Row]:
        """Yield a spool's block; where its cuts take more than a page, several that name it."""
        heads = self._heads()
        over, at = stacked([title, heads]), 0
        again, room = None, self.page.height - over.height
        for pull in self.batch.pulls:
            for block in self._blocks(pull, at, room):
                yield Row(stacked([over, block]), again)
                over, again = Block((), 0.0), heads
            at += len(pull.cuts)

    def _heads(self) -> Block:
        items = (item for head, x in self.columns for item in head.head_at(x, DROP * _HEADS))
        return Block(tuple(items), 1.3 * _HEADS)

    def _blocks(self, pull: Pull, first: int, room: float) -> Iterator[Block]:
        """Yield a pull's blocks under a rule each; `first` is the place of its first cut."""
        page = self.page
        name, *says = _says(pull, self.batch, page.wording)
        told = led(name, "; ".join(says), page.scale, page.width)
        over = stacked([told, *_runs_out(pull, page)])
        rows = [self._row(cut, place) for place, cut in enumerate(pull.cuts, start=first)]
        for part in filled(rows, 0.0, room - over.height - 2 * _ABOVE) or [[]]:
            block = stacked([over, *part])
            yield stacked([rule(page.width, 0.5, _ABOVE), block, Block((), _ABOVE)])
            over = led(page.wording.say("continued", name=name), "", page.scale, page.width)

    def _row(self, cut: Cut, place: int) -> Block:
        """Set a cut's cells, whose piece it is where that is not clear, and a box for each."""
        page, pitch = self.page, _PITCH * CUT
        cells = (item for each, x in self.columns for item in each.cell_at(place, x, pitch))
        items: list[Item] = [*cells]
        left, height = self.columns[1][1], pitch
        if len(self.batch.orders) > 1:
            room = (self.boxes or page.width) - left - _GAP
            whose = small_lines([cut.leader.recipe.name], page.scale, room)
            items += shifted(whose.items, left, height)
            height += whose.height
        return ticked(Block(tuple(items), height), cut, page, self.boxes or -left, pitch)


def cut_table(batch: Batch, page: Page) -> CutTable:
    """Return the table; raises `TooWide` for paper that is too narrow for its columns."""
    cuts = [cut for pull in batch.pulls for cut in pull.cuts]
    columns = tuple(_columns(cuts, page)) if cuts else ()
    least = sum(each.width + _GAP for each in columns)
    if least > page.width:
        raise TooWide(page.wording.say("cutting"), page.width, least)
    wanted = max(boxes_width(order.count, order.numbers, page.scale) for order in batch.orders)
    boxes = max(least, page.width - min(wanted, _MOST * page.width))
    is_beside = page.width - boxes >= min(wanted, _LEAST * page.width)
    free = (boxes if is_beside else page.width) - least
    gap = min(_GAP + free / max(len(columns), 1), _WIDEST)
    starts = accumulate((each.width + gap for each in columns), initial=0.0)
    return CutTable(
        batch, page, tuple(zip(columns, starts, strict=False)), boxes if is_beside else 0.0
    )


def _columns(cuts: Sequence[Cut], page: Page) -> Iterator[Column]:
    heads = replace(page.scale, factor=page.scale.factor * _HEADS / page.scale.small)
    body, small, wording = page.scale.body, page.scale.small, page.wording
    units = dict.fromkeys(cut.leader.unit for cut in cuts)
    unit = " / ".join(units)

    def with_unit(number: str, cut: Cut) -> str:
        return f"{number} {cut.leader.unit}" if number and len(units) > 1 else number

    def cells(of: Callable[[Told, Cut], str]) -> list[str]:
        return [with_unit(of(Told(cut.leader, wording), cut), cut) for cut in cuts]

    def cut_number(told: Told, cut: Cut) -> str:
        return wording.number(length_number(cut.piece.cut_mm, told.leader.unit))

    yield column("", [str(cut.piece.place) for cut in cuts], heads, body, bold=True)
    yield column(wording.say("cut", unit=unit), cells(cut_number), heads, CUT, bold=True)
    if any(cut.leader.second_unit for cut in cuts):
        again = [_second(cut, wording) for cut in cuts]
        yield column(*quantities("", again), heads, small)
    finished = cells(lambda told, cut: told.span_number(cut.piece.finished))
    yield column(wording.say("finished", unit=unit), finished, heads, small)
    laps = cells(lambda told, cut: told.lap_numbers()[cut.piece.place])
    yield column(wording.say("lap_next", unit=unit), laps, heads, small)


def _second(cut: Cut, wording: Wording) -> str:
    """Return the length in a person's second unit, if there is one."""
    second = cut.leader.second_unit
    return wording.number(length(cut.piece.cut_mm, second)) if second else ""


def _says(pull: Pull, batch: Batch, wording: Wording) -> Iterator[str]:
    """Yield what the line is called, and what is drawn of it and stays."""
    leader = (pull.cuts[0] if pull.cuts else batch.orders[0]).leader
    told, spool = Told(leader, wording), pull.spool
    if spool is None:
        yield told.thickness(pull.cuts[0].piece)
    else:
        yield spool_name(spool.label, spool.lot, wording)
        yield told.kind(told.diameter(spool.diameter), pull.material)
    draws = wording.say("draws", amount=wording.number(line_length(pull.mm, leader.unit)))
    yield draws
    if pull.left_mm is not None:
        left = wording.number(line_length(pull.left_mm, leader.unit))
        yield wording.say("stays", amount=left)


def _runs_out(pull: Pull, page: Page) -> list[Block]:
    """Set of which leader it runs out, if it does."""
    if pull.runs_out_at is None:
        return []
    number, name = pull.runs_out_at.number, pull.runs_out_at.order.leader.recipe.name
    words = page.wording.say("runs_out", leader=number, name=name)
    return [text_block(words, page.scale.bold, page.scale.small, page.width)]
