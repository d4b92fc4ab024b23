"""Recipes out of what carries them: the bytes of a PDF of ours or of a code's text in."""

import re

from cards.errors import refused
from cards.notation import MARK, read_notation
from cards.practice import Practice
from cards.recipe import Recipe
from cards.recipe_file import read_recipe
from cards.recipe_text import file_name

_MARKED = re.compile(r"\s*tag\s*\d", re.IGNORECASE)  # any version, as a hand may have copied it


def looks_like_code(text: str) -> bool:
    """Whether a text begins as our notation does."""
    return _MARKED.match(text) is not None


def recipes_in(data: bytes, practice: Practice) -> list[tuple[str, Recipe]]:
    """Return each recipe with a name for its file. Raises `Refused` where there is none."""
    if data.startswith(b"%PDF"):
        return _in_pdf(data, practice)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused(
            "this is neither a text nor a PDF", "give a code's text or a PDF that tagend made"
        ) from None
    if not looks_like_code(text):
        raise refused(
            "this holds no code's text", f"give the text of a label's code, which begins {MARK}:"
        )
    recipe = read_notation(text.strip(), practice.knots, practice.materials)
    return [(file_name(recipe.name), recipe)]


def _in_pdf(data: bytes, practice: Practice) -> list[tuple[str, Recipe]]:
    from layouts.attached import NotAPdf, attached

    try:
        files = attached(data)
    except NotAPdf as error:
        raise refused(str(error), "give a PDF that tagend made") from None
    recipes = [
        read_recipe(file.data, practice) for file in files if file.media_type == "application/toml"
    ]
    if not recipes:
        raise refused("this PDF carries no recipe", "give a PDF that tagend made")
    return [(file_name(recipe.name), recipe) for recipe in recipes]
