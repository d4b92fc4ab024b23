"""A batch in; what it takes of each spool, and what is to buy for it, in words of one language."""

from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import length, line_length, line_to_buy, thickness
from tagend.cards.batches.batch import Batch, Cut, LeaderAt, Pull
from tagend.cards.batches.whole_leaders import WholeLeaders
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.shown import shown_diameter
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told
from tagend.cards.words.shopping import ready_made, shortage_line


class CutTold(Struct, frozen=True, kw_only=True):
    """Equal pieces of one section."""

    count: int
    length: str  # of each
    recipe: str
    section: int


class PullTold(Struct, frozen=True, kw_only=True):
    """What a batch takes from one spool, or from one kind of line where there is no rack."""

    spool: str | None
    lot: str | None
    line: str
    drawn: str
    left: str | None  # on the spool after it
    cuts: tuple[CutTold, ...]
    runs_out_at: LeaderAt | None


class BatchTold(Struct, frozen=True):
    """A batch in words."""

    pulls: tuple[PullTold, ...]
    to_buy: tuple[str, ...]
    spare: str | None  # that another way of cutting might save of what is to buy
    ready_made: tuple[str, ...]


def batch_told(batch: Batch, wording: Wording) -> BatchTold:
    """Return a batch as it is told, with lengths in its first leader's unit."""
    first = batch.orders[0].leader
    return BatchTold(
        pulls=tuple(_pull(pull, first, wording) for pull in batch.pulls),
        to_buy=tuple(shortage_line(lack, wording) for lack in batch.shortages),
        spare=_spare(batch.spare_mm, first, wording),
        ready_made=tuple(_ready_made(batch, wording)),
    )


def lacking(leader: Leader, most: WholeLeaders, wording: Wording) -> Sequence[str]:
    """Return the kinds of line that there is too little of for one more leader."""
    kinds = (
        wording.say(
            "strand",
            diameter=wording.number(thickness(line.diameter_mm, leader.unit)),
            material=wording.material(line.material),
        )
        for line in most.lacking
    )
    return list(dict.fromkeys(kinds))


def _pull(pull: Pull, first: Leader, wording: Wording) -> PullTold:
    def line(mm: Fraction) -> str:
        return wording.number(line_length(mm, first.unit))

    spool, left_mm = pull.spool, pull.left_mm
    thick = thickness(pull.diameter_mm, first.unit)
    if spool is not None:
        thick = shown_diameter(spool.diameter, first)
    return PullTold(
        spool=spool.label if spool else None,
        lot=spool.lot if spool else None,
        line=f"{wording.number(thick)} {wording.material(pull.material)}",
        drawn=line(pull.mm),
        left=None if left_mm is None else line(left_mm),
        cuts=tuple(_cut(cut, wording) for cut in pull.cuts),
        runs_out_at=pull.runs_out_at,
    )


def _cut(cut: Cut, wording: Wording) -> CutTold:
    return CutTold(
        count=cut.count,
        length=wording.number(length(cut.piece.cut_mm, cut.leader.unit)),
        recipe=cut.leader.recipe.name,
        section=cut.piece.place,
    )


def _spare(mm: Fraction, first: Leader, wording: Wording) -> str | None:
    # mm: less shows on no tape
    return wording.number(line_to_buy(mm, first.unit)) if mm >= 1 else None


def _ready_made(batch: Batch, wording: Wording) -> Iterator[str]:
    for order in batch.orders:
        for line in ready_made(Told(order.leader, wording), order.count):
            yield f"{line}: {order.leader.recipe.name}"
