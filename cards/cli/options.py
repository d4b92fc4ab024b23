"""The options that several commands share; words of the command line in, checked values out."""

from collections.abc import Callable
from datetime import date
from functools import partial
from typing import TypeVar

import click

from tagend.cards.batches import COUNT_MOST
from tagend.cards.cli.completion import files, stock_names
from tagend.cards.cli.spoken import note_shop_file
from tagend.layouts.base.faults import Refused, under

F = TypeVar("F", bound=Callable[..., object])
T = TypeVar("T")

recipes_argument = click.argument(
    "names", metavar="RECIPE...", nargs=-1, required=True, shell_complete=files
)
replace_option = click.option(
    "--replace",
    is_flag=True,
    help="Replace a file that tagend did not make, or that was changed since.",
)
paper_option = click.option(
    "--paper",
    metavar="PAPER",
    shell_complete=stock_names("papers"),
    help="Letter, A4, …; see `tagend stock`.",
)
rack_option = click.option(
    "--rack", metavar="FILE", shell_complete=files, help="Your rack file: the spools you have."
)
shop_option = click.option(
    "--shop",
    metavar="FILE",
    envvar="TAGEND_SHOP",
    shell_complete=files,
    is_eager=True,  # its language says how days are written
    callback=note_shop_file,
    help="Your shop file: imprint, units, paper, printer, own knots and stock.",
)
count_option = partial(click.option, "--count", type=click.IntRange(1, COUNT_MOST))


def _day(context: click.Context, option: click.Parameter, text: str | None) -> date | None:
    """Read a day as it is written in the language of the shop."""
    if text is None:
        return None
    from tagend.cards.base.days import day_first_in, read_day
    from tagend.cards.cli.files import load_shop

    with under(option.name or ""):
        language = load_shop(context.params.get("shop")).language
        return read_day(text, day_first=day_first_in(language))


day_option = partial(click.option, metavar="DAY", callback=_day)


def variant_options(command: F) -> F:
    """Give a command its --variant and --variants options."""
    one = click.option("--variant", metavar="NAME", help="This variant of each recipe instead.")
    every = click.option("--variants", is_flag=True, help="Each recipe and all its variants.")
    return one(every(command))


def label_options(command: F) -> F:
    """Give a command what is asked of labels: their sheet, and what stands on each."""
    for option in (
        click.option("--no-code", "code", is_flag=True, default=True, flag_value=False,
                     help="Words alone on labels."),
        click.option("--test-box", is_flag=True,
                     help="A box to tick when the leader is pull-tested."),
        click.option("--first", "first_out", type=click.Choice(["butt", "fly"]),
                     help="The end that leaves the wallet first."),
        click.option("--skip", type=click.IntRange(1), multiple=True,
                     help="A spoiled label; repeatable."),
        click.option("--start", type=click.IntRange(1), default=1,
                     help="First free label of the sheet."),
        click.option("--stock", metavar="STOCK", shell_complete=stock_names("labels"),
                     help="The label sheet; see `tagend stock`."),
    ):  # fmt: skip
        command = option(command)
    return command


def reading(read: Callable[[str], T]) -> Callable[[click.Context, click.Parameter, str], T | None]:
    """Return the callback of an option whose words are read so; its faults name the option."""

    def callback(_context: click.Context, option: click.Parameter, text: str | None) -> T | None:
        with under((option.name or "").replace("_", " ")):
            return None if text is None else read(text)

    return callback


def _points(_context: click.Context, _option: click.Parameter, text: str) -> float:
    from tagend.layouts.paper.lengths import parse_length

    try:
        return parse_length(text)
    except Refused as error:
        raise click.BadParameter(f"{error}.") from None


# A length on paper, in points.
paper_length_option = partial(click.option, metavar="LENGTH", callback=_points)
