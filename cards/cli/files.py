"""Files that commands read: names in, recipes and practice out; faults name the file."""

from collections.abc import Callable, Sequence
from contextlib import AbstractContextManager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from tagend.cards.cli.disk import read_bytes as read_bytes
from tagend.cards.cli.disk import write_whole as write_whole
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop, practice_of, read_shop
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack
    from tagend.layouts.paper.raster import Raster

F = TypeVar("F", bound=Callable[..., object])


def recipes_argument(command: F) -> F:
    """Give a command its RECIPE... argument."""
    return click.argument("names", metavar="RECIPE...", nargs=-1, required=True)(command)


def output_option(command: F) -> F:
    """Give a command its -o option."""
    return click.option(
        "-o", "--output", metavar="OUT.pdf", required=True, help="The file to write."
    )(command)


def shop_option(command: F) -> F:
    """Give a command its --shop option."""
    return click.option(
        "--shop",
        metavar="FILE",
        envvar="TAGEND_SHOP",
        help="Your shop file: imprint, units, paper, printer, own knots and stock.",
    )(command)


def rack_option(command: F) -> F:
    """Give a command its --rack option."""
    return click.option("--rack", metavar="FILE", help="Your rack file: the spools you have.")(
        command
    )


def load_rack(name: str | None, practice: Practice) -> "Rack | None":
    """Return the spools of a rack file; without one, None."""
    if name is None:
        return None
    from tagend.cards.practice.rack_file import read_rack

    with naming(name):
        return read_rack(read_bytes(name), practice)


def load_shop(name: str | None) -> Shop:
    """Return what the shop file says; without one, nothing."""
    if name is None:
        return Shop()
    with naming(name):
        shop = read_shop(read_bytes(name))
        if shop.language is not None:
            from tagend.cards.words.language import wording_of

            wording_of(shop)  # refuses a language that is not there
    font, logo = (path and str(Path(name).parent / path) for path in (shop.font, shop.logo))
    return replace(shop, font=font, logo=logo)


def load_logo(shop: Shop, name: str | None) -> "Raster | None":
    """Return the logo that the shop file of this name names; without one, None."""
    if name is None or shop.logo is None:
        return None
    from tagend.layouts.logo.logo_file import read_logo
    from tagend.layouts.strangers.unreadable import Unreadable

    with naming(name), under("logo", ": "), naming(shop.logo):
        try:
            return read_logo(read_bytes(shop.logo))
        except Unreadable as bad:
            raise refused(bad.found, bad.instead) from None


def load_paper_shop(name: str | None) -> Shop:
    """Return what the shop file says, with what it says of stock, printer and font checked."""
    shop = load_shop(name)
    if name is not None:
        from tagend.cards.printing.own_paper import check_paper

        with naming(name):
            check_paper(shop)
    return shop


def load_practice(shop: str | None) -> Practice:
    """Return common practice, with what the shop file changes of it."""
    return practice_of(load_shop(shop))


def load_recipes(names: Sequence[str], practice: Practice) -> tuple[Recipe, ...]:
    """Return the recipes in files; raises `Refused` with the faults of all of them."""
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for name in names:
        with noting(faults), naming(name):
            recipes.append(read_recipe(read_bytes(name), practice))
    refuse_any(faults)
    return tuple(recipes)


def naming(name: str) -> AbstractContextManager[None]:
    """Put the file's name before every fault found inside."""
    return under("standard input" if name == "-" else name, ": ")
