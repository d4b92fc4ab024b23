"""What is wrong with leaders, told where they are used: worksheets in, lines on standard error."""

from collections.abc import Sequence

import click

from tagend.cards.cli.spoken import spoken, told_of
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.words.heed_words import heed_lines, named
from tagend.layouts.base.faults import refused

anyway_option = click.option(
    "--anyway", is_flag=True, help="Even where `tagend check` finds an error."
)


def heed(sheets: Sequence[Worksheet], *, anyway: bool) -> None:
    """Tell what `check` warns of, and raise `Refused` for an error, unless told to go on anyway."""
    tell(sheets)
    wrong = [sheet.leader.recipe.name for sheet in sheets if sheet.is_wrong]
    if wrong and not anyway:
        found = named(wrong, spoken())
        raise refused("`tagend check` finds an error", "mend it, or say --anyway", found)


def tell(sheets: Sequence[Worksheet]) -> None:
    """Say what `check` warns of on standard error, in its words; its notes stay with it."""
    for line in heed_lines(map(told_of, sheets), spoken()):
        click.echo(line, err=True)
