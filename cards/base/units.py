"""Lengths, diameters and strengths: text with a unit in, an exact amount and its spelling out."""

import re
from collections.abc import Callable, Mapping
from decimal import ROUND_CEILING, ROUND_FLOOR, Context, Decimal
from functools import lru_cache, wraps
from typing import TypeVar

from cfractions import Fraction
from msgspec import Struct

from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import (
    INCH_MM,
    LENGTH_MM,
    POUND_KG,
    Measured,
    plain,
    quoted,
    read_length,
    read_measured,
    with_unit,
)

DIAMETER_MM = {"in": INCH_MM, "thou": INCH_MM / 1000, "mm": Fraction(1)}
STRENGTH_KG = {"lb": POUND_KG, "kg": Fraction(1)}

_UP, _DOWN = Context(prec=2, rounding=ROUND_CEILING), Context(prec=3, rounding=ROUND_FLOOR)

# Bounds that only a slip of the pen passes: a 60 m leader, a rope, a strand finer than a hair.
LENGTH_BOUNDS_MM = (Fraction(1), Fraction(60_000))
LINE_BOUNDS_MM = (Fraction(1), Fraction(10_000_000))
DIAMETER_BOUNDS_MM = (Fraction(3, 100), Fraction(3))
STRENGTH_BOUNDS_KG = (Fraction(1, 10), Fraction(250))


class Quantity(Struct, frozen=True):
    """An exact amount in the base unit of its kind.

    `plain` spells it in ASCII with the unit and digits it was written in, `written` is the
    text itself. Two quantities are equal when amount and `plain` are.
    """

    amount: Fraction
    plain: str
    written: str

    def __eq__(self, other: object) -> bool:
        if type(other) is not type(self):
            return NotImplemented
        return self.plain == other.plain and self.amount == other.amount

    def __hash__(self) -> int:
        return hash(self.plain)

    def __str__(self) -> str:
        return self.written

    @property
    def unit(self) -> str:
        """The unit it ends in: `in` for 7 ft 6 in, `X` for 4X."""
        return "X" if self.plain.endswith("X") else self.plain.rsplit(" ", 1)[1]


class Length(Quantity, frozen=True):
    """A length; its base unit is the millimetre."""

    @property
    def mm(self) -> Fraction:
        return self.amount

    @property
    def in_inches(self) -> bool:
        """Whether it is written in inches, feet or yards."""
        return self.unit in ("in", "ft", "yd")


class Diameter(Quantity, frozen=True):
    """A strand's diameter; its base unit is the millimetre."""

    @property
    def mm(self) -> Fraction:
        return self.amount

    @property
    def thou(self) -> Fraction:
        """The diameter in thousandths of an inch."""
        return self.amount / DIAMETER_MM["thou"]


class Strength(Quantity, frozen=True):
    """What the spool says its strand bears; its base unit is the kilogram."""

    @property
    def kg(self) -> Fraction:
        return self.amount


class Span(Struct, frozen=True):
    """A length that may lie anywhere from `low` to `high`; a plain length has both the same."""

    low: Length
    high: Length
    written: str

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Span):
            return NotImplemented
        return (self.low, self.high) == (other.low, other.high)

    def __hash__(self) -> int:
        return hash((self.low, self.high))

    @property
    def plain(self) -> str:
        if self.low == self.high:
            return self.low.plain
        if self.low.unit == self.high.unit and self.low.plain.count(" ") < 3:
            return f"{self.low.plain.rsplit(' ', 1)[0]} to {self.high.plain}"
        return f"{self.low.plain} to {self.high.plain}"

    def __str__(self) -> str:
        return self.written


T = TypeVar("T")


def _kept(read: Callable[[object], T]) -> Callable[[object], T]:
    """Keep what the last texts mean: recipes write the same sizes again and again."""
    read_text = lru_cache(maxsize=4096)(read)

    @wraps(read)
    def kept(written: object) -> T:
        return read_text(written) if isinstance(written, str) else read(written)

    return kept


