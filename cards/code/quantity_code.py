"""Quantities in the characters of a code: amounts and their units in, `22-28` or `.58MM` out."""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any, TypeVar

from msgspec.structs import replace

from tagend.cards.base.units import (
    DIAMETER_MM,
    STRENGTH_KG,
    Diameter,
    Length,
    Quantity,
    Span,
    Strength,
    parse_diameter,
    parse_length,
    parse_strength,
)
from tagend.cards.code.cursor import COMPARE, Cursor
from tagend.cards.recipe.fields import FIELDS
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import under
from tagend.layouts.base.quantities import LENGTH_MM

Q = TypeVar("Q", bound=Quantity)

# By kind of quantity, in the order of a code: the unit that goes without saying.
Units = Mapping[type[Quantity], str]

SILENT: Units = {Length: "in", Diameter: "in", Strength: "lb"}


def _pattern(numbers: str, units: Iterable[str]) -> re.Pattern[str]:
    return re.compile(f"{numbers}(?:{'|'.join(sorted(units, key=len, reverse=True)).upper()})?")


_NUMBER = r"(?:\d+\+\d+/\d+|\d+/\d+|\d*\.\d+|\d+)"
_LENGTH = rf"(?:{_NUMBER}FT(?={_NUMBER}IN))?{_NUMBER}"
# By kind: what it looks like, what reads it, and what a fault calls it.
_KINDS: Mapping[type[Quantity], tuple[re.Pattern[str], Callable[[object], Any], str]] = {
    Length: (_pattern(_LENGTH, LENGTH_MM), parse_length, "length, such as 30 or 7FT6IN"),
    Diameter: (
        _pattern(_NUMBER, [*DIAMETER_MM, "X"]),
        parse_diameter,
        "diameter, such as .023 or 4X",
    ),
    Strength: (_pattern(_NUMBER, STRENGTH_KG), parse_strength, "strength, such as 25"),
}
_ZERO_POINT = re.compile(r"\b0\.")
_THOUSANDTHS = re.compile(r"^0\.(?=\d{3}$)0*")  # of an inch: a hand says 0.023 as 23
_BARE_POINT = re.compile(r"(?<!\d)\.")
_MIXED = re.compile(r"(\d) (\d+/)")
_LETTER = re.compile("[a-z]")
_UNITS = re.compile(
    "/".join(f"({'|'.join(units)})" for units in (LENGTH_MM, DIAMETER_MM, STRENGTH_KG)),
    re.IGNORECASE,
)


def write_units(units: Units) -> str:
    """Return the field that says the units: `CM/MM/KG`."""
    return "/".join(units.values()).upper()


def write_quantity(quantity: Quantity, units: Units) -> str:
    """Return the quantity without a unit that goes without saying: `30`, `7FT6IN`, `1+1/2`."""
    number = quantity.plain.removesuffix(f" {units[type(quantity)]}")
    if type(quantity) is Diameter and units[Diameter] == "in":
        number = _THOUSANDTHS.sub("", number)
    if _LETTER.search(number):  # of feet and inches, the inches keep their unit
        number = quantity.plain
    joined = _MIXED.sub(r"\1+\2", number)
    return _ZERO_POINT.sub(".", joined).replace(" ", "").upper()


def write_span(span: Span, units: Units) -> str:
    """Return a length or a range of lengths: `22-28`."""
    return "-".join(dict.fromkeys(write_quantity(end, units) for end in (span.low, span.high)))


def read_units(cursor: Cursor) -> Units | None:
    """Read `units = length unit "/" diameter unit "/" strength unit`, if they stand here."""
    match = cursor.take(_UNITS)
    return dict(zip(SILENT, map(str.lower, match.groups()), strict=True)) if match else None


def read_quantity(cursor: Cursor, kind: type[Q], units: Units) -> Q:
    """Read a quantity of one kind.

        length = number [unit] | number "FT" number "IN"
        diameter = number [unit] | number "X"
        strength = number [unit]
        number = digits | [digits] "." digits | digits "/" digits | digits "+" digits "/" digits

    Raises `Refused` for any other text, and for a quantity that no leader has.
    """
    pattern, parse, called = _KINDS[kind]
    match = cursor.take(pattern)
    if match is None:
        raise cursor.fault(f"{cursor.rest[:8]!r} is no {called}", COMPARE)
    spelled = _BARE_POINT.sub("0.", match[0]).replace("+", " ")
    if kind is Diameter and units[kind] == "in" and spelled.isdigit():
        spelled = f"0.{spelled:0>3}"
    with under(cursor.where(match.start())):
        quantity: Q = parse(spelled if spelled[-1].isalpha() else f"{spelled} {units[kind]}")
    return replace(quantity, written=quantity.plain)


def read_span(cursor: Cursor, units: Units) -> Span:
    """Read `span = length ["-" length]`, the shorter one first."""
    low = read_quantity(cursor, Length, units)
    if not cursor.takes("-"):
        return Span(low, low, low.plain)
    high = read_quantity(cursor, Length, units)
    if low.mm >= high.mm:
        raise cursor.fault(f"{low}-{high} does not grow", "write the shorter length first")
    return Span(low, high, f"{low.plain} to {high.plain}")


def common_units(recipe: Recipe) -> Units:
    """Return the unit of each kind that most of a recipe's quantities have."""
    seen: dict[type[Quantity], Counter[str]] = {kind: Counter() for kind in SILENT}
    for quantity in _quantities(recipe):
        number, _, unit = quantity.plain.rpartition(" ")
        if number and not _LETTER.search(number):
            seen[type(quantity)][unit] += 1
    return {
        kind: max(seen[kind], key=seen[kind].__getitem__, default=SILENT[kind]) for kind in SILENT
    }


def _quantities(recipe: Recipe) -> Iterator[Quantity]:
    """Yield every quantity of a recipe that could go without its unit, the whole leader's first."""
    for home in (recipe, recipe.butt, recipe.reach, *recipe.sections):
        for field in FIELDS.get(type(home), ()):
            value = getattr(home, field.name)
            if isinstance(value, Quantity):
                yield value
            elif isinstance(value, Span):
                yield from dict.fromkeys((value.low, value.high))
