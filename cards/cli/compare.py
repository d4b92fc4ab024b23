"""`tagend compare`: leaders side by side, on the terminal and as a page."""

from collections.abc import Iterator, Sequence

import click

from tagend.cards.cli.columns import in_columns
from tagend.cards.cli.files import load_chosen, load_job
from tagend.cards.cli.heed import anyway_option, heed
from tagend.cards.cli.options import (
    paper_option,
    recipes_argument,
    replace_option,
    shop_option,
    variant_options,
)
from tagend.cards.cli.output import check_output, is_svg, tell_written, write_output
from tagend.cards.cli.show import show_if_asked, show_option
from tagend.cards.cli.spoken import spoken
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import worksheet
from tagend.layouts.base.faults import refused

_LEAST, _MOST = 2, 6


@click.command("compare")
@recipes_argument
@click.option("-o", "--output", metavar="OUT.svg|OUT.pdf", help="The page to write as well.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a leader, one a line.")
@paper_option
@anyway_option
@replace_option
@show_option
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    output: str | None,
    as_json: bool,
    paper: str | None,
    anyway: bool,
    replace: bool,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """Compare two to six leaders; of one RECIPE alone, it and its variants.

    The page draws diameter, wave impedance and bending stiffness along them. All is computed for
    an ideal string: to compare leaders.
    """
    if output is not None and not output.lower().endswith((".pdf", ".svg")):
        raise refused("a page is a PDF or an SVG", "let its name end in .pdf or .svg", output)
    job = load_job(shop)
    alone = len(names) == 1 and variant is None
    recipes = load_chosen(names, job.practice, variant, variants or alone)
    if not _LEAST <= len(recipes) <= _MOST:
        found = f"{_LEAST} to {_MOST} leaders are compared at once, and here is {len(recipes)}"
        raise refused(found, "name other recipes, or one that has variants")
    if output is not None:
        check_output(output, replace=replace)
    sheets = [worksheet(recipe, job.practice) for recipe in recipes]
    heed(sheets, anyway=anyway or output is None)
    leaders = [sheet.leader for sheet in sheets]
    if as_json:
        from tagend.cards.words.waves_json import measure_line

        told = [measure_line(leader) for leader in leaders]
    else:
        told = list(_lines(leaders))
    if output is not None:
        from tagend.cards.printing.compare import comparison_pdf, comparison_svg

        make = comparison_svg if is_svg(output) else comparison_pdf
        write_output(output, make(job, sheets, paper), replace=replace)
        show_if_asked(output)
    click.echo("\n".join(told))
    if output is not None:
        tell_written(f"{output}")


def _lines(leaders: Sequence[Leader]) -> Iterator[str]:
    from tagend.cards.words.compare_words import compared
    from tagend.cards.words.leader_words import Told

    wording = spoken()
    found = compared([Told(leader, wording) for leader in leaders])
    yield from in_columns(found.table)
    yield ""
    for leader, differs in zip(leaders, found.differs, strict=True):
        yield f"{leader.recipe.name}: {differs or wording.say('as_others')}"
    yield from filter(None, [found.alike])
    yield from found.notes
