"""What a rack makes of leaders, as lines for a terminal; and what is cut drawn from its file."""

from collections.abc import Iterator, Sequence
from contextlib import nullcontext
from datetime import date
from typing import NamedTuple

import click

from tagend.cards.base.shown_lengths import inches
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.cli.batch_lines import batch_lines
from tagend.cards.cli.disk import read_bytes, write_whole
from tagend.cards.cli.files import naming
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack


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
    orders = list(map(Order, leaders, numbers or ()))
    if name is None:
        return batch_lines(cut_batch(orders, None))
    from tagend.cards.cli.file_lock import alone
    from tagend.cards.practice.rack_file import read_rack

    with alone(name) if drawing else nullcontext():
        data = read_bytes(name)
        with naming(name):
            rack = read_rack(data, practice)
        if numbers is None:
            return list(_whole_lines(leaders, rack))
        whole = cut_batch(orders, rack)
        if drawing is not None:
            _draw(name, data, rack, whole, drawing)
    return [*_mix_lines(whole, rack), *batch_lines(whole)]


def _whole_lines(leaders: Sequence[Leader], rack: Rack) -> Iterator[str]:
    """Yield how many of each leader the rack makes by itself, and what is too short for more."""
    from tagend.cards.batches.whole_leaders import whole_leaders

    yield "whole leaders from this rack" + (", each by itself" if len(leaders) > 1 else "")
    for leader, most in zip(leaders, whole_leaders(leaders, rack), strict=True):
        if most is None:
            yield f"  {leader.recipe.name}: any number, it takes no line"
            continue
        lines = (f"{inches(line.diameter_mm)} {line.material}" for line in most.lacking)
        too_little = " and ".join(dict.fromkeys(lines))
        number = f"{most.number}{_perhaps(most.number, most.at_most)}"
        yield f"  {leader.recipe.name}: {number}; for more there is too little {too_little}"


def _mix_lines(whole: Batch, rack: Rack) -> Iterator[str]:
    """Yield how many of a batch the rack makes, where it does not make all."""
    from tagend.cards.batches.best_mix import best_mix

    if not whole.shortages:
        return
    mix = best_mix(whole.orders, rack)
    names = (order.leader.recipe.name for order in whole.orders)
    each = ", ".join(f"{number} {name}" for number, name in zip(mix.numbers, names, strict=True))
    number = sum(mix.numbers)
    yield f"this rack makes {number}{_perhaps(number, mix.at_most)} of them whole: {each}"


def _perhaps(number: int, at_most: int) -> str:
    return f" (at most {at_most - number} more could be had)" if at_most > number else ""


def _draw(name: str, data: bytes, rack: Rack, whole: Batch, drawing: Drawing) -> None:
    from tagend.cards.batches.rack_drawing import RECORD, rack_after, record_rows
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
