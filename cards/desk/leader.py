"""One leader: its table as it is typed, all that comes of it, and its file."""

import hashlib
from collections.abc import Iterator, Mapping
from typing import Any

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.draft import (
    OF_VARIANT,
    draft_of,
    field_of,
    recipe_in,
    tables_of,
    without_blank,
)
from tagend.cards.desk.leader_drawn import drawn
from tagend.cards.desk.page import Json, Shown, page, posted, refusals, shown
from tagend.cards.desk.same_file import with_draft
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.cards.variants.variant import variant_called
from tagend.layouts.base.faults import Refused, refused, under


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/leader/{name}", leader_page),
        posted("/draw", draw),
        posted("/save", save),
        posted("/vary", vary),
    ]


def leader_page(desk: Desk, request: Request) -> Shown:
    """Show a leader in its fields."""
    name = request.path_params["name"]
    data = _there(desk, name)
    job = desk.job()
    with under(name, ": "):
        draft = draft_of(read_toml(data))
    return page(
        desk,
        "leader",
        name=name,
        called=draft["head"].get("name", name),
        draft=draft,
        base=base_of(data),
        sizes=[each.name for each in job.stock.cards.values()],
        size=job.card_size(None).name,
        materials=[each.name for each in job.practice.materials],
        head_fields=list(OF_RECIPE),
        row_fields=list(OF_SECTION),
        variant_fields=list(OF_VARIANT),
    )


def draw(desk: Desk, said: Json) -> Json:
    """Return all that comes of a draft: its pictures and figures, or its faults by their fields."""
    job = desk.job()
    try:
        recipe = recipe_in(said["draft"], job.practice, unit_of(said["draft"], job.practice))
        return drawn(job, recipe, said)
    except Refused as refusal:
        places = map(field_of, refusal.faults)
        told = refusals(desk, Refused(*map(without_blank, refusal.faults)))
        return {"faults": [{**one, **place} for one, place in zip(told, places, strict=True)]}


def save(desk: Desk, said: Json) -> Json:
    """Write a draft to its file, or to that of another name; never over what it does not know.

    Where the file was changed since the page has read it, nothing is written, and that is told.
    """
    name, draft, practice = str(said["name"]), said["draft"], desk.job().practice
    unit = unit_of(draft, practice)
    tables = tables_of(draft, practice, unit)
    recipe = recipe_in(draft, practice, unit)
    if said.get("apart"):
        return written(desk, recipe)
    path = str(desk.path(name))
    with alone(path):
        data = b"" if desk.stamp(name) is None else read_bytes(path)
        if data and base_of(data) != said.get("base") and not said.get("over"):
            return {"changed": True}
        after = _saved(data, tables, draft, recipe, practice)
        if after != data:
            write_whole(path, after)
    return {"base": base_of(after), "name": name}


def vary(desk: Desk, said: Json) -> Json:
    """Write a variant of a draft as a leader of its own."""
    draft, practice = said["draft"], desk.job().practice
    recipe = recipe_in(draft, practice, unit_of(draft, practice))
    return written(desk, variant_called(str(said["variant"]), recipe, practice))


def written(desk: Desk, recipe: Recipe, text: bytes = b"") -> dict[str, str]:
    """Write a leader, or its file's text where there is one, to a new file named after it.

    Returns its name.
    """
    while True:
        name = free_name(desk, recipe.name)
        with alone(str(desk.path(name))):
            if desk.stamp(name) is None:  # still, now that no other window can take it
                write_whole(str(desk.path(name)), text or recipe_text(recipe).encode())
                return {"name": name}


def _saved(
    data: bytes, tables: Mapping[str, Any], draft: Json, recipe: Recipe, practice: Practice
) -> bytes:
    """Return the file with the draft in it; one that cannot be kept as it is written, anew."""
    if data and (after := _kept(data, tables, draft, recipe, practice)):
        return after
    return recipe_text(recipe).encode()


def _kept(
    data: bytes, tables: Mapping[str, Any], draft: Json, recipe: Recipe, practice: Practice
) -> bytes | None:
    was = {
        key: [row.get("was") for row in draft.get(rows, ())]
        for key, rows in (("section", "rows"), ("variant", "variants"))
    }
    try:
        after = with_draft(data, tables, was)
        return after if read_recipe(after, practice) == recipe else None
    except (Refused, ValueError):
        return None


def base_of(data: bytes) -> str:
    """Return what changes with a file's bytes."""
    return hashlib.sha256(data).hexdigest()


def unit_of(draft: Json, practice: Practice) -> str:
    """Return the unit of bare lengths: the shop's, or that of the first length that has one."""
    if practice.unit is not None:
        return practice.unit
    lengths = (str(row.get("length", "")) for row in draft["rows"])
    metric = any(length.rstrip().endswith(("cm", "mm")) for length in lengths)
    return "cm" if metric else "in"


def free_name(desk: Desk, name: str) -> str:
    """Return the name of a file for a leader, numbered where another has it."""
    stem = file_name(name).removesuffix(".toml")
    names: Iterator[str] = (f"{stem}-{number}.toml" for number in range(2, 10_000))
    wanted = f"{stem}.toml"
    while desk.stamp(wanted) is not None:
        wanted = next(names)
    return wanted


def _there(desk: Desk, name: str) -> bytes:
    if not name.endswith(".toml") or desk.stamp(name) is None:
        raise refused("there is no such leader in this folder", "go back to the leaders", name)
    return read_bytes(str(desk.path(name)))
