"""What was chosen on the page in; the job that it is printed under, and its recipes, out."""

from collections.abc import Sequence

from msgspec.structs import replace

from tagend.cards.base.days import day_first_in, read_day
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.typed import Typed
from tagend.cards.practice.shop_file import UNITS
from tagend.cards.printing.job import Job, job_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.variants.variant import variant_called, with_variants
from tagend.cards.words.language import languages
from tagend.layouts.base.faults import refused, under

Chosen = Sequence[Sequence[str]]  # files, each with the name of a variant or nothing


def job_for(desk: Desk, typed: Typed) -> Job:
    """Return the shop's job, in the language and the units of this print alone."""
    job, shop = desk.job(), desk.shop()
    language = typed.one_of("language", [shop.language, *languages()])
    units = typed.one_of("units", [shop.units, *UNITS])
    if (language, units) == (shop.language, shop.units):
        return job
    decimal = shop.decimal if language == shop.language else None
    other = job_of(replace(shop, language=language, units=units, decimal=decimal))
    return replace(other, imprint=job.imprint)


def chosen_recipes(chosen: Chosen, desk: Desk, job: Job, typed: Typed) -> list[Recipe]:
    """Return what was chosen, each once. Raises `Refused`."""
    recipes: list[Recipe] = []
    for name, variant in ((str(name), variant) for name, variant in chosen):
        kept = desk.leader(name)
        if kept is None or kept.recipe is None:
            raise refused("there is no such leader in this folder", "load the page again", name)
        if variant:
            recipes.append(variant_called(str(variant), kept.recipe, job.practice))
        elif typed.flag("variants"):
            recipes += with_variants(kept.recipe, job.practice)
        else:
            recipes.append(kept.recipe)
    if not recipes:
        raise refused("no leader is chosen", "tick one or more", "leaders")
    return list(dict.fromkeys(recipes))


def tied_on(recipes: list[Recipe], typed: Typed, language: str) -> list[Recipe]:
    """Return leaders as tied on the day that was typed, if one was."""
    written = typed.text("tied")
    if written is None:
        return recipes
    with under("tied"):
        day = read_day(written, day_first=day_first_in(language))
    return [replace(recipe, tied=day) for recipe in recipes]
