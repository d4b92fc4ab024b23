"""Labels whose numbers come from a register: a PDF and its rows written, or neither."""

from collections.abc import Callable, Sequence
from datetime import date
from itertools import chain

import click

from tagend.cards.book.register import Tied, entered, next_number, read_register, tied_leaders
from tagend.cards.cli.disk import bytes_of, write_both
from tagend.cards.cli.file_lock import alone
from tagend.cards.cli.files import naming
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.words.language import Wording
from tagend.layouts.base.faults import refused

Numbers = tuple[tuple[str, ...], ...]  # of the labels of each leader


def write_registered(
    output: str,
    pdf: Callable[[Numbers], bytes],
    register: str,
    entries: Callable[[int], Sequence[Sequence[Tied]]],
    wording: Wording,
) -> None:
    """Write labels with the next numbers of a register, and enter them in it.

    `entries` gives those of each leader, from a first number on. No other run comes between the
    reading and the writing of the register.
    """
    with alone(register):
        before = bytes_of(register)
        with naming(register):
            rows = entries(next_number(read_register(before or b"")))
            after = entered(before, chain.from_iterable(rows))
        numbers = tuple(
            tuple(wording.say("number", number=tied.number) for tied in row) for row in rows
        )
        write_both(output, pdf(numbers), register, after)
    first, last = rows[0][0].number, rows[-1][-1].number
    click.echo(f"entered in {register}: no. {first} to no. {last}", err=True)


def entries_of(
    leaders: Sequence[Leader], count: int, rack: Rack | None, practice: Practice
) -> Callable[[int], list[list[Tied]]]:
    """Return what gives the entries of so many of each leader, from a first number on."""
    days = [_day(leader) for leader in leaders]

    def entries(first: int) -> list[list[Tied]]:
        starts = range(first, first + len(leaders) * count, count)
        return [
            list(tied_leaders(leader, day, range(start, start + count), rack, practice))
            for leader, day, start in zip(leaders, days, starts, strict=True)
        ]

    return entries


def _day(leader: Leader) -> date:
    if leader.recipe.tied is None:
        raise refused("no day is given", "say when it was tied, with --tied", leader.recipe.name)
    return leader.recipe.tied
