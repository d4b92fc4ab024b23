"""`tagend cuts`: the cut list, as a table or as JSON."""

from datetime import datetime

import click

from tagend.cards.batches.batch import COUNT_MOST
from tagend.cards.cli.files import load_practice, rack_option, recipes_argument, shop_option
from tagend.cards.cli.variant_options import load_chosen, variant_options
from tagend.cards.cli.worksheet_lines import cut_lines
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.layouts.base.faults import refused


@click.command("cuts")
@recipes_argument
@click.option("--count", type=click.IntRange(1, COUNT_MOST), help="Leaders of each recipe to cut.")
@click.option("--mix", metavar="NUMBERS", help="Instead, of each RECIPE in their order: 12,6.")
@rack_option
@click.option("--draw", is_flag=True, help="Take what is cut off the rack file.")
@click.option("--record", metavar="FILE.csv", help="Add what is drawn to this table.")
@click.option("--on", type=click.DateTime(["%Y-%m-%d"]), help="Its day in the table; else today.")
@click.option("--explain", is_flag=True, help="Show the sum behind each cut.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    count: int | None,
    mix: str | None,
    rack: str | None,
    draw: bool,
    record: str | None,
    on: datetime | None,
    explain: bool,
    as_json: bool,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """List what to cut for each RECIPE and how to join it; `-` reads standard input.

    With a rack and no number it tells how many whole leaders of each the rack makes.
    """
    if draw and (rack is None or (count is None) == (mix is None) or as_json):
        raise _usage("--draw goes with --rack and either --count or --mix, and without --json.")
    if record is not None and not draw:
        raise _usage("--record goes with --draw.")
    practice = load_practice(shop)
    recipes = load_chosen(names, practice, variant, variants)
    sheets = [worksheet(recipe, practice) for recipe in recipes]
    numbers = _numbers(count, mix, len(sheets))
    if as_json:
        from tagend.cards.leader.worksheet_json import json_line

        lines = (
            json_line(*pair) for pair in zip(sheets, numbers or [1] * len(sheets), strict=True)
        )
        click.echo("\n".join(lines))
        return
    blocks = ["\n".join(_lines(sheet, explain)) for sheet in sheets]
    if numbers is not None or rack is not None:
        from tagend.cards.cli.from_rack import Drawing, rack_lines

        drawing = Drawing(record, on.date() if on else None) if draw else None
        leaders = [sheet.leader for sheet in sheets]
        blocks.append("\n".join(rack_lines(leaders, numbers, rack, practice, drawing)))
    click.echo("\n\n".join(blocks))


def _usage(message: str) -> click.UsageError:
    return click.UsageError(message, click.get_current_context())


def _numbers(count: int | None, mix: str | None, recipes: int) -> list[int] | None:
    """Return how many of each recipe are wanted; None where no number is given."""
    if mix is None:
        return None if count is None else [count] * recipes
    if count is not None:
        raise _usage("Give --count or --mix, not both.")
    numbers = [int(word) if word.strip().isdecimal() else 0 for word in mix.split(",")]
    if len(numbers) != recipes or not all(1 <= number <= COUNT_MOST for number in numbers):
        example = ",".join(["12", "6", "4"][:recipes]) + (",…" if recipes > 3 else "")
        raise refused(
            f"{mix!r} is not a number for each of {recipes} recipes",
            f"write numbers from 1 to {COUNT_MOST}, such as {example}",
            "mix",
        )
    return numbers


def _lines(sheet: Worksheet, explain: bool) -> list[str]:
    if not explain:
        return cut_lines(sheet)
    from tagend.cards.cli.explained import explained_lines

    return [*cut_lines(sheet), *explained_lines(sheet.leader)]
