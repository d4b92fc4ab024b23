"""`tagend cuts`: the cut list, as a table or as JSON."""

import sys
from collections.abc import Iterable

import click

from tagend.cards.base.plural import counted
from tagend.cards.batches import COUNT_MOST
from tagend.cards.cli.files import load_chosen, load_practice, load_rack
from tagend.cards.cli.heed import tell
from tagend.cards.cli.options import (
    count_option,
    rack_option,
    recipes_argument,
    shop_option,
    variant_options,
)
from tagend.cards.cli.spoken import told_of
from tagend.cards.cli.worksheet_lines import cut_lines, cut_sum_lines
from tagend.cards.leader.worksheet import worksheet
from tagend.layouts.base.faults import refused


@click.command("cuts")
@recipes_argument
@count_option(help="Leaders of each recipe to cut.")
@click.option("--mix", metavar="NUMBERS", help="Instead, of each RECIPE in their order: 12,6.")
@rack_option
@click.option("--explain", is_flag=True, help="Show the sum behind each cut.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    count: int | None,
    mix: str | None,
    rack: str | None,
    explain: bool,
    as_json: bool,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """List what to cut for each RECIPE and how to join it; `-` reads standard input.

    With a rack and no number it tells how many whole leaders of each the rack makes. What `check`
    warns of goes to standard error. Nothing is drawn: `tagend book tie` does that.
    """
    practice = load_practice(shop)
    sheets = [
        worksheet(recipe, practice) for recipe in load_chosen(names, practice, variant, variants)
    ]
    numbers = _numbers(count, mix, len(sheets))
    if as_json:
        from tagend.cards.words.worksheet_json import json_line

        for sheet, number in zip(sheets, numbers or [1] * len(sheets), strict=True):
            click.echo(json_line(sheet, number))
        return
    tell(sheets)
    all_told = [told_of(sheet) for sheet in sheets]
    blocks: list[Iterable[str]] = [
        [
            *cut_lines(told, getattr(sys.stdout, "encoding", None)),
            *(cut_sum_lines(told) if explain else ()),
        ]
        for told in all_told
    ]
    if numbers is not None or rack is not None:
        from tagend.cards.cli.batch_lines import rack_lines

        blocks.append(
            rack_lines([told.leader for told in all_told], numbers, load_rack(rack, practice))
        )
    click.echo("\n\n".join("\n".join(lines) for lines in blocks))


def _numbers(count: int | None, mix: str | None, recipes: int) -> list[int] | None:
    """Return how many of each recipe are wanted; None where no number is given."""
    if mix is None:
        return None if count is None else [count] * recipes
    if count is not None:
        raise click.UsageError("Give --count or --mix, not both.")
    numbers = [int(word) if word.strip().isdecimal() else 0 for word in mix.split(",")]
    if len(numbers) != recipes or not all(1 <= number <= COUNT_MOST for number in numbers):
        example = ",".join(["12", "6", "4"][:recipes]) + (",…" if recipes > 3 else "")
        raise refused(
            f"{mix!r} is not a number for each of {counted(recipes, 'recipe')}",
            f"write numbers from 1 to {COUNT_MOST}, such as {example}",
            "mix",
        )
    return numbers
