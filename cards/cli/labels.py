"""`tagend labels`: wallet labels on label sheets, as PDF."""

from datetime import date
from typing import TYPE_CHECKING, Any, Literal

import click
from msgspec.structs import replace

from tagend.cards.cli.options import (
    count_option,
    day_option,
    label_options,
    shop_option,
    variant_options,
)
from tagend.cards.cli.print_command import Printing, print_command

if TYPE_CHECKING:
    from tagend.cards.printing.job import Printed


@print_command("labels")
@count_option(default=1, help="Labels of each recipe.")
@day_option("--tied", help="The day they were tied.")
@click.option("--numbered", is_flag=True, help="Number the labels of each recipe, as 3 of 12.")
@label_options
@variant_options
@shop_option
def command(
    printing: Printing,
    count: int,
    tied: date | None,
    numbered: bool,
    first_out: Literal["butt", "fly"] | None,
    test_box: bool,
    **where: Any,  # stock, start, skip and code, named as in `LabelWishes`
) -> "Printed":
    """Print wallet labels for each RECIPE, its code on each; `-` reads standard input."""
    from tagend.cards.printing.labels import LabelNote, LabelWishes, labels_pdf, notes_for

    job = printing.job
    if tied is not None:
        recipes = tuple(replace(recipe, tied=tied) for recipe in printing.recipes)
        printing = replace(printing, recipes=recipes)
    worksheets = printing.worksheets()

    notes = notes_for(
        len(worksheets),
        count,
        LabelNote(first_out=first_out, test_box=test_box),
        job.wording,
        numbered=numbered,
    )
    return labels_pdf(job, worksheets, LabelWishes(notes=notes, **where))
