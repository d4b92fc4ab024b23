"""The checking of files that people write: a pydantic schema and raw tables in, a value out.

The schemas are written for pydantic's core, which builds our dataclasses itself: its model
classes would more than double the time that a person waits for `tagend check` to start.
"""

import unicodedata
from collections.abc import Callable, Mapping
from typing import Any, cast

from pydantic_core import CoreSchema, ErrorDetails, SchemaValidator, ValidationError
from pydantic_core.core_schema import DataclassField, ValidationInfo

from tagend.layouts.base.faults import Fault, Refused, below, refused
from tagend.layouts.base.near_names import suggestion

Schema = CoreSchema


def table(cls: type, keys: Mapping[str, Schema], fields: Mapping[str, str] | None = None) -> Schema:
    """Return the schema of a TOML table that becomes a `cls`.

    `keys` are the table's keys; `fields` gives the field of the few that are not called alike.
    """
    names = {key: (fields or {}).get(key, key) for key in keys}
    return {
        "type": "dataclass",
        "cls": cls,
        "fields": list(names.values()),
        "slots": True,
        "frozen": True,
        "config": {"extra_fields_behavior": "forbid", "title": cls.__name__.lower()},
        "schema": {
            "type": "dataclass-args",
            "dataclass_name": cls.__name__,
            "fields": [_field(key, names[key], schema) for key, schema in keys.items()],
        },
    }


def tables(item: Schema, least: int, most: int) -> Schema:
    """Return the schema of an array of tables, from `least` to `most` of them."""
    return {
        "type": "tuple",
        "items_schema": [item],
        "variadic_item_index": 0,
        "min_length": least,
        "max_length": most,
    }


def optional(schema: Schema, default: object = None) -> Schema:
    """Return the schema of a key that may be absent."""
    return {"type": "default", "schema": schema, "default": default}


def parsed(
    parse: Callable[[object], object] | Callable[[object, ValidationInfo], object],
    description: str,
    examples: list[str],
    *,
    with_context: bool = False,
) -> Schema:
    """Return the schema of a text that `parse` reads, refusing with `Refused`."""
    return cast(
        Schema,
        {
            "type": "function-plain",
            "function": {"type": "with-info" if with_context else "no-info", "function": parse},
            "json_schema_input_schema": {"type": "str"},
            "metadata": {"pydantic_js_updates": {"description": description, "examples": examples}},
        },
    )


def text(most: int, description: str) -> Schema:
    """Return the schema of free text of 1 to `most` characters, in composed form (NFC)."""
    return parsed(lambda value: plain_text(value, most), description, [])


def plain_text(value: object, most: int) -> str:
    """Return the text composed and trimmed.

    Raises `Refused` for what no card can show: control, direction and picture characters.
    """
    if not isinstance(value, str):
        raise refused("this is not a text in quotes", 'write a text such as "Sandbar eight"')
    composed = unicodedata.normalize("NFC", value).strip()
    if not composed:
        raise refused("this text is empty", f"write 1 to {most} characters")
    if len(composed) > most:
        raise refused(f"this text has {len(composed)} characters", f"write at most {most}")
    for char in composed:
        if not _is_writing(char):
            name = unicodedata.name(char, "a control character").lower()
            raise refused(f"U+{ord(char):04X} ({name}) cannot be printed", "leave it out")
    return composed


def check(
    schema: SchemaValidator, data: object, context: object, keys: Mapping[str, object]
) -> Any:
    """Return the checked value, or raise `Refused` with every fault.

    `keys` is the tree of known keys, so that a misspelt one is met with the near one.
    """
    try:
        return schema.validate_python(data, context=context)
    except ValidationError as error:
        faults = [_faults(detail, keys) for detail in error.errors(include_url=False)]
        raise Refused(*(fault for row in faults for fault in row)) from None


