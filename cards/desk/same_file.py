"""A recipe or rack file and a draft of it in; the file with what was changed, all else kept, out.

A file is taken as its blocks: the lines before the first heading, and each heading with the
comments right above it and the lines below it. Blocks move, come and go whole; within a block only
the lines of changed keys do.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import fields, replace

from tagend.cards.base.toml_edit import edited
from tagend.cards.practice.rack_file import Spool
from tagend.cards.recipe.fields import FIELDS
from tagend.cards.recipe.recipe import Recipe

_HEADING = re.compile(r"^[ \t]*\[\[?[ \t]*([\w.-]+)[ \t]*\]\]?", re.MULTILINE)


Places = Mapping[str, Sequence[int | None]]


class FileShape(Struct, frozen=True):
    """What a kind of file holds: the keys that are ours, and its tables, of which may be many."""

    keys: frozenset[str]
    tables: Mapping[str, bool]


RECIPE = FileShape(
    frozenset(field.key for cls in FIELDS for field in FIELDS[cls]),
    {field.key: bool(field.count) for field in FIELDS[Recipe] if field.part},
)
RACK = FileShape(frozenset(field.name for field in fields(Spool)), {"spool": True})


class _Passage(Struct, frozen=True):
    """A part of the file: of which table, what stands above its keys, its keys, what is below."""

    table: str
    above: str
    keys: str
    below: str = "\n"


def with_draft(
    data: bytes, tables: Mapping[str, Any], was: Places, shape: FileShape = RECIPE
) -> bytes:
    """Return the file so that it says what the tables say.

    `was` has, for tables of which there are many, which of the file each is, counted from 0.
    A file may be written in ways that this does not know: whoever calls reads the result again.
    """
    return edited(data, lambda text: _with_tables(text.replace("\r\n", "\n"), tables, was, shape))


def _with_tables(text: str, tables: Mapping[str, Any], was: Places, shape: FileShape) -> str:
    blocks = list(_blocks(text))
    there: dict[str, list[_Passage]] = {}
    for block in blocks:
        there.setdefault(block.table, []).append(block)
    plain = {key: value for key, value in tables.items() if key not in shape.tables}
    made = {"": [_changed(there[""][0], plain, shape)]}
    for key, many in shape.tables.items():
        said = tables.get(key, [] if many else {})
        rows = said if many else [said] if said else []
        old = there.get(key, [])
        places = was[key] if many else [0]
        made[key] = [
            _changed(
                old[place] if place is not None and place < len(old) else _new(key, many=many),
                row,
                shape,
            )
            for place, row in zip(places, rows, strict=False)
        ]
    *first, last = _in_order(blocks, made, shape)
    whole = "".join(
        block.above + block.keys + (block.below or ("\n" if block.table else "")) for block in first
    )
    is_end = last.table == blocks[-1].table and last.below == blocks[-1].below
    return whole + last.above + last.keys + (last.below if is_end else "")


def _in_order(
    blocks: Sequence[_Passage], made: Mapping[str, Sequence[_Passage]], shape: FileShape
) -> Iterator[_Passage]:
    """Yield the new blocks, each kind where its first one was; what is new, in the usual order."""
    order = list(dict.fromkeys(block.table for block in blocks))
    usual = ["", *shape.tables]
    for key in usual:
        if key not in order:
            before = [order.index(each) for each in usual[: usual.index(key)] if each in order]
            order.insert(max(before) + 1, key)
    for key in order:
        yield from made.get(key, [block for block in blocks if block.table == key])


def _blocks(text: str) -> Iterator[_Passage]:
    found = list(_HEADING.finditer(text))
    starts = [_with_comments(text, each.start()) for each in found]
    if starts and starts[0] == 0:  # what a file opens with is said of the whole of it
        starts[0] = found[0].start()
    yield _parted("", "", text[: starts[0]] if starts else text)
    for heading, start, stop in zip(found, starts, [*starts[1:], len(text)], strict=False):
        line = text.find("\n", heading.end(), stop)
        keys = line + 1 if line >= 0 else stop
        yield _parted(heading[1], text[start:keys], text[keys:stop])


def _with_comments(text: str, start: int) -> int:
    """Return where the comments right above a heading begin."""
    while (above := text.rfind("\n", 0, max(start - 1, 0)) + 1) < start:
        if not text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start


def _parted(table: str, above: str, body: str) -> _Passage:
    keys = body.rstrip()
    keys = keys + "\n" if keys else ""
    return _Passage(table, above, keys, body[len(keys) :])


def _new(table: str, *, many: bool) -> _Passage:
    return _Passage(table, f"[[{table}]]\n" if many else f"[{table}]\n", "", "\n")


def _changed(block: _Passage, said: Mapping[str, Any], shape: FileShape) -> _Passage:
    """Return the block so that it says this, and keeps the keys that are none of ours."""
    import tomlkit

    document = tomlkit.parse(block.keys)
    for key in [key for key in document if key in shape.keys and key not in said]:
        del document[key]
    for key, value in said.items():
        if key in document and _says(document[key], value):
            continue
        if isinstance(value, dict):
            document.pop(key, None)
            for inner, words in value.items():
                document.append(tomlkit.key([key, inner]), tomlkit.item(words))
        else:
            document[key] = value
    return replace(block, keys=tomlkit.dumps(document))


def _says(item: Any, value: Any) -> bool:
    """Whether what stands in the file is already this; a number may stand there as a text."""
    plain = item.unwrap() if hasattr(item, "unwrap") else item
    return plain == value or (not isinstance(value, dict) and str(plain) == str(value))
