"""What every command that prints recipes shares: recipe and shop files in, a PDF written out."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import wraps
from typing import TYPE_CHECKING

import click

from tagend.cards.cli.files import load_chosen, load_job
from tagend.cards.cli.heed import anyway_option, heed
from tagend.cards.cli.options import output_option, recipes_argument, replace_option
from tagend.cards.cli.output import check_output, write_output
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import under

if TYPE_CHECKING:
    from tagend.cards.printing.job import Job


@dataclass(frozen=True, slots=True)
class Printing:
    """What is printed under which job, and the file to write."""

    job: "Job"
    recipes: tuple[Recipe, ...]
    output: str
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


def print_command(
    name: str, *, logo: bool = False
) -> Callable[[Callable[..., bytes]], click.Command]:
    """Make a command of what returns the bytes of its PDF.

    It is given a `Printing` and its own options; those of variants and shop it only names.
    """

    def command_of(make: Callable[..., bytes]) -> click.Command:
        @wraps(make)
        def command(
            names: tuple[str, ...],
            output: str,
            shop: str | None,
            anyway: bool,
            replace: bool,
            variant: str | None = None,
            variants: bool = False,
            **options: object,
        ) -> None:
            job = load_job(shop, logo=logo)
            recipes = load_chosen(names, job.practice, variant, variants)
            check_output(output, replace=replace)  # before anything else is told
            data = make(Printing(job, recipes, output, anyway), **options)
            write_pdf(output, data, replace=replace)

        for shared in (replace_option, anyway_option, output_option, recipes_argument):
            command = shared(command)
        return click.command(name)(command)

    return command_of


def write_pdf(name: str, data: bytes, *, replace: bool = False) -> None:
    """Write a PDF, and say so."""
    write_output(name, data, replace=replace)
    click.echo(f"wrote {name}; print it at 100 %, not fitted to the page", err=True)
