"""The knots file: its tables and a person's own over them in, the checked knots out."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache
from itertools import pairwise
from typing import TypeVar, get_args

from pydantic_core import SchemaValidator

from tagend.cards.base.file_schema import Schema, check, known_keys, optional, table
from tagend.cards.base.named_table import (
    NAMING,
    RowSchema,
    read_named_table,
    read_our_file,
    row_schema,
)
from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.base.value_readers import by, list_of, one_of, text_line
from tagend.cards.practice.knots import (
    COUNT,
    ExtraTurns,
    Hold,
    Knot,
    Knots,
    Mixed,
    Place,
    Rung,
    Sides,
    Straight,
    Takes,
)
from tagend.cards.words.language import language_file
from tagend.layouts.base.faults import Fault, refused

T = TypeVar("T")

STEP_MOST = 70  # characters: a card's line

_GENERAL = ("hold", "tag", "loop", "fly_loop")


@cache
def load_knots() -> Knots:
    """Return the knots of our file."""
    return knots_with_own({})


def knots_with_own(own: Mapping[str, object], language: str = "en") -> Knots:
    """Return the knots of our file with a person's own over them, key by key.

    Steps and the like are in the language; names are not, since a recipe writes them. `own` has
    the shape of our file: knots by name, and `hold`, `tag`, `loop` and `fly_loop`.
    Raises `Refused` with every fault of the knots, or else of the rest.
    """
    ours = _translated(read_our_file("practice/knots.toml"), language)
    shelf = read_named_table(
        _kind(), ours, {name: own[name] for name in own if name not in _GENERAL}
    )
    general = {key: own.get(key, ours[key]) for key in _GENERAL}
    on_shelf = {"word": shelf.word, "rows": shelf.rows, "names": shelf.names, "codes": shelf.codes}
    return _read(Knots, {**on_shelf, **general})


def _translated(ours: dict[str, object], language: str) -> dict[str, object]:
    if language == "en":  # the words are there already, and every start would read one more file
        return ours
    for name, words in language_file(language)["knots"].items():
        knot = ours[name]
        assert isinstance(knot, dict)  # our own file
        knot |= {key: words[key] for key in ("steps", "seat", "caution") if key in words}
    return ours


@cache
def _kind() -> RowSchema[Knot]:
    return row_schema("knot", _KNOT, _contradictions)


def _read_sides(value: object) -> Sides:
    """Read `takes`: one table for both sides, or one each under `thick` and `thin`."""
    if isinstance(value, dict) and value.keys() & {"thick", "thin"}:
        return _read(Sides, value)
    takes = _read(Takes, value)
    return Sides(takes, takes)


def _read_rung(value: object) -> Rung:
    """Read a row of `turns`, where `each` stands for `thick` and `thin`."""
    if not isinstance(value, dict) or "each" not in value:
        return _read(Rung, value)
    if value.keys() & {"thick", "thin"}:
        raise refused("`each` stands beside a single side", "write `each`, or both sides")
    each = value["each"]
    if type(each) is not int:
        raise refused(f"{each!r} is not a whole number", "write a whole number", "each")
    rest = {key: value[key] for key in value if key != "each"}
    return _read(Rung, {"thick": each, "thin": each, **rest})


def _read_hold(value: object) -> tuple[Hold, ...]:
    rows = list_of(lambda row: _read(Hold, row), "row", 1, 9)(value)
    if not _descends(rows):
        raise refused(*_LADDER)
    return rows


_LADDER = (
    "the rows do not go down to the finest strand",
    "begin with the thickest `from`, and leave it out in the last row alone",
)


def _descends(rows: Sequence[Rung] | Sequence[Hold]) -> bool:
    sizes = [row.from_mm for row in rows]
    return sizes[-1] == 0 and all(thick > thin for thick, thin in pairwise(sizes))


def _contradictions(knot: Knot) -> Iterator[Fault]:
    """Yield what keys that are right by themselves say against one another."""
    thick, thin = knot.takes.thick, knot.takes.thin
    counted = set(COUNT.findall(" ".join(knot.steps)))
    if "joint" in knot.places and knot.mixed is None:
        yield Fault("mixed", "a joint must say it", 'write "yes", "no" or "hard nylon"')
    if thick != thin and knot.places != ("joint",):
        yield Fault("takes", "only a joint has two sides", "write one table for both")
    if knot.turns and not _descends(knot.turns):
        yield Fault("turns", *_LADDER)
    if not knot.turns and (thick.core or thin.core or counted):
        yield Fault("turns", "the steps or the core need turns", "write turns = [{ each = 5 }]")
    if knot.wire_only and not knot.wire:
        yield Fault("wire", "a knot for wire alone must hold on wire", "write wire = true")
    for word in sorted(counted - {"turns", "thick", "thin"}):
        yield Fault("steps", f"{{{word}}} counts nothing", "write {turns}, {thick} or {thin}")


def _read(part: type[T], value: object) -> T:
    schema, keys = _readers()[part]
    read: T = check(schema, value, None, keys)
    return read


@cache
def _readers() -> Mapping[type, tuple[SchemaValidator, Mapping[str, object]]]:
    return {part: (SchemaValidator(schema), known_keys(schema)) for part, schema in _PARTS.items()}


def _whole_number(least: int, most: int) -> Schema:
    return {"type": "int", "strict": True, "ge": least, "le": most}


_ANY: Schema = {"type": "any"}
_FLAG: Schema = {"type": "bool", "strict": True}
_DIAMETER = by(lambda value: parse_diameter(value).mm)
_LENGTH = by(lambda value: parse_length(value).mm)
_TURNS = _whole_number(0, 60)
_FROM = optional(_DIAMETER, Fraction(0))
_TAKES = table(
    Takes,
    {
        "core": optional(_whole_number(0, 3), 0),
        "strands": optional(_whole_number(1, 2), 1),
        "body": optional(_whole_number(0, 500), 0),
        "loop": optional(_FLAG, False),
        "hold": optional(_whole_number(0, 4), 1),
    },
)
_KNOT = table(
    Knot,
    {
        **NAMING,
        "places": by(list_of(one_of(*get_args(Place)), "place", 1, 5)),
        "straight": by(one_of(*get_args(Straight))),
        "takes": by(_read_sides),
        "steps": by(list_of(text_line(STEP_MOST), "step", 1, 8)),
        "seat": by(text_line(STEP_MOST)),
        "mixed": optional(by(one_of(*get_args(Mixed)))),
        "shock": optional(_FLAG, False),
        "wire": optional(_FLAG, False),
        "wire_only": optional(_FLAG, False),
        "thickest": optional(_DIAMETER),
        "largest_step": optional(_DIAMETER),
        "apart": optional(_FLAG, False),
        "whole_side_passes": optional(_FLAG, False),
        "tapered_only": optional(_FLAG, False),
        "turns": optional(by(list_of(_read_rung, "row", 1, 9)), ()),
        "extra_turns": optional(
            table(ExtraTurns, {"step": _DIAMETER, "thin": _TURNS}, {"step": "step_mm"})
        ),
        "caution": optional(by(text_line(STEP_MOST))),
    },
    {"thickest": "thickest_mm", "largest_step": "largest_step_mm"},
)
_KNOTS = table(
    Knots,
    {
        **dict.fromkeys(("word", "rows", "names", "codes"), _ANY),
        "hold": by(_read_hold),
        "tag": _LENGTH,
        "loop": _LENGTH,
        "fly_loop": _LENGTH,
    },
    {"tag": "tag_mm", "loop": "loop_mm", "fly_loop": "fly_loop_mm"},
)
_PARTS: Mapping[type, Schema] = {
    Rung: table(Rung, {"thick": _TURNS, "thin": _TURNS, "from": _FROM}, {"from": "from_mm"}),
    Hold: table(
        Hold, {"length": _LENGTH, "from": _FROM}, {"length": "length_mm", "from": "from_mm"}
    ),
    Takes: _TAKES,
    Sides: table(Sides, {"thick": _TAKES, "thin": _TAKES}),
    Knots: _KNOTS,
}
