"""`tagend labels`: wallet labels on label sheets, as PDF; their numbers from a register."""

import itertools
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

import click

from tagend.cards.cli.files import load_rack, naming
from tagend.cards.cli.options import (
    count_option,
    day_option,
    rack_option,
    shop_option,
    variant_options,
)
from tagend.cards.cli.print_command import Printing, print_command
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import refused

LabelNumbers = tuple[tuple[str, ...], ...]  # of the labels of each leader


@print_command("labels")
@click.option("--stock", metavar="STOCK", help="The label sheet; see `tagend stock`.")
@count_option(default=1, help="Labels of each recipe.")
@click.option("--start", type=click.IntRange(1), default=1, help="First free label of the sheet.")
@click.option("--skip", type=click.IntRange(1), multiple=True, help="A spoiled label; repeatable.")
@day_option("--tied", help="The day they were tied.")
@click.option("--numbered", is_flag=True, help="Number the labels of each recipe, as 3 of 12.")
@click.option(
    "--first",
    "first_out",
    type=click.Choice(["butt", "fly"]),
    help="The end that leaves the wallet first.",
)
@click.option("--test-box", is_flag=True, help="A box to tick when the leader is pull-tested.")
@click.option(
    "--register", metavar="FILE.csv", help="Number them on from this table and add them to it."
)
@rack_option
@variant_options
@shop_option
def command(
    printing: Printing,
    count: int,
    tied: date | None,
    numbered: bool,
    register: str | None,
    rack: str | None,
    **wishes: Any,  # stock, start, skip and the like, named as in `LabelWishes`
) -> bytes | None:
    """Print wallet labels for each RECIPE, its code on each; `-` reads standard input."""
    if register is None and rack is not None:
        raise click.UsageError("--rack goes with --register, for the lots.")
    if register is not None and numbered:
        raise click.UsageError("Give --numbered or --register, not both.")
    from tagend.cards.printing.labels import LabelWishes, labels_pdf

    job = printing.job
    if tied is not None:
        recipes = tuple(replace(recipe, tied=tied) for recipe in printing.recipes)
        printing = replace(printing, recipes=recipes)
    worksheets = printing.worksheets()

    def pdf(numbers: LabelNumbers) -> bytes:
        return labels_pdf(job, worksheets, LabelWishes(count=count, numbers=numbers, **wishes))

    if register is not None:
        _write_registered(printing, worksheets, count, register, rack, pdf)
        return None
    if not numbered:
        return pdf(())
    say = job.wording.say
    places = tuple(say("one_of", number=n, count=count) for n in range(1, count + 1))
    return pdf((places,) * len(worksheets))


def _write_registered(
    printing: Printing,
    worksheets: Sequence[Worksheet],
    count: int,
    register: str,
    rack: str | None,
    pdf: Callable[[LabelNumbers], bytes],
) -> None:
    """Write labels with the next numbers of a register, and enter them in it: both or neither.

    No other run comes between the reading and the writing of the register.
    """
    from tagend.cards.book.register import entered, next_number, read_register, tied_leaders
    from tagend.cards.cli.disk import bytes_of, write_both
    from tagend.cards.cli.file_lock import alone
    from tagend.cards.cli.seal import sealed

    practice, say = printing.job.practice, printing.job.wording.say
    spools = load_rack(rack, practice)
    tied = [(sheet.leader, _day(sheet.leader.recipe)) for sheet in worksheets]
    with alone(register):
        before = bytes_of(register)
        with naming(register):
            first = next_number(read_register(before or b""))
            rows = [
                list(tied_leaders(leader, day, range(start, start + count), spools, practice))
                for start, (leader, day) in zip(itertools.count(first, count), tied, strict=False)
            ]
            after = entered(before, itertools.chain.from_iterable(rows))
        numbers = tuple(tuple(say("number", number=one.number) for one in row) for row in rows)
        write_both(printing.output, sealed(pdf(numbers)), register, after)
    last = first + count * len(rows) - 1
    click.echo(f"entered in {register}: no. {first} to no. {last}", err=True)


def _day(recipe: Recipe) -> date:
    if recipe.tied is None:
        raise refused("no day is given", "say when it was tied, with --tied", recipe.name)
    return recipe.tied
