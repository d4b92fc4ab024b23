"""A batch, spool by spool, as lines for a terminal."""

from collections.abc import Iterator

from tagend.cards.base.shown_lengths import ShownUnit, inches, length, line_length, line_to_buy
from tagend.cards.batches.batch import Batch, Cut, Pull
from tagend.cards.leader.leader import Leader
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.cards.words.shopping import shortage_line


def batch_lines(batch: Batch) -> list[str]:
    """Return what to cut from each spool, and what to buy."""
    unit = batch.orders[0].leader.unit
    count = sum(order.count for order in batch.orders)
    lines = [f"{count} leader{'s' if count > 1 else ''}, spool by spool"]
    for pull in batch.pulls:
        lines += _pull_lines(pull, unit)
    lines += [f"  to buy: {shortage_line(shortage, ENGLISH)}" for shortage in batch.shortages]
    if batch.spare_mm >= 1:  # mm: less shows on no tape
        spare = line_to_buy(batch.spare_mm, unit)
        lines.append(f"    cut in another way, at most {spare} less is to buy")
    return [*lines, *_bought_lines(batch)]


def _pull_lines(pull: Pull, unit: ShownUnit) -> Iterator[str]:
    name = f"{inches(pull.diameter_mm)} {pull.material}"
    if pull.spool is not None and pull.left_mm is not None:
        name = f"{pull.spool.label}: {pull.spool.diameter.plain} {pull.material}"
        name += f", {line_length(pull.left_mm, unit)} left after it"
    yield f"  {name}; draws {line_length(pull.mm, unit)}"
    yield from map(_cut_line, pull.cuts)
    if pull.runs_out_at is not None:
        yield f"      runs out at leader {pull.runs_out_at}"


def _bought_lines(batch: Batch) -> Iterator[str]:
    for order in batch.orders:
        for piece in order.leader.pieces:
            if piece.section.bought:
                yield (
                    f"  to buy ready made: {order.count} × {piece.section.length.plain}, "
                    f"{Told(order.leader, ENGLISH).thickness(piece)} {piece.part} "
                    f"for {order.leader.recipe.name}"
                )


def _cut_line(cut: Cut) -> str:
    leader: Leader = cut.leader
    return (
        f"      {cut.count} × {length(cut.piece.cut_mm, leader.unit)}"
        f"  {leader.recipe.name}, section {cut.piece.place}"
    )
