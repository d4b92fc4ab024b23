"""What a person said of a table's columns, kept in a small file: TOML in, answers out, and back.

A heading's meaning is written as one that needs no question: `"Size A" = "butt diameter (mm)"`.
"""

import json
from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct, field

from tagend.cards.base.toml_edit import with_value
from tagend.cards.base.toml_file import read_toml
from tagend.cards.tables.lexicon import unit_named
from tagend.cards.tables.meaning import Meaning, read_heading
from tagend.cards.tables.quantity_cells import UNITS
from tagend.layouts.base.faults import Fault, refuse_any, refused, under

_HEAD = """\
# What the columns of {name} mean; `tagend table` reads this file beside it. Behind each heading
# stands what it is taken as, as `tagend table --columns` has it; "" leaves a column out.
"""
_NONE: Mapping[str, str] = MappingProxyType({})


class Answers(Struct, frozen=True):
    """What is known of a table besides itself."""

    columns: Mapping[str, str] = field(default_factory=lambda: _NONE)  # meanings by heading
    units: Mapping[str, str] = field(default_factory=lambda: _NONE)  # of bare numbers by kind
    material: str | None = None  # of sections that name none


NOTHING = Answers()


def read_columns_file(data: bytes) -> Answers:
    """Return the answers in a file; raises `Refused` for a meaning or a unit that is none."""
    tables = read_toml(data)
    columns, missing = (_texts(tables, name) for name in ("columns", "missing"))
    refuse_any(
        Fault(f"[columns] {heading}", f"{text!r} means nothing of a leader", _LISTED)
        for heading, text in columns.items()
        if text and not means(text)
    )
    with under("[missing] units"):
        units = parse_units(missing["units"]) if "units" in missing else {}
    return Answers(columns, units, missing.get("material"))


_LISTED = "write one that `tagend table --columns` lists"


def means(text: str) -> Meaning | None:
    """Return what a heading means beyond doubt, or None."""
    read = read_heading(text)
    return None if read.doubt else read.meaning


def parse_units(text: str) -> dict[str, str]:
    """Read the units of lengths, diameters and strengths, `in, in, lb`, by kind.

    One of a single kind may stand alone: `lb`. Raises `Refused`.
    """
    spelled = [part.strip() for part in text.split(",") if part.strip()]
    kinds = iter(UNITS)
    units = {}
    for part in spelled:
        unit = unit_named(part)
        kind = next((kind for kind in kinds if unit in UNITS[kind]), None)
        if kind is None:
            instead = 'write those of lengths, diameters and strengths, such as "in, in, lb"'
            raise refused(f"{part[:20]!r} is no unit here", instead)
        units[kind] = unit
    return units


def with_answers(there: bytes | None, name: str, answers: Answers, *, anew: bool = False) -> bytes:
    """Return a columns file with the answers that it lacks; what is in it stays as it is.

    Answers given anew take the place of others.
    """
    data = _HEAD.format(name=name).encode() if there is None else there
    old = read_toml(data) if there else {}
    missing = {
        "units": ", ".join(answers.units[kind] for kind in UNITS if kind in answers.units),
        "material": answers.material or "",
    }
    if there is None:
        return (
            data + _table("missing", missing).encode() + _table("columns", answers.columns).encode()
        )
    for table, texts in (("missing", missing), ("columns", answers.columns)):
        said = _texts(old, table)
        for key in reversed(list(texts)):
            is_new = key not in said or (anew and texts[key] != said[key])
            if is_new and (texts[key] or table == "columns"):
                data = with_value(data, table, key, texts[key])
    return data


def _table(name: str, texts: Mapping[str, str]) -> str:
    said = {key: text for key, text in texts.items() if text or name == "columns"}
    lines = (f"{_quoted(key)} = {_quoted(text)}\n" for key, text in said.items())
    return f"\n[{name}]\n{''.join(lines)}" if said else ""


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _texts(tables: Mapping[str, object], name: str) -> dict[str, str]:
    table = tables.get(name, {})
    if not isinstance(table, dict) or not all(isinstance(text, str) for text in table.values()):
        raise refused("this is not a table of texts", 'write lines such as "Size" = "…"', name)
    return dict(table)
