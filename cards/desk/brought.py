"""What was dropped or pasted in; its leaders, each with its file's text, as JSON out.

Nothing is written here: a leader is shown before it is kept.
"""

import re
from codecs import BOM_UTF16_BE, BOM_UTF16_LE
from collections.abc import Iterable, Iterator

from tagend.cards.book.holders import held_in
from tagend.cards.book.naming import ranges
from tagend.cards.desk.book_here import reading
from tagend.cards.desk.desk import BOOK, Desk
from tagend.cards.desk.leader_drawn import title
from tagend.cards.desk.page import Json, refusals
from tagend.cards.leader.leader import work_out
from tagend.cards.printing.recover import looks_like_code, recipes_in, untied
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.tables.sheets import is_spreadsheet
from tagend.cards.words.leader_words import Told
from tagend.cards.words.refusal_words import words_in
from tagend.layouts.base.faults import Refused
from tagend.layouts.codes.scan import is_picture

_RECIPE = re.compile(rb"^[ \t]*\[\[[ \t]*section[ \t]*\]\]", re.MULTILINE)
_LOOKED_AT = 4000  # bytes of a text, for a code at its head


def is_recipe(name: str, data: bytes) -> bool:
    """Whether this is a recipe's file, or the text of one."""
    return name.lower().endswith(".toml") or _RECIPE.search(data) is not None


def carries_codes(data: bytes) -> bool:
    """Whether this is a picture, a PDF, or the text of a code."""
    text = data[:_LOOKED_AT].decode("utf-8-sig", "replace")
    return data.startswith(b"%PDF") or is_picture(data) or looks_like_code(text)


def is_strange(data: bytes) -> bool:
    """Whether this is neither text nor the file of a spreadsheet."""
    text = data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)) or b"\0" not in data
    return not text and not is_spreadsheet(data)


def of_recipe(desk: Desk, data: bytes) -> Json:
    """Return the leader of a recipe's file, which is kept word for word; raises `Refused`."""
    recipe = read_recipe(data, desk.job().practice)
    return {"leaders": [*_leaders(desk, [(recipe, data.decode("utf-8-sig"))])]}


def of_codes(desk: Desk, data: bytes, *, keep_tied: bool) -> Json:
    """Return the leaders in a picture, a PDF or a code's text; raises `Refused` where none is."""
    practice = desk.job().practice
    found = recipes_in(data, practice)
    days = sorted({str(recipe.tied) for recipe in found.recipes if recipe.tied is not None})
    recipes = found.recipes if keep_tied else untied(found.recipes)
    return {
        "strangers": found.strangers,
        "changed": [words_in(desk.job().wording.language, line) for line in found.changed],
        "tied": days,
        "held": [*_held(desk, found.recipes)],
        "leaders": leaders_shown(desk, recipes),
    }


def _held(desk: Desk, recipes: Iterable[Recipe]) -> Iterator[Json]:
    """Yield the batches of the tying book that hold labels' recipes."""
    if desk.stamp(BOOK) is None:
        return
    practice = desk.job().practice
    with reading(desk) as db:
        for recipe in recipes:
            for batch, numbers in held_in(db, recipe, practice).items():
                yield {"name": recipe.name, "batch": batch, "numbers": ranges(numbers)}


def leaders_shown(desk: Desk, recipes: Iterable[Recipe]) -> list[Json]:
    """Return what is shown of leaders before they are kept."""
    return [*_leaders(desk, ((recipe, recipe_text(recipe)) for recipe in recipes))]


def _leaders(desk: Desk, recipes: Iterable[tuple[Recipe, str]]) -> Iterator[Json]:
    """Yield each leader; of one that is in the folder already, in which file."""
    here = [(kept.recipe, kept.name) for kept in desk.leaders()]
    for recipe, text in recipes:
        there = next((name for kept, name in here if kept == recipe), "")
        yield {"name": recipe.name, "told": _told(desk, recipe), "text": text, "here": there}


def _told(desk: Desk, recipe: Recipe) -> str:
    job = desk.job()
    try:
        return title(Told(work_out(recipe, job.practice), job.wording))
    except Refused as refusal:  # such a leader can be kept, and mended on its own page
        return " ".join(fault["text"] for fault in refusals(desk, refusal))
