"""Leaders brought in: from a table, a photo, a PDF or a text; looked at first, then kept."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.brought import carries_codes, is_recipe, is_strange, of_codes, of_recipe
from tagend.cards.desk.brought_table import of_table
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.guard import LARGEST
from tagend.cards.desk.leader import written
from tagend.cards.desk.leader_drawn import front_of
from tagend.cards.desk.leaders import card_size
from tagend.cards.desk.page import Json, Shown, page, posted, received, said_in, shown
from tagend.cards.desk.table_answers import keep_answers
from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.tables.columns import NUMBER
from tagend.cards.tables.meaning import STRAND
from tagend.layouts.base.faults import refused

_PARTS = ("butt", "taper", "sighter", "tippet", "bite guard")
_NUMBERED = (*(f"{part} {n}" for part in ("taper", "tippet") for n in (1, 2, 3)),)
_SECTIONS = tuple(str(number) for number in range(1, 13))


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/bring", bring_page),
        received("/bring/look", look),
        posted("/bring/card", card),
        posted("/bring/keep", keep),
    ]


def bring_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(
        desk,
        "bring",
        largest=LARGEST,
        of_leader=[*OF_RECIPE],
        of_section=[STRAND, *OF_SECTION, NUMBER],
        sections=[*_PARTS, *_SECTIONS, *_NUMBERED],
        materials=[each.name for each in desk.job().practice.materials],
        **card_size(desk),
    )


def look(desk: Desk, name: str, data: bytes) -> Json:
    """Return what is found in a file; its first line is what the page says of it, as JSON."""
    line, _, file = data.partition(b"\n")
    said = said_in(line)
    if not file.strip():
        raise refused("there is nothing in this", "give a table, a photo, a PDF or a text")
    if carries_codes(file):
        return of_codes(desk, file, keep_tied=bool(said.get("tied")))
    if is_recipe(name, file):
        return of_recipe(desk, file)
    if is_strange(file):
        instead = "give a PNG or JPEG of a label's code, or a table as .csv, .xlsx or .ods"
        raise refused("this is no table, photo, PDF or text", instead)
    return of_table(desk, name, file, said)


def card(desk: Desk, said: Json) -> Json:
    """Return the front of a leader's card that is not kept yet."""
    job = desk.job()
    recipe = read_recipe(str(said["text"]).encode(), job.practice)
    return {"svg": front_of(job, recipe).decode()}


def keep(desk: Desk, said: Json) -> Json:
    """Write leaders to new files, and what was said of their table's columns."""
    practice = desk.job().practice
    texts = [str(text).encode() for text in said["texts"]]
    recipes = [read_recipe(text, practice) for text in texts]
    if said.get("answers"):
        keep_answers(desk, said["answers"])
    return {"names": [written(desk, *both)["name"] for both in zip(recipes, texts, strict=True)]}
