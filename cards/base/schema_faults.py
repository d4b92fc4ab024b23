"""What a schema found wrong in a file's tables: pydantic's errors in, faults for a person out."""

from collections.abc import Iterator, Mapping
from typing import cast

from pydantic_core import CoreSchema, ErrorDetails, ValidationError

from tagend.layouts.base.faults import TOLD, Fault, Refused, below
from tagend.layouts.base.near_names import suggestion


def schema_faults(error: ValidationError, keys: Mapping[str, object]) -> Iterator[Fault]:
    """Yield every fault; `keys` is the tree of known keys, to meet a misspelt one with its like."""
    for place, detail in enumerate(error.errors(include_url=False)):
        if place > TOLD and detail["type"] == "extra_forbidden":
            yield _unknown_key(detail["loc"])  # a file may have a hundred thousand
        else:
            yield from _faults(detail, keys)


def known_keys(schema: CoreSchema) -> dict[str, object]:
    """Return the tree of keys that a table's schema knows: a key's own keys, or none."""
    inner = cast(dict[str, object], schema)
    while inner["type"] in ("tuple", "function-after"):
        items = inner["items_schema"] if inner["type"] == "tuple" else [inner["schema"]]
        inner = cast(list[dict[str, object]], items)[0]
    if inner["type"] != "typed-dict":
        return {}
    fields = cast(dict[str, dict[str, object]], inner["fields"])
    return {
        str(field.get("validation_alias", name)): known_keys(cast(CoreSchema, field["schema"]))
        for name, field in fields.items()
    }


def _faults(detail: ErrorDetails, keys: Mapping[str, object]) -> tuple[Fault, ...]:
    where = _where(detail["loc"])
    kind, context = detail["type"], detail.get("ctx", {})
    if kind == "value_error":
        error = context["error"]
        if not isinstance(error, Refused):
            raise error
        return tuple(below(where, fault) for fault in error.faults)
    if kind == "extra_forbidden":
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
        case "dict_type":
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
        case "greater_than_equal":
            return f"{shown} is out of range", f"write a number from {context['ge']}"
        case "less_than_equal":
            return f"{shown} is out of range", f"write a number up to {context['le']}"
    return f"{shown} cannot be used", "see the README for what this key takes"


def _unknown_key(loc: tuple[int | str, ...], keys: Mapping[str, object] | None = None) -> Fault:
    """Return the fault of a key, with what may have been meant if the known keys are given."""
    key = str(loc[-1])
    instead = "" if keys is None else suggestion(key, list(_level(loc[:-1], keys)))
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
