"""`tagend labels`: wallet labels on label sheets, as PDF."""

from dataclasses import replace
from datetime import datetime
from typing import Any

import click

from tagend.cards.cli.files import load_rack, rack_option, shop_option
from tagend.cards.cli.print_command import Printing, print_command
from tagend.cards.cli.variant_options import variant_options


@print_command("labels")
@click.option("--stock", metavar="STOCK", help="The label sheet; see `tagend stock`.")
@click.option("--count", type=click.IntRange(1, 10_000), default=1, help="Labels of each recipe.")
@click.option("--start", type=click.IntRange(1), default=1, help="First free label of the sheet.")
@click.option("--skip", type=click.IntRange(1), multiple=True, help="A spoiled label; repeatable.")
@click.option("--tied", type=click.DateTime(["%Y-%m-%d"]), help="The day they were tied.")
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
    tied: datetime | None,
    numbered: bool,
    register: str | None,
    rack: str | None,
    **wishes: Any,  # stock, start, skip and the like, named as in `LabelWishes`
) -> bytes | None:
    """Print wallet labels for each RECIPE, its code on each; `-` reads standard input."""
    if register is None and rack is not None:
        raise _usage("--rack goes with --register, for the lots.")
    if register is not None and numbered:
        raise _usage("Give --numbered or --register, not both.")
    from tagend.cards.printing.labels import LabelWishes, labels_pdf

    job = printing.job
    if tied is not None:
        day = tied.date()
        printing = replace(
            printing, recipes=tuple(replace(recipe, tied=day) for recipe in printing.recipes)
        )
    worksheets = printing.worksheets()

    def pdf(numbers: tuple[tuple[str, ...], ...]) -> bytes:
        return labels_pdf(job, worksheets, LabelWishes(count=count, numbers=numbers, **wishes))

    if register is None:
        say = job.wording.say
        places = tuple(say("one_of", number=n, count=count) for n in range(1, count + 1))
        return pdf((places,) * len(worksheets) if numbered else ())
    from tagend.cards.cli.label_numbers import entries_of, write_registered

    leaders = [worksheet.leader for worksheet in worksheets]
    entries = entries_of(leaders, count, load_rack(rack, job.practice), job.practice)
    write_registered(printing.output, pdf, register, entries, job.wording)
    return None


def _usage(message: str) -> click.UsageError:
    return click.UsageError(message, click.get_current_context())
