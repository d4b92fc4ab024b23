"""A recipe file and a draft of it in; the file with what was changed, and all else as it was, out.

A file is taken as its blocks: the lines before the first heading, and each heading with the
comments right above it and the lines below it. Blocks move, come and go whole; within a block only
the lines of changed keys do.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from tagend.cards.base.toml_edit import edited
from tagend.cards.recipe.fields import FIELDS
from tagend.cards.recipe.recipe import Recipe

_HEADING = re.compile(r"^[ \t]*\[\[?[ \t]*([\w.-]+)[ \t]*\]\]?", re.MULTILINE)
_KEYS = {field.key for cls in FIELDS for field in FIELDS[cls]}
_TABLES = {field.key: field for field in FIELDS[Recipe] if field.part}


Places = Mapping[str, Sequence[int | None]]


@dataclass(frozen=True, slots=True)
class _Block:
    """A part of the file: of which table, what stands above its keys, its keys, what is below."""

    table: str
    above: str
    keys: str
    below: str = "\n"


def with_draft(data: bytes, tables: Mapping[str, Any], was: Places) -> bytes:
    """Return the file so that it says what the tables say.

    `was` has, for the sections and the variants, which of the file each of them is, counted from 0.
    A file may be written in ways that this does not know: whoever calls reads the result again.
    """
    return edited(data, lambda text: _with_tables(text.replace("\r\n", "\n"), tables, was))


def _with_tables(text: str, tables: Mapping[str, Any], was: Places) -> str:
    blocks = list(_blocks(text))
    there: dict[str, list[_Block]] = {}
    for block in blocks:
        there.setdefault(block.table, []).append(block)
    made = {"": [_changed(there[""][0], _plain(tables))]}
    for key, field in _TABLES.items():
        said = tables.get(key, [] if field.count else {})
        rows = said if field.count else [said] if said else []
        old = there.get(key, [])
        places = was[key] if field.count else [0]
        made[key] = [
            _changed(
                old[place]
                if place is not None and place < len(old)
                else _new(key, many=bool(field.count)),
                row,
            )
            for place, row in zip(places, rows, strict=False)
        ]
    *first, last = _in_order(blocks, made)
    whole = "".join(block.above + block.keys + (block.below or "\n") for block in first)
    is_end = last.table == blocks[-1].table and last.below == blocks[-1].below
    return whole + last.above + last.keys + (last.below if is_end else "")


def _in_order(blocks: Sequence[_Block], made: Mapping[str, Sequence[_Block]]) -> Iterator[_Block]:
    """Yield the new blocks, each kind where its first one was; what is new, in the usual order."""
    order = list(dict.fromkeys(block.table for block in blocks))
    usual = ["", *_TABLES]
    for key in usual:
        if key not in order:
            before = [order.index(each) for each in usual[: usual.index(key)] if each in order]
            order.insert(max(before) + 1, key)
    for key in order:
        yield from made.get(key, [block for block in blocks if block.table == key])


def _blocks(text: str) -> Iterator[_Block]:
    starts = [_with_comments(text, found.start()) for found in _HEADING.finditer(text)]
    tables = [found[1] for found in _HEADING.finditer(text)]
    ends = [found.end() for found in _HEADING.finditer(text)]
    first = starts[0] if starts else len(text)
    yield _parted("", "", text[:first])
    for place, (table, start, end) in enumerate(zip(tables, starts, ends, strict=True)):
        stop = starts[place + 1] if place + 1 < len(starts) else len(text)
        line = text.find("\n", end, stop)
        keys = line + 1 if line >= 0 else stop
        yield _parted(table, text[start:keys], text[keys:stop])


def _with_comments(text: str, start: int) -> int:
    """Return where the comments right above a heading begin."""
    while (above := text.rfind("\n", 0, max(start - 1, 0)) + 1) < start:
        if not text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start


def _parted(table: str, above: str, body: str) -> _Block:
    keys = body.rstrip()
    keys = keys + "\n" if keys else ""
    return _Block(table, above, keys, body[len(keys) :])


def _new(table: str, *, many: bool) -> _Block:
    return _Block(table, f"[[{table}]]\n" if many else f"[{table}]\n", "", "\n")


def _plain(tables: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in tables.items() if key not in _TABLES}


def _changed(block: _Block, said: Mapping[str, Any]) -> _Block:
    """Return the block so that it says this, and keeps the keys that are none of a recipe's."""
    import tomlkit

    document = tomlkit.parse(block.keys)
    for key in [key for key in document if key in _KEYS and key not in said]:
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