def known_keys(schema: Schema) -> dict[str, object]:
    """Return the tree of keys that a table's schema knows: a key's own keys, or none."""
    inner = cast(dict[str, object], schema)
    while inner["type"] in ("default", "tuple"):
        items = inner["items_schema"] if inner["type"] == "tuple" else [inner["schema"]]
        inner = cast(list[dict[str, object]], items)[0]
    if inner["type"] != "dataclass":
        return {}
    arguments = cast(dict[str, list[dict[str, object]]], inner["schema"])
    return {
        str(field.get("validation_alias", field["name"])): known_keys(cast(Schema, field["schema"]))
        for field in arguments["fields"]
    }


def _field(key: str, name: str, schema: Schema) -> DataclassField:
    field: DataclassField = {"type": "dataclass-field", "name": name, "schema": schema}
    if key != name:
        field["validation_alias"] = key
    return field


def _is_writing(char: str) -> bool:
    """Whether a character is writing: no control, format, private or picture character."""
    category = unicodedata.category(char)
    if category == "So":  # signs such as ° and № are writing, pictographs are not
        return ord(char) < 0x2300
    return category[0] != "C" and category not in ("Zl", "Zp")


def _faults(detail: ErrorDetails, keys: Mapping[str, object]) -> tuple[Fault, ...]:
    where = _where(detail["loc"])
    kind, context = detail["type"], detail.get("ctx", {})
    if kind == "value_error":
        error = context["error"]
        if not isinstance(error, Refused):
            raise error
        return tuple(below(where, fault) for fault in error.faults)
    if kind == "unexpected_keyword_argument":
        return (_unknown_key(detail["loc"], keys),)
    if kind == "too_short" and len(detail["input"]) >= context["min_length"]:
        return ()  # pydantic counts the items without fault, and those have been told of
    if kind == "missing":
        key = detail["loc"][-1]
        instead = (
            f"write a heading [[{key}]]" if _level(detail["loc"], keys) else f"write {key} = …"
        )
        return (Fault(where, "this key is missing", instead),)
    return (Fault(where, *_words(kind, context, f"{detail['input']!r:.40}")),)


def _words(kind: str, context: Mapping[str, object], shown: str) -> tuple[str, str]:
    """Return what was found and what to write, for the faults that pydantic itself finds."""
    match kind:
        case "dataclass_type" | "dict_type":
            return "this is not a table", "write its keys under a heading in brackets"
        case "tuple_type":
            return "this is not a list of tables", "write each under a heading in double brackets"
        case "too_short":
            return "there is none", "write at least one"
        case "too_long":
            return f"there are {context['actual_length']}", f"write at most {context['max_length']}"
        case "literal_error":
            return f"{shown} is not known", f"write one of: {context['expected']}"
        case "bool_type":
            return f"{shown} is not true or false", "write true or false, without quotes"
        case "int_type" | "int_from_float" | "int_parsing":
            return f"{shown} is not a whole number", "write a whole number, without quotes"
        case "greater_than_equal" | "less_than_equal":
            return f"{shown} is out of range", f"write a number {_bound(kind, context)}"
    return f"{shown} cannot be used", "see the README for what this key takes"


def _bound(kind: str, context: Mapping[str, object]) -> str:
    return f"from {context['ge']}" if kind == "greater_than_equal" else f"up to {context['le']}"


def _unknown_key(loc: tuple[int | str, ...], keys: Mapping[str, object]) -> Fault:
    key = str(loc[-1])
    instead = suggestion(key, list(_level(loc[:-1], keys)))
    return Fault(_where(loc[:-1]), f"no key is called {key[:40]!r}", instead)


def _level(loc: tuple[int | str, ...], keys: Mapping[str, object]) -> Mapping[str, object]:
    """Return the keys that are known below a place."""
    for step in loc:
        if isinstance(step, str):
            keys = cast(Mapping[str, object], keys[step])
    return keys


def _where(loc: tuple[int | str, ...]) -> str:
    """Return a path as people count: `section 2, length` for ("section", 1, "length")."""
    words: list[str] = []
    for step in loc:
        if isinstance(step, int):
            words[-1] = f"{words[-1]} {step + 1}"
        elif step != "[key]":  # a wrong key stands for itself
            words.append(step)
    return ", ".join(words)