@_kept
def parse_length(written: object) -> Length:
    """Read a length such as `30 in`, `7 1/2 ft`, `7' 6"`, `¾ in` or `76 cm`.

    Raises `Refused` for a bare number, an unknown unit or a length no leader has.
    """
    found = read_length(written, _LENGTH_HINT)
    return Length(*_within(found, LENGTH_BOUNDS_MM, "length", LENGTH_MM, written))


def parse_line_length(written: object) -> Length:
    """Read a length of line on a spool, `40 yd` or `100 m`, up to 10 km."""
    found = read_length(written, _LENGTH_HINT)
    return Length(*_within(found, LINE_BOUNDS_MM, "length", LENGTH_MM, written))


@_kept
def parse_span(written: object) -> Span:
    """Read a length, or two with `to` between them: `22 to 28 in`."""
    before, to, after = plain(written, _LENGTH_HINT).partition(" to ")
    if not to:
        length = parse_length(written)
        return Span(length, length, length.written)
    high = parse_length(after)
    low = parse_length(with_unit(before, high.unit))
    if low.mm >= high.mm:
        raise refused(f"{quoted(written)} does not grow", "write the shorter length first")
    return Span(low, high, str(written).strip())


@_kept
def parse_diameter(written: object) -> Diameter:
    """Read a diameter such as `0.023 in`, `23 thou`, `0.58 mm` or `4X`.

    X sizes go from 0X to 8X, where thousandths = 11 - X (common practice in print; see
    tests/outside). The thicker sizes are written in two ways that look alike, so they are refused.
    """
    text = plain(written, _DIAMETER_HINT)
    if re.search(r"\d ?x$|^x ?\d", text):
        return _x_size(text, str(written).strip())
    found = read_measured(written, DIAMETER_MM, "diameter", _DIAMETER_HINT)
    return Diameter(*_within(found, DIAMETER_BOUNDS_MM, "diameter", DIAMETER_MM, written))


@_kept
def parse_strength(written: object) -> Strength:
    """Read a strength such as `25 lb` or `11.3 kg`."""
    found = read_measured(written, STRENGTH_KG, "strength", _STRENGTH_HINT)
    return Strength(*_within(found, STRENGTH_BOUNDS_KG, "strength", STRENGTH_KG, written))


_LENGTH_HINT = 'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
_DIAMETER_HINT = 'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
_STRENGTH_HINT = 'write a strength with its unit, such as "25 lb" or "11.3 kg"'


def _within(
    found: Measured,
    bounds: tuple[Fraction, Fraction],
    kind: str,
    units: Mapping[str, Fraction],
    written: object,
) -> tuple[Fraction, str, str]:
    """Return amount, plain and written of what lies within the bounds; else refuse it."""
    if not bounds[0] <= found.amount <= bounds[1]:
        low, high = (bound / units[found.unit] for bound in bounds)
        limits = f"{_short(low, _UP)} to {_short(high, _DOWN)} {found.unit}"
        raise refused(f"{quoted(written)} is no likely {kind}", f"write a {kind} from {limits}")
    return found.amount, f"{found.number} {found.unit}", str(written).strip()


def _short(bound: Fraction, rounding: Context) -> str:
    """Return a bound in few digits that still lies within."""
    rounded = rounding.divide(Decimal(bound.numerator), Decimal(bound.denominator))
    return f"{rounded.normalize():f}"


def _x_size(text: str, written: str) -> Diameter:
    match = re.fullmatch(r"([0-8])(\.5)? ?x", text)
    if match is None or text.startswith("8.5"):
        raise refused(
            f"{written!r} is not a size from 0X to 8X, and above 0X the trade writes two ways",
            'write the diameter itself, such as "0.013 in"',
        )
    number = match[1] + (match[2] or "")
    return Diameter((11 - Fraction(number)) * DIAMETER_MM["thou"], f"{number}X", written)
