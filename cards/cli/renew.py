"""`tagend renew`: on the water, what new pieces cost a leader and how a used one is rebuilt."""

import re
from collections.abc import Mapping

import click
from cfractions import Fraction

from tagend.cards.base.units import parse_length
from tagend.cards.cli.files import load_chosen, load_practice
from tagend.cards.cli.heed import tell
from tagend.cards.cli.options import (
    count_option,
    reading,
    recipes_argument,
    shop_option,
    variant_options,
)
from tagend.cards.cli.renew_lines import rebuilt_lines, renewal_lines
from tagend.cards.cli.spoken import told_of
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.rebuilding import rebuilt
from tagend.cards.leader.worksheet import worksheet
from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under

_BETWEEN = re.compile(r"\s*[,;]\s*(?=\d+\s*:)")  # and not within 0,5, which is refused as such
_LEFT = re.compile(r"(\d{1,3})\s*:\s*(.+)")
_NOTHING = re.compile(r"0+(\s*[a-z]+)?")
_EXAMPLE = 'write sections and what is left of each, "5: 4 in, 6: 0", with 0 for a lost one'


def _read_left(text: str) -> Mapping[int, Fraction]:
    """Return the finished length left of each section told of, in mm."""
    left: dict[int, Fraction] = {}
    faults: list[Fault] = []
    for part in _BETWEEN.split(text.strip(" ,;")):
        with noting(faults):
            found = _LEFT.fullmatch(part)
            if found is None:
                raise refused(f"{part!r} cannot be read", _EXAMPLE)
            place = int(found[1])
            if place in left:
                raise refused("this section is named twice", "say one length for it", found[1])
            with under(found[1]):
                zero = _NOTHING.fullmatch(found[2])
                left[place] = Fraction(0) if zero else parse_length(found[2]).mm
    refuse_any(faults)
    return left


@click.command("renew")
@recipes_argument
@click.option("--left", metavar='"N: LENGTH, …"', callback=reading(_read_left),
              help="Of a used leader: finished lengths left of sections, 0 if lost.")  # fmt: skip
@count_option(default=6, show_default=True, help="New pieces to carry line for.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a recipe, one a line.")
@variant_options
@shop_option
def command(
    names: tuple[str, ...],
    left: Mapping[int, Fraction] | None,
    count: int,
    as_json: bool,
    variant: str | None,
    variants: bool,
    shop: str | None,
) -> None:
    """Tell what each new tippet costs the section above it, and what to carry; `-` reads a RECIPE.

    With --left it tells instead what to cut anew of a used leader, such as "5: 4 in, 6: 0". What
    hangs below a lost section is lost with it, unless its own length is told. What `check` warns
    of goes to standard error.
    """
    practice = load_practice(shop)
    sheets = [
        worksheet(recipe, practice) for recipe in load_chosen(names, practice, variant, variants)
    ]
    if left is not None and len(sheets) > 1:
        raise click.UsageError("--left is of one leader: give one RECIPE.")
    for sheet in sheets:
        check_tieable(sheet.leader)
    used = None
    if left is not None:
        with under("left"):
            used = rebuilt(sheets[0].leader, left, practice)
    if as_json:
        from tagend.cards.words.renewal_json import renewal_json

        for sheet in sheets:
            click.echo(renewal_json(sheet, count, used, practice))
        return
    tell(sheets)
    blocks = [
        rebuilt_lines(told, used) if used else renewal_lines(told, count, practice)
        for told in map(told_of, sheets)
    ]
    click.echo("\n\n".join("\n".join(lines) for lines in blocks))
