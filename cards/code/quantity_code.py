"""Quantities in the characters of a code: amounts and their units in, `22-28` or `.58MM` out."""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple, TypeVar

from tagend.cards.base.units import (
    DIAMETER_MM,
    LENGTH_MM,
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
from tagend.layouts.base.faults import Refused

Q = TypeVar("Q", bound=Quantity)


class Units(NamedTuple):
    """The units that go without saying."""

    length: str
    diameter: str
    strength: str

    def __str__(self) -> str:
        return "/".join(self).upper()


SILENT = Units("in", "in", "lb")


def _pattern(numbers: str, units: Iterable[str]) -> re.Pattern[str]:
    return re.compile(f"{numbers}(?:{'|'.join(sorted(units, key=len, reverse=True)).upper()})?")


_NUMBER = r"(?:\d+\+\d+/\d+|\d+/\d+|\d*\.\d+|\d+)"
_LENGTH = _pattern(rf"(?:{_NUMBER}FT(?={_NUMBER}IN))?{_NUMBER}", LENGTH_MM)
_DIAMETER = _pattern(_NUMBER, [*DIAMETER_MM, "X"])
_STRENGTH = _pattern(_NUMBER, STRENGTH_KG)
_ZERO_POINT = re.compile(r"\b0\.")
_BARE_POINT = re.compile(r"(?<!\d)\.")
_MIXED = re.compile(r"(\d) (\d+/)")
_LETTER = re.compile("[a-z]")
_UNITS = re.compile(
    "/".join(f"({'|'.join(units)})" for units in (LENGTH_MM, DIAMETER_MM, STRENGTH_KG)),
    re.IGNORECASE,
)


def write_quantity(quantity: Quantity, unit: str) -> str:
    """Return the quantity without its unit where that is `unit`: `30`, `7FT6IN`, `1+1/2`, `4X`."""
    number = quantity.plain.removesuffix(f" {unit}")
    if _LETTER.search(number):  # of feet and inches, the inches keep their unit
        number = quantity.plain
    joined = _MIXED.sub(r"\1+\2", number)
    return _ZERO_POINT.sub(".", joined).replace(" ", "").upper()


def write_span(span: Span, unit: str) -> str:
    """Return a length or a range of lengths: `22-28`."""
    ends = dict.fromkeys((write_quantity(span.low, unit), write_quantity(span.high, unit)))
    return "-".join(ends)


def read_units(cursor: Cursor) -> Units | None:
    """Read `units = length unit "/" diameter unit "/" strength unit`, if they stand here."""
    match = cursor.take(_UNITS)
    return Units(*(unit.lower() for unit in match.groups())) if match else None


def read_length(cursor: Cursor, unit: str) -> Length:
    """Read `length = number [unit] | number "FT" number "IN"`.

    `number = digits | [digits] "." digits | digits "/" digits | digits "+" digits "/" digits`.
    Raises `Refused` for any other text, and for a length that no leader has.
    """
    return _read(cursor, _LENGTH, unit, parse_length, "length, such as 30 or 7FT6IN")


def read_span(cursor: Cursor, unit: str) -> Span:
    """Read `span = length ["-" length]`, the shorter one first."""
    low = read_length(cursor, unit)
    if not cursor.takes("-"):
        return Span(low, low, low.plain)
    high = read_length(cursor, unit)
    if low.mm >= high.mm:
        raise cursor.fault(f"{low}-{high} does not grow", "write the shorter length first")
    return Span(low, high, f"{low.plain} to {high.plain}")


def read_diameter(cursor: Cursor, unit: str) -> Diameter:
    """Read `diameter = number [unit] | number "X"`."""
    return _read(cursor, _DIAMETER, unit, parse_diameter, "diameter, such as .023 or 4X")


def read_strength(cursor: Cursor, unit: str) -> Strength:
    """Read `strength = number [unit]`."""
    return _read(cursor, _STRENGTH, unit, parse_strength, "strength, such as 25")


def common_units(recipe: Recipe) -> Units:
    """Return the unit of each kind that most of a recipe's quantities have."""
    seen: dict[type[Quantity], Counter[str]] = {Length: Counter(), Diameter: Counter()}
    seen[Strength] = Counter()
    for quantity in _quantities(recipe):
        number, _, unit = quantity.plain.rpartition(" ")
        if number and not _LETTER.search(number):
            seen[type(quantity)][unit] += 1
    common = (counts.most_common(1) for counts in seen.values())
    return Units(*(top[0][0] if top else unit for top, unit in zip(common, SILENT, strict=True)))


def _quantities(recipe: Recipe) -> Iterator[Quantity]:
    """Yield every quantity of a recipe that could go without its unit, the whole leader's first."""
    for home in (recipe, recipe.butt, recipe.reach, *recipe.sections):
        for field in FIELDS.get(type(home), ()):
            value = getattr(home, field.name)
            if isinstance(value, Quantity):
                yield value
            elif isinstance(value, Span):
                yield from dict.fromkeys((value.low, value.high))


def _read(
    cursor: Cursor, pattern: re.Pattern[str], unit: str, parse: Callable[[object], Q], kind: str
) -> Q:
    match = cursor.take(pattern)
    if match is None:
        raise cursor.fault(f"{cursor.rest[:8]!r} is no {kind}", COMPARE)
    spelled = _BARE_POINT.sub("0.", match[0]).replace("+", " ")
    try:
        quantity = parse(spelled if spelled[-1].isalpha() else f"{spelled} {unit}")
    except Refused as refusal:
        raise cursor.placed(refusal, match.start()) from None
    return replace(quantity, written=quantity.plain)
