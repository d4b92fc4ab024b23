"""What a rack makes of leaders, as lines for a terminal: a batch spool by spool, whole leaders."""

from collections.abc import Iterator, Sequence

from tagend.cards.base.plural import counted
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.rack_file import Rack
from tagend.cards.words.batch_words import PullTold, batch_told, lacking
from tagend.cards.words.language import ENGLISH


def rack_lines(
    leaders: Sequence[Leader], numbers: Sequence[int] | None, rack: Rack | None
) -> Iterator[str]:
    """Yield what to cut from where for so many leaders, or how many whole ones a rack makes."""
    if rack is not None and numbers is None:
        yield from _whole_lines(leaders, rack)
        return
    yield from rack_batch_lines(cut_batch(list(map(Order, leaders, numbers or ())), rack), rack)


def rack_batch_lines(batch: Batch, rack: Rack | None) -> Iterator[str]:
    """Yield what to cut from where, and what a rack makes of the batch where it lacks line."""
    if rack is not None and batch.shortages:
        yield _mix_line(batch, rack)
    yield from batch_lines(batch)


def batch_lines(batch: Batch) -> Iterator[str]:
    """Yield what to cut from each spool, and what to buy."""
    told = batch_told(batch, ENGLISH)
    yield f"{counted(sum(order.count for order in batch.orders), 'leader')}, spool by spool"
    for pull in told.pulls:
        yield from _pull_lines(pull)
    for line in told.to_buy:
        yield f"  to buy: {line}"
    if told.spare:
        yield f"    cut in another way, at most {told.spare} less is to buy"
    for line in told.ready_made:
        yield f"  to buy: {line}"


def _pull_lines(pull: PullTold) -> Iterator[str]:
    name = pull.line
    if pull.spool is not None:
        name = f"{pull.spool}: {name}, {pull.left} left after it"
    yield f"  {name}; draws {pull.drawn}"
    for cut in pull.cuts:
        yield f"      {cut.count} × {cut.length}  {cut.recipe}, section {cut.section}"
    if pull.runs_out_at is not None:
        number, name = pull.runs_out_at.number, pull.runs_out_at.order.leader.recipe.name
        yield f"      runs out at leader {number} of {name}"


def _whole_lines(leaders: Sequence[Leader], rack: Rack) -> Iterator[str]:
    """Yield how many of each leader the rack makes by itself, and what is too short for more."""
    from tagend.cards.batches.whole_leaders import whole_leaders

    yield "whole leaders from this rack" + (", each by itself" if len(leaders) > 1 else "")
    for leader, most in zip(leaders, whole_leaders(leaders, rack), strict=True):
        if most is None:
            yield f"  {leader.recipe.name}: any number, it takes no line"
            continue
        too_little = " and ".join(lacking(leader, most, ENGLISH))
        number = f"{most.number}{_perhaps(most.number, most.at_most)}"
        yield f"  {leader.recipe.name}: {number}; for more there is too little {too_little}"


def _mix_line(batch: Batch, rack: Rack) -> str:
    """Return how many of a batch the rack makes, where it does not make all."""
    from tagend.cards.batches.best_mix import best_mix

    mix = best_mix(batch.orders, rack)
    names = (order.leader.recipe.name for order in batch.orders)
    each = ", ".join(f"{number} {name}" for number, name in zip(mix.numbers, names, strict=True))
    number = sum(mix.numbers)
    return f"this rack makes {number}{_perhaps(number, mix.at_most)} of them whole: {each}"


def _perhaps(number: int, at_most: int) -> str:
    return f" (at most {at_most - number} more could be had)" if at_most > number else ""
