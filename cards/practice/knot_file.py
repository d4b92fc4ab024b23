"""The knots file: its tables and a person's own over them in, the checked knots out."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import pairwise
from typing import get_args

from cfractions import Fraction

from tagend.cards.base.file_schema import ANY, FLAG, TableReader, by, choice, table, whole_number
from tagend.cards.base.named_table import NAMING, RowReader, read_named_table, read_our_file
from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.base.value_readers import list_of, one_of, text_line
from tagend.cards.practice.knots import (
    COUNT,
    LENGTHS,
    TIED,
    Around,
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
from tagend.cards.practice.materials import Strand
from tagend.layouts.base.faults import Fault, refused

STEP_MOST = 70  # characters: a card's line

_GENERAL = ("hold", "tag", "loop", "joint_loop", "fly_loop")
_ON_SHELF = ("word", "rows", "names", "codes")  # of any table of named rows


@cache
def load_knots() -> Knots:
    """Return the knots of our file."""
    return knots_with_own({})


def knots_with_own(own: Mapping[str, object]) -> Knots:
    """Return the knots of our file with a person's own over them, key by key.

    `own` has the shape of our file: knots by name, and `hold`, `tag` and the loops.
    Raises `Refused` with every fault of the knots, or else of the rest.
    """
    ours = read_our_file("practice/knots.toml")
    own_knots = {name: own[name] for name in own if name not in _GENERAL}
    shelf = read_named_table(_read_knot, ours, own_knots)
    on_shelf = {key: getattr(shelf, key) for key in _ON_SHELF}
    return _read_knots({**on_shelf, **{key: own.get(key, ours[key]) for key in _GENERAL}})


def _read_sides(value: object) -> Sides[Takes]:
    """Read `takes`: one table for both sides, or one each under `heavy` and `light`."""
    if isinstance(value, dict) and value.keys() & {"heavy", "light"}:
        return _read_both(value)
    takes = _read_takes(value)
    return Sides(takes, takes)


def _read_loop(value: object) -> bool | Fraction:
    """Read whether a side ends in a loop: `true`, or the size that it has here."""
    return value if isinstance(value, bool) else parse_length(value).mm


def _read_ratio(value: object) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 1 <= value <= 10:
        raise refused(f"{value!r} is no likely ratio of diameters", "write a number such as 1.4")
    return Fraction(str(value))


def _read_rung(value: object) -> Rung:
    """Read a row of `turns`, where `each` stands for `heavy` and `light`."""
    if not isinstance(value, dict) or "each" not in value:
        return _read_row(value)
    if value.keys() & {"heavy", "light"}:
        raise refused("`each` stands beside a single side", "write `each`, or both sides")
    each = value["each"]
    if type(each) is not int:
        raise refused(f"{each!r} is not a whole number", "write a whole number", "each")
    rest = {key: value[key] for key in value if key != "each"}
    return _read_row({"heavy": each, "light": each, **rest})


def _read_hold(value: object) -> tuple[Hold, ...]:
    rows = list_of(_read_hold_row, "row", 1, 9)(value)
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
    thick, thin = knot.takes.heavy, knot.takes.light
    counted = set(COUNT.findall(" ".join(knot.steps))) - {*LENGTHS, *TIED}
    if "joint" in knot.places and knot.mixed is None:
        yield Fault("mixed", "a joint must say it", 'write "yes", "no" or "hard nylon"')
    if thick != thin and knot.places != ("joint",):
        yield Fault("takes", "only a joint has two sides", "write one table for both")
    sided = knot.extra_turns is not None or any(rung.heavy != rung.light for rung in knot.turns)
    if sided and "joint" not in knot.places:
        yield Fault("turns", "only a joint has two sides", "write `each`, and no extra_turns")
    if knot.turns and not _descends(knot.turns):
        yield Fault("turns", *_LADDER)
    if not (knot.turns or knot.ties) and (thick.core or thin.core or counted):
        yield Fault("turns", "the steps or the core need turns", "write turns = [{ each = 5 }]")
    for word in sorted(counted - {"turns", "heavy", "light"}):
        yield Fault("steps", f"{{{word}}} counts nothing", "write {turns}, {heavy} or {light}")


_DIAMETER = by(lambda value: parse_diameter(value).mm)
_LENGTH = by(lambda value: parse_length(value).mm)
_TURNS = whole_number(0, 60)
_TAKES = table(
    Takes,
    {
        "core": whole_number(0, 3),
        "strands": whole_number(1, 2),
        "around": choice(*get_args(Around)),
        "body": whole_number(0, 500),
        "loop": by(_read_loop),
        "hold": whole_number(0, 4),
    },
)
_read_knot: RowReader[Knot] = RowReader(
    "knot",
    table(
        Knot,
        {
            **NAMING,
            "roles": by(list_of(text_line(20), "role", 2, 2)),
            "on": by(list_of(one_of(*get_args(Strand)), "strand", 1, 4)),
            "ties": by(list_of(text_line(40), "knot", 1, 9)),
            **dict.fromkeys(("lapped", "comes_made", "shock"), FLAG),
            "places": by(list_of(one_of(*get_args(Place)), "place", 1, 5)),
            "straight": by(one_of(*get_args(Straight))),
            "takes": by(_read_sides),
            "steps": by(list_of(text_line(STEP_MOST), "step", 1, 8)),
            "seat": by(text_line(STEP_MOST)),
            "mixed": by(one_of(*get_args(Mixed))),
            "thickest": _DIAMETER,
            "largest_ratio": by(_read_ratio),
            **dict.fromkeys(("apart", "whole_side_passes", "tapered_only", "figure"), FLAG),
            "turns": by(list_of(_read_rung, "row", 1, 9)),
            "extra_turns": table(
                ExtraTurns, {"ratio": by(_read_ratio), "light": _TURNS, "most": _TURNS}
            ),
            "caution": by(text_line(STEP_MOST)),
        },
    ),
    _contradictions,
)
_read_knots: TableReader[Knots] = TableReader(
    table(
        Knots,
        {
            **dict.fromkeys(_ON_SHELF, ANY),
            "hold": by(_read_hold),
            **dict.fromkeys(("tag", "loop", "joint_loop", "fly_loop"), _LENGTH),
        },
    )
)
_read_row: TableReader[Rung] = TableReader(
    table(Rung, {"heavy": _TURNS, "light": _TURNS, "from": _DIAMETER})
)
_read_hold_row: TableReader[Hold] = TableReader(table(Hold, {"length": _LENGTH, "from": _DIAMETER}))
_read_takes: TableReader[Takes] = TableReader(_TAKES)
_BOTH = {"heavy": _TAKES, "light": _TAKES}
_read_both: TableReader[Sides[Takes]] = TableReader(table(Sides, _BOTH))
