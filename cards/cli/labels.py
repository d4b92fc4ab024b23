"""`tagend labels`: wallet labels on label sheets, as PDF."""

from dataclasses import replace
from datetime import date, datetime
from typing import Literal

import click

from tagend.cards.cli.disk import write_whole
from tagend.cards.cli.files import (
    load_paper_shop,
    load_rack,
    output_option,
    rack_option,
    recipes_argument,
    shop_option,
)
from tagend.cards.cli.variant_options import load_chosen, variant_options
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import practice_of, wording_of


@click.command("labels")
@recipes_argument
@output_option
@click.option("--stock", metavar="STOCK", help="The label sheet; see `tagend stock`.")
@click.option("--count", type=click.IntRange(1, 10_000), default=1, help="Labels of each recipe.")
@click.option("--start", type=click.IntRange(1), default=1, help="First free label of the sheet.")
@click.option("--skip", type=click.IntRange(1), multiple=True, help="A spoiled label; repeatable.")
@click.option("--tied", type=click.DateTime(["%Y-%m-%d"]), help="The day they were tied.")
@click.option("--numbered", is_flag=True, help="Number the labels of each recipe, as 3 of 12.")
@click.option(
    "--first", type=click.Choice(["butt", "fly"]), help="The end that leaves the wallet first."
)
@click.option("--test-box", is_flag=True, help="A box to tick when the leader is pull-tested.")
@click.option(
    "--register", metavar="FILE.csv", help="Number them on from this table and add them to it."
)
@rack_option
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    output: str,
    stock: str | None,
    count: int,
    start: int,
    skip: tuple[int, ...],
    tied: datetime | None,
    numbered: bool,
    first: Literal["butt", "fly"] | None,
    test_box: bool,
    register: str | None,
    rack: str | None,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """Print wallet labels for each RECIPE, its code on each; `-` reads standard input."""
    if register is None and rack is not None:
        raise _usage("--rack goes with --register, for the lots.")
    if register is not None and numbered:
        raise _usage("Give --numbered or --register, not both.")
    from tagend.cards.faces.label import LabelNote
    from tagend.cards.printing.pages import LabelWishes, labels_pdf

    wants = load_paper_shop(shop)
    practice = practice_of(wants)
    day: date | None = tied.date() if tied else None
    recipes = load_chosen(names, practice, variant, variants)
    dated = [replace(recipe, tied=day or recipe.tied) for recipe in recipes]
    worksheets = [worksheet(recipe, practice) for recipe in dated]
    note = LabelNote(first_out=first, test_box=test_box)

    def pdf(numbers: tuple[tuple[str, ...], ...]) -> bytes:
        wishes = LabelWishes(stock, count, start, skip, numbers, note)
        return labels_pdf(worksheets, practice, wants, wishes)

    if register is None:
        say = wording_of(wants).say
        places = tuple(say("one_of", number=n, count=count) for n in range(1, count + 1))
        write_whole(output, pdf((places,) * len(worksheets) if numbered else ()))
    else:
        from tagend.cards.cli.label_numbers import entries_of, write_registered

        leaders = [sheet.leader for sheet in worksheets]
        entries = entries_of(leaders, count, load_rack(rack, practice), practice)
        write_registered(output, pdf, register, entries, wording_of(wants))
    click.echo(f"wrote {output}; print it at 100 %, not fitted to the page", err=True)


def _usage(message: str) -> click.UsageError:
    return click.UsageError(message, click.get_current_context())
