"""What every command that prints recipes shares: recipe and shop files in, a PDF written out."""

from collections.abc import Callable, Iterable
from functools import partial, wraps
from typing import TYPE_CHECKING

import click
from msgspec import Struct

from tagend.cards.cli.at_work import at_work
from tagend.cards.cli.files import load_chosen, load_job
from tagend.cards.cli.heed import anyway_option, heed
from tagend.cards.cli.options import F, recipes_argument, replace_option
from tagend.cards.cli.output import (
    STANDARD_OUTPUT,
    called,
    check_output,
    is_svg,
    tell_written,
    write_output,
)
from tagend.cards.cli.show import show_if_asked, show_option
from tagend.cards.cli.spoken import spoken
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import ENGLISH
from tagend.layouts.base.faults import refused

if TYPE_CHECKING:
    from tagend.cards.printing.job import Job, Printed


class Printing(Struct, frozen=True):
    """What is printed under which job."""

    job: "Job"
    recipes: tuple[Recipe, ...]
    anyway: bool
    svg: bool = False

    def worksheets(self, *, variants: bool = False) -> list[Worksheet]:
        """Return the recipes worked out, and tell what is wrong with them; see `heed`.

        With `variants` that are printed with their recipe, with these too.
        """
        sheets = [worksheet(recipe, self.job.practice) for recipe in self.recipes]
        beside: Iterable[Recipe] = ()
        if variants and any(recipe.variants for recipe in self.recipes):
            from tagend.cards.variants.variant import variants_beside

            beside = variants_beside(self.recipes, self.job.practice)
        heed(
            [*sheets, *(worksheet(recipe, self.job.practice) for recipe in beside)],
            anyway=self.anyway,
        )
        return sheets


def output_options(command: F, metavar: str = "OUT.pdf") -> F:
    """Give a command its --output, --show and --plan options, for `to_write`."""
    output = click.option("-o", "--output", metavar=metavar, help="The file to write.")
    plan = click.option("--plan", is_flag=True, help="Only say how many pages; write nothing.")
    return output(show_option(plan(command)))


def print_command(
    name: str, *, logo: bool = False, svg: bool = False
) -> Callable[[Callable[..., "Printed"]], click.Command]:
    """Make a command of what returns its PDF, or where it has one its SVG.

    It is given a `Printing` and its own options; those of variants and shop it only names.
    """

    def command_of(make: Callable[..., "Printed"]) -> click.Command:
        @wraps(make)
        def command(
            names: tuple[str, ...],
            output: str | None,
            plan: bool,
            shop: str | None,
            anyway: bool,
            replace: bool,
            variant: str | None = None,
            variants: bool = False,
            **options: object,
        ) -> None:
            name = to_write(output, plan=plan, svg=svg)
            job = load_job(shop, logo=logo)
            recipes = load_chosen(names, job.practice, variant, variants)
            if name is not None:
                check_output(name, replace=replace)  # before anything else is told
            with at_work():
                printed = make(Printing(job, recipes, anyway, is_svg(output)), **options)
            write_or_tell(name, printed, replace=replace)

        options = partial(output_options, metavar="OUT.svg|OUT.pdf" if svg else "OUT.pdf")
        for shared in (replace_option, anyway_option, options, recipes_argument):
            command = shared(command)
        return click.command(name)(command)

    return command_of


def to_write(output: str | None, *, plan: bool, svg: bool = False) -> str | None:
    """Return the file to write, None where that is only planned; or raise for want of both.

    Raises `Refused` for a name in .svg where there is none.
    """
    if is_svg(output) and not svg:
        raise refused("this is printed as a PDF", "let its name end in .pdf", output or "")
    if output is None and not plan:
        raise click.UsageError("Missing option '-o' / '--output' or '--plan'.")
    return None if plan else output


def write_or_tell(name: str | None, printed: "Printed", *, replace: bool) -> None:
    """Write a PDF, or where that is only planned, say what it would hold; and what has no room."""
    from tagend.cards.printing.printed_words import left_out_lines, pages_told

    if name is None:
        click.echo(pages_told(printed, ENGLISH))
    else:
        write_pdf(name, printed, replace=replace)
    for line in left_out_lines(printed, spoken()):
        click.echo(line, err=True)


def write_pdf(name: str, printed: "Printed", *, replace: bool = False) -> None:
    """Write a PDF, or an SVG where its name says so, and say so with what it holds."""
    from tagend.cards.printing.printed_words import pages_told

    write_output(name, printed, replace=replace)
    how = "" if is_svg(name) else "; print it at 100 %, not fitted to the page"
    tell_written(f"{called(name)}: {pages_told(printed, ENGLISH)}{how}")
    if name != STANDARD_OUTPUT:
        show_if_asked(name)
