"""What every command that prints recipes shares: recipe and shop files in, a PDF written out."""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import wraps
from typing import TYPE_CHECKING

import click

from tagend.cards.base.plural import counted
from tagend.cards.cli.at_work import at_work
from tagend.cards.cli.files import load_chosen, load_job
from tagend.cards.cli.heed import anyway_option, heed, named
from tagend.cards.cli.options import F, recipes_argument, replace_option
from tagend.cards.cli.output import (
    STANDARD_OUTPUT,
    called,
    check_output,
    tell_written,
    write_output,
)
from tagend.cards.cli.show import show_if_asked, show_option
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import under

if TYPE_CHECKING:
    from tagend.cards.printing.job import Job, LeftOut, Printed
    from tagend.layouts.sheets.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Printing:
    """What is printed under which job."""

    job: "Job"
    recipes: tuple[Recipe, ...]
    anyway: bool

    def worksheets(self, *, variants: bool = False) -> list[Worksheet]:
        """Return the recipes worked out, and tell what is wrong with them; see `heed`.

        With `variants` that are printed with their recipe, with these too.
        """
        sheets = [worksheet(recipe, self.job.practice) for recipe in self.recipes]
        beside = self._variants() if variants else ()
        heed(
            [*sheets, *(worksheet(recipe, self.job.practice) for recipe in beside)],
            anyway=self.anyway,
        )
        return sheets

    def _variants(self) -> Iterator[Recipe]:
        """Yield the variants of the recipes, but for those that are asked for themselves."""
        varied = [recipe for recipe in self.recipes if recipe.variants]
        if not varied:
            return
        from tagend.cards.variants.variant import with_variants

        for recipe in varied:
            with under(recipe.name):
                found = list(with_variants(recipe, self.job.practice))
            yield from (variant for variant in found if variant not in self.recipes)


def output_options(command: F) -> F:
    """Give a command its --output, --show and --plan options, for `to_write`."""
    output = click.option("-o", "--output", metavar="OUT.pdf", help="The file to write.")
    plan = click.option("--plan", is_flag=True, help="Only say how many pages; write nothing.")
    return output(show_option(plan(command)))


def print_command(
    name: str, *, logo: bool = False
) -> Callable[[Callable[..., "Printed"]], click.Command]:
    """Make a command of what returns its PDF.

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
            name = to_write(output, plan=plan)
            job = load_job(shop, logo=logo)
            recipes = load_chosen(names, job.practice, variant, variants)
            if name is not None:
                check_output(name, replace=replace)  # before anything else is told
            with at_work():
                printed = make(Printing(job, recipes, anyway), **options)
            write_or_tell(name, printed, replace=replace)

        for shared in (replace_option, anyway_option, output_options, recipes_argument):
            command = shared(command)
        return click.command(name)(command)

    return command_of


def to_write(output: str | None, *, plan: bool) -> str | None:
    """Return the file to write, None where that is only planned; or raise for want of both."""
    if output is None and not plan:
        raise click.UsageError("Missing option '-o' / '--output' or '--plan'.")
    return None if plan else output


def write_or_tell(name: str | None, printed: "Printed", *, replace: bool) -> None:
    """Write a PDF, or where that is only planned, say what it would hold; and what has no room."""
    faces = (placed.face for sheet in printed.sheets for placed in sheet.placed)
    for line in dict.fromkeys(line for face in faces for line in face.left_out):
        click.echo(line, err=True)
    if name is None:
        click.echo(_pages_told(printed))
    else:
        write_pdf(name, printed, replace=replace)
    for line in _left_out(printed.left_out):
        click.echo(line, err=True)


_MISSING = {
    "frames": "all frames of the knots",
    "seats": "how the knots are seated",
    "renewals": "what a new section takes",
    "variants": "the variants",
}
_TAUGHT = {"frames", "seats"}  # on the cards of the knots


def _left_out(all_left: Sequence["LeftOut"]) -> Iterator[str]:
    """Yield what cards have no room for, and what has; a line for all that are alike."""
    alike: dict[tuple[tuple[str, ...], str | None], list[str]] = {}
    for each in all_left:
        alike.setdefault((each.missing, each.size), []).append(each.name)
    for (missing, size), names in alike.items():
        *first, last = (_MISSING[what] for what in missing)
        said = f"{', '.join(first)} and {last}" if first else last
        ways = [f"--size {size} holds all of it"] if size else []
        if _TAUGHT.intersection(missing):
            ways.append("cards made with --knots tell each knot in full")
        yield f"{named(names)}: no room for {said}" + (f"; {', '.join(ways)}" if ways else "")


def write_pdf(name: str, printed: "Printed", *, replace: bool = False) -> None:
    """Write a PDF, and say so with what it holds."""
    write_output(name, printed, replace=replace)
    told = _pages_told(printed)
    tell_written(f"{called(name)}: {told}; print it at 100 %, not fitted to the page")
    if name != STANDARD_OUTPUT:
        show_if_asked(name)


def _pages_told(printed: "Printed") -> str:
    """Return what is printed, and where the knots on cards of their own save pages, how many."""
    told, apart = sheets_told(printed.sheets), printed.pages_apart
    return f"{told}; {counted(apart, 'page')} as --brief and --knots cards" if apart else told


def sheets_told(sheets: Sequence["Sheet"]) -> str:
    """Return what is printed: `24 pages on 12 sheets, 48 cards on 96 sides`."""
    fronts = sum(sheet.side == "front" or sheet.trim is not None for sheet in sheets)
    of_paper = "" if fronts == len(sheets) else f" on {counted(fronts, 'sheet')}"
    return ", ".join((f"{counted(len(sheets), 'page')}{of_paper}", *_cut(sheets)))


def _cut(sheets: Sequence["Sheet"]) -> Iterator[str]:
    """Yield how many cards come of them, and how many labels."""
    pieces, sides = Counter[str](), Counter[str]()
    for cut in (sheet.cut for sheet in sheets if sheet.cut):
        pieces[cut.noun] += cut.count
        sides[cut.noun] += cut.sides
    for noun, count in pieces.items():
        printed = "" if sides[noun] == count else f" on {counted(sides[noun], 'side')}"
        yield f"{counted(count, noun)}{printed}"
