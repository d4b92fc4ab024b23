"""What a rack makes of leaders, as lines for a terminal; and what is cut drawn from its file."""

from collections.abc import Iterator, Sequence
from contextlib import nullcontext
from datetime import date
from typing import NamedTuple

import click

from tagend.cards.batches.batch import Batch, Order, batch
from tagend.cards.cli.batch_lines import batch_lines
from tagend.cards.cli.files import naming, read_bytes, write_whole
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.suitability import inches
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack

MIX_MOST = 12  # leaders whose best mix is worked out: of more it may take minutes


class Drawing(NamedTuple):
    """That what is cut is to be taken off the rack's file."""

    record: str | None  # the table to add it to
    day: date | None  # None for today


def rack_lines(
    leaders: Sequence[Leader],
    numbers: Sequence[int] | None,
    name: str | None,
    practice: Practice,
    drawing: Drawing | None,
) -> list[str]:
    """Return what to cut from where for so many leaders, or how many whole ones a rack makes."""
    if name is None:
        orders = map(Order, leaders, numbers or ())
        return batch_lines(batch(list(orders), None))
    from tagend.cards.batches.cutting import best_batch
    from tagend.cards.cli.file_lock import alone
    from tagend.cards.practice.rack_file import read_rack

    with alone(name) if drawing else nullcontext():
        data = read_bytes(name)
        with naming(name):
            rack = read_rack(data, practice)
        if numbers is None:
            return list(_whole_lines(leaders, rack))
        whole = best_batch(list(map(Order, leaders, numbers)), rack)
        if drawing is not None:
            _draw(name, data, rack, whole, drawing)
    return [*_mix_lines(whole, rack), *batch_lines(whole)]


def _whole_lines(leaders: Sequence[Leader], rack: Rack) -> Iterator[str]:
    """Yield how many of each leader the rack makes by itself, and what is too short for more."""
    from tagend.cards.batches.kinds import kinds_of
    from tagend.cards.batches.whole import most_of, short_kinds

    kinds = kinds_of(leaders, rack)
    yield "whole leaders from this rack" + (", each by itself" if len(leaders) > 1 else "")
    for place, leader in enumerate(leaders):
        most = most_of(kinds, place, (0,) * len(leaders))
        if most is None:
            yield f"  {leader.recipe.name}: any number, it takes no line"
            continue
        one_more = tuple(most + 1 if at == place else 0 for at in range(len(leaders)))
        lines = (
            f"{inches(size.line.diameter_mm)} {size.line.material}"
            for kind in short_kinds(kinds, one_more)
            for size in kind.sizes
            if any(member.leader == place for member in size.members)
        )
        too_little = " and ".join(dict.fromkeys(lines))
        yield f"  {leader.recipe.name}: {most}; for more there is too little {too_little}"


def _mix_lines(whole: Batch, rack: Rack) -> Iterator[str]:
    """Yield how many of a batch the rack makes, where it does not make all."""
    from tagend.cards.batches.kinds import kinds_of
    from tagend.cards.batches.mix import best_mix

    if not whole.shortages or len(whole.orders) > MIX_MOST:
        return
    leaders = [order.leader for order in whole.orders]
    mix = best_mix(kinds_of(leaders, rack), tuple(order.count for order in whole.orders))
    each = (f"{number} {leader.recipe.name}" for number, leader in zip(mix, leaders, strict=True))
    yield f"this rack makes {sum(mix)} of them whole: {', '.join(each)}"


def _draw(name: str, data: bytes, rack: Rack, whole: Batch, drawing: Drawing) -> None:
    from tagend.cards.batches.drawing import RECORD, rack_after, record_rows
    from tagend.cards.cli.clock import today
    from tagend.cards.cli.disk import bytes_of, write_both
    from tagend.cards.tables.growing_table import with_rows

    with naming(name):
        after = rack_after(data, rack, whole)
    if drawing.record is None:
        write_whole(name, after)
    else:
        day = drawing.day or today()
        with naming(drawing.record):
            rows = [dict(zip(RECORD, row, strict=True)) for row in record_rows(whole, day)]
            log = with_rows(bytes_of(drawing.record), RECORD, rows)
        write_both(name, after, drawing.record, log)
    click.echo(f"drawn from {name}", err=True)
