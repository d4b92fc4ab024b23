"""A recipe as the text of a recipe file: the inverse of reading one."""

import re
from collections.abc import Iterator, Mapping
from datetime import date

from msgspec import json

from tagend.cards.recipe.fields import FIELDS, said
from tagend.cards.recipe.recipe import Recipe

_DEVICE = re.compile(r"con|prn|aux|nul|(com|lpt)[0-9¹²³]")  # of Windows, whatever ends its name


def recipe_text(recipe: Recipe) -> str:
    """Return the TOML of a recipe; quantities come out as they were written."""
    return "\n".join(_lines(recipe)) + "\n"


def file_name(name: str) -> str:
    """Return a plain name for the file of a leader: `sandbar-eight.toml`."""
    stem = re.sub(r"\W+", "-", name.lower()).strip("-_") or "recipe"
    return f"{stem}-recipe.toml" if _DEVICE.fullmatch(stem) else f"{stem}.toml"


def _lines(whole: Recipe) -> Iterator[str]:
    """Yield a line for each field that says other than when left out, under its heading."""
    values = said(whole)
    for field in FIELDS[type(whole)]:
        value = values.get(field.name)
        if value is None:
            continue
        if field.part is None:
            yield from _keys(field.key, value)
        elif field.count is None:
            yield from ("", f"[{field.key}]", *_lines(value))
        else:
            for row in value:
                yield from ("", f"[[{field.key}]]", *_lines(row))


def _keys(key: str, value: object) -> Iterator[str]:
    if isinstance(value, Mapping):
        for inner, item in value.items():
            yield from _keys(f"{key}.{inner}", item)
    elif isinstance(value, date):
        yield f"{key} = {value.isoformat()}"
    else:
        plain = isinstance(value, (bool, int))
        # A JSON string of printable characters is a TOML basic string too.
        yield f"{key} = {json.encode(value if plain else str(value)).decode()}"
