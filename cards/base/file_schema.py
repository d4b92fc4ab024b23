"""The checking of files that people write: a pydantic schema and raw tables in, a value out.

The schemas are written for pydantic's core, and what it has checked goes into our values: its
model classes would more than double the time that a person waits for `tagend check` to start.
"""

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from typing import Any, Generic, TypeVar, cast

from msgspec import NODEFAULT, Struct
from pydantic_core import CoreSchema, SchemaValidator, ValidationError
from pydantic_core.core_schema import TypedDictField, ValidationInfo

from tagend.layouts.base.faults import Refused

Schema = CoreSchema
T = TypeVar("T")

ANY: Schema = {"type": "any"}
FLAG: Schema = {"type": "bool", "strict": True}


class TableReader(Generic[T]):
    """Reads the tables of one schema; what checks them is built when the first one comes.

    `given` names the keys that a person doesn't write, such as a row's heading.
    """

    def __init__(self, schema: Schema, given: Sequence[str] = ()) -> None:
        self._schema = schema
        self._given = given

    def __call__(self, table: object, context: object = None) -> T:
        """Return the checked value, or raise `Refused` with every fault."""
        try:
            value: T = self._validator.validate_python(table, context=context)
        except ValidationError as error:
            from tagend.cards.base.schema_faults import known_keys, schema_faults

            keys = known_keys(self._schema)
            known = {key: keys[key] for key in keys if key not in self._given}
            raise Refused(*schema_faults(error, known)) from None
        return value

    @cached_property
    def _validator(self) -> SchemaValidator:
        return SchemaValidator(self._schema)


def table(cls: type[Struct], keys: Mapping[str, Schema]) -> Schema:
    """Return the schema of a TOML table that becomes a `cls`, whose fields its keys name.

    A field may end in the unit, `_mm`, or in `_` where its key is a word of Python, or have the
    plural of an array of tables. A key may be absent where its field has a default.
    """
    left_out = usual(cls)
    checked: Schema = {
        "type": "typed-dict",
        "fields": dict(_field(left_out, key, schema) for key, schema in keys.items()),
        "extra_behavior": "forbid",
    }
    return {
        "type": "function-after",
        "function": {"type": "no-info", "function": lambda found: cls(**found)},
        "schema": checked,
    }


def usual(cls: type[Struct]) -> dict[str, object]:
    """Return what each field is when left out; `NODEFAULT` where it has to be written."""
    names, given = cls.__struct_fields__, cls.__struct_defaults__
    needed = [NODEFAULT] * (len(names) - len(given))
    return dict(zip(names, (*needed, *given), strict=True))


def tables(item: Schema, least: int, most: int) -> Schema:
    """Return the schema of an array of tables, from `least` to `most` of them."""
    return {
        "type": "tuple",
        "items_schema": [item],
        "variadic_item_index": 0,
        "min_length": least,
        "max_length": most,
    }


def by(
    read: Callable[[object], object] | Callable[[object, ValidationInfo], object],
    examples: Sequence[str] = (),
    *,
    with_context: bool = False,
) -> Schema:
    """Return the schema of a text that `read` reads, refusing with `Refused`."""
    return cast(
        Schema,
        {
            "type": "function-plain",
            "function": {"type": "with-info" if with_context else "no-info", "function": read},
            "json_schema_input_schema": {"type": "str"},
            "metadata": {"pydantic_js_updates": {"examples": [*examples]}},
        },
    )


def choice(*words: str) -> Schema:
    """Return the schema of one of these words."""
    return {"type": "literal", "expected": [*words]}


def whole_number(least: int, most: int) -> Schema:
    """Return the schema of a number without quotes, from `least` to `most`."""
    return {"type": "int", "strict": True, "ge": least, "le": most}


def described(schema: Schema, told: str) -> Schema:
    """Return the schema with what an editor tells of it, as a sentence."""
    sentence = f"{told[0].upper()}{told[1:]}."
    updates = {"description": sentence, "examples": examples_of(schema)}
    return cast(Schema, {**schema, "metadata": {"pydantic_js_updates": updates}})


def examples_of(schema: Schema) -> list[Any]:
    """Return what a person may write; of a choice all there is."""
    match schema:
        case {"type": "bool"}:
            return [True]
        case {"type": "literal", "expected": list(words)}:
            return words
        case {"type": "int", "ge": least}:
            return [least]
        case {"type": "dict", "keys_schema": key, "values_schema": value}:
            return [{examples_of(key)[0]: examples_of(value)[0]}]
        case {"metadata": {"pydantic_js_updates": {"examples": list(examples)}}}:
            return examples
    return []


def _field(left_out: Mapping[str, object], key: str, schema: Schema) -> tuple[str, TypedDictField]:
    """Return the field that a key fills, and how."""
    name = next(name for name in (key, f"{key}_", f"{key}_mm", f"{key}s") if name in left_out)
    field: TypedDictField = {
        "type": "typed-dict-field",
        "schema": schema,
        "required": left_out[name] is NODEFAULT,
    }
    if key != name:
        field["validation_alias"] = key
    return name, field
