"""Recipes out of what carries them: a code's text, a picture of codes, or a PDF of ours."""

import re
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from time import monotonic

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.code.notation import MARK, read_notation
from tagend.cards.practice.practice import Practice
from tagend.cards.printing.chosen import chosen_otherwise
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.layouts.base.faults import Fault, Refused, refused, under
from tagend.layouts.codes.scan import is_picture, texts_in_pages, texts_in_picture
from tagend.layouts.pdf.attached import attached
from tagend.layouts.strangers.apart import SECONDS
from tagend.layouts.strangers.unreadable import Unreadable

_MARKED = re.compile(r"\s*tag\s*\d", re.IGNORECASE)  # any version, as a hand may have copied it
_SHOWN = 60  # characters of a text that is not ours
_ENOUGH = 5  # faults told of one picture


class Recovered(Struct, frozen=True):
    """What a source holds."""

    what: str  # that the recipes were found in
    recipes: tuple[Recipe, ...]
    strangers: tuple[str, ...] = ()  # the texts of other codes beside them, fit to be shown
    changed: tuple[str, ...] = ()  # where today's rule takes another knot than a text says


def looks_like_code(text: str) -> bool:
    """Whether a text begins as our notation does."""
    return _MARKED.match(text) is not None


def untied(recipes: Iterable[Recipe]) -> tuple[Recipe, ...]:
    """Return the recipes without the days they were tied, each once.

    A leader that is tied again has a day of its own.
    """
    bare = (replace(recipe, tied=None) for recipe in recipes)
    return tuple({recipe_text(recipe): recipe for recipe in bare}.values())


def recipes_in(data: bytes, practice: Practice) -> Recovered:
    """Return the recipes in a text, a picture or a PDF. Raises `Refused` where there is none."""
    if data.startswith(b"%PDF"):
        return _in_pdf(data, practice)
    if is_picture(data):
        with _told("this picture cannot be read: "):
            texts = texts_in_picture(data)
        if not texts:
            raise refused(
                "no code can be read in this picture", "take it from nearer, flat and in even light"
            )
        return _in_codes("a code in a picture", texts, practice)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused(
            "this is no text, picture or PDF",
            "give a code's text, a PNG or JPEG of it, or a PDF that tagend made",
        ) from None
    if not looks_like_code(text):
        raise refused(
            "this holds no code's text", f"give the text of a label's code, which begins {MARK}:"
        )
    recipe = _read(text, practice)
    changed = chosen_otherwise(text.strip(), practice)
    return Recovered("the text of a code", (recipe,), changed=tuple(changed))


def _in_pdf(data: bytes, practice: Practice) -> Recovered:
    """Return the recipes that a PDF carries as files; where it has none, those of its pages."""
    until = monotonic() + SECONDS  # for both readings together
    with _told():
        files = attached(data)
    ours = (file.data for file in files if file.media_type == "application/toml")
    recipes = tuple(read_recipe(each, practice) for each in ours)
    if recipes:
        return Recovered("a file in a PDF", recipes)
    with _told("this PDF carries no recipe as a file, and of its pages: "):
        texts = texts_in_pages(data, max(until - monotonic(), 0))
    if not texts:
        raise refused("this PDF carries no recipe", "give a PDF that tagend made")
    return _in_codes("a code on a page", texts, practice)


def _in_codes(what: str, texts: Iterable[str], practice: Practice) -> Recovered:
    """Return the recipes of our codes; a fault in one of them is a fault of the whole."""
    recipes: list[Recipe] = []
    strangers: list[str] = []
    changed: list[str] = []
    faults: list[Fault] = []
    for text in texts:
        if not looks_like_code(text):
            strangers.append(_shown(text))
            continue
        try:
            with under(f"code {_shown(text)}", ": "):
                recipes.append(_read(text, practice))
                changed += chosen_otherwise(text.strip(), practice)
        except Refused as error:
            faults += error.faults
    if faults:
        raise Refused(*faults[:_ENOUGH])
    if not recipes:
        raise refused(
            f"this code is not one of a label: {strangers[0]}",
            f"give one whose text begins {MARK}:",
        )
    return Recovered(what, tuple(recipes), tuple(strangers), tuple(dict.fromkeys(changed)))


def _read(text: str, practice: Practice) -> Recipe:
    return read_notation(text.strip(), practice.knots, practice.materials)


def _shown(text: str) -> str:
    """Return the beginning of a stranger's text, with nothing in it that a terminal would obey."""
    return ascii(text[:_SHOWN]) + (" …" if len(text) > _SHOWN else "")


@contextmanager
def _told(where: str = "") -> Iterator[None]:
    """Turn what cannot be read into what a person is told."""
    try:
        yield
    except Unreadable as error:
        raise refused(where + error.found, error.instead) from None
