"""Lengths, diameters and strengths: text with a unit in, an exact amount and its spelling out."""

import re
import unicodedata
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NamedTuple

from tagend.cards.base.errors import refused

# The international inch, pound and yard (1959): exact by definition.
INCH_MM = Fraction(254, 10)
POUND_KG = Fraction(45359237, 100_000_000)

LENGTH_MM = {
    "in": INCH_MM,
    "ft": 12 * INCH_MM,
    "yd": 36 * INCH_MM,
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
}
DIAMETER_MM = {"in": INCH_MM, "thou": INCH_MM / 1000, "mm": Fraction(1)}
STRENGTH_KG = {"lb": POUND_KG, "kg": Fraction(1)}

# Bounds that only a slip of the pen passes: a 60 m leader, a rope, a strand finer than a hair.
LENGTH_BOUNDS_MM = (Fraction(1), Fraction(60_000))
LINE_BOUNDS_MM = (Fraction(1), Fraction(10_000_000))
DIAMETER_BOUNDS_MM = (Fraction(3, 100), Fraction(3))
STRENGTH_BOUNDS_KG = (Fraction(1, 10), Fraction(250))

_SPELLINGS = {
    "in": 'in in. inch inches "',
    "ft": "ft ft. foot feet '",
    "yd": "yd yd. yds yard yards",
    "mm": "mm mm. millimetre millimetres millimeter millimeters",
    "cm": "cm cm. centimetre centimetres centimeter centimeters",
    "m": "m metre metres meter meters",
    "thou": "thou",
    "lb": "lb lb. lbs lbs. pound pounds",
    "kg": "kg kg. kilogram kilograms",
}
_UNIT = {spelling: unit for unit, row in _SPELLINGS.items() for spelling in row.split()}

_DIGITS = 7  # no measured quantity of this trade needs more on either side of the point
_NUMBER = r"(?a:\d+[ -]\d+/\d+|\d+/\d+|\d+\.\d+|\.\d+|\d+\.?)"
_PAIR = re.compile(rf"({_NUMBER}) ?([a-z]+\.?|[\"'])")
_RAISED = re.compile("[²³¹⁰-₎]")  # 30² is not 302
_SIGNS = str.maketrans(
    {"″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "‘": "'", "‑": "-", "‐": "-", "−": "-"}
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact amount in the base unit of its kind.

    `plain` spells it in ASCII with the unit and digits it was written in, `written` is the
    text itself. Two quantities are equal when amount and `plain` are.
    """

    amount: Fraction
    plain: str
    written: str = field(compare=False)

    def __str__(self) -> str:
        return self.written


@dataclass(frozen=True, slots=True)
class Length(Quantity):
    """A length; its base unit is the millimetre."""

    @property
    def mm(self) -> Fraction:
        return self.amount

    @property
    def unit(self) -> str:
        """The unit it ends in: `in` for 7 ft 6 in."""
        return self.plain.rsplit(" ", 1)[1]

    @property
    def in_inches(self) -> bool:
        """Whether it is written in inches, feet or yards."""
        return self.unit in ("in", "ft", "yd")


@dataclass(frozen=True, slots=True)
class Diameter(Quantity):
    """A strand's diameter; its base unit is the millimetre."""

    @property
    def mm(self) -> Fraction:
        return self.amount

    @property
    def thou(self) -> Fraction:
        """The diameter in thousandths of an inch."""
        return self.amount / DIAMETER_MM["thou"]

    @property
    def unit(self) -> str:
        """`in`, `thou`, `mm` or `X`."""
        return "X" if self.plain.endswith("X") else self.plain.rsplit(" ", 1)[1]


@dataclass(frozen=True, slots=True)
class Strength(Quantity):
    """What the spool says its strand bears; its base unit is the kilogram."""

    @property
    def kg(self) -> Fraction:
        return self.amount

    @property
    def unit(self) -> str:
        return self.plain.rsplit(" ", 1)[1]


@dataclass(frozen=True, slots=True)
class Span:
    """A length that may lie anywhere from `low` to `high`; a plain length has both the same."""

    low: Length
    high: Length
    written: str = field(compare=False)

    @property
    def plain(self) -> str:
        if self.low == self.high:
            return self.low.plain
        if self.low.unit == self.high.unit and self.low.plain.count(" ") < 3:
            return f"{self.low.plain.rsplit(' ', 1)[0]} to {self.high.plain}"
        return f"{self.low.plain} to {self.high.plain}"

    def __str__(self) -> str:
        return self.written


def parse_length(written: object) -> Length:
    """Read a length such as `30 in`, `7 1/2 ft`, `7' 6"`, `¾ in` or `76 cm`.

    Raises `Refused` for a bare number, an unknown unit or a length no leader has.
    """
    return _length(written, LENGTH_BOUNDS_MM)


def parse_line_length(written: object) -> Length:
    """Read a length of line on a spool, `40 yd` or `100 m`, up to 10 km."""
    return _length(written, LINE_BOUNDS_MM)


def parse_span(written: object) -> Span:
    """Read a length, or two with `to` between them: `22 to 28 in`."""
    text = _clean(written, _LENGTH_HINT)
    before, to, after = text.partition(" to ")
    if not to:
        length = parse_length(written)
        return Span(length, length, length.written)
    high = parse_length(after)
    low = parse_length(f"{before} {high.unit}" if re.fullmatch(_NUMBER, before) else before)
    if low.mm >= high.mm:
        raise refused(f"{_quoted(written)} does not grow", "write the shorter length first")
    return Span(low, high, str(written).strip())


def parse_diameter(written: object) -> Diameter:
    """Read a diameter such as `0.023 in`, `23 thou`, `0.58 mm` or `4X`.

    X sizes go from 0X to 8X, where thousandths = 11 - X (common practice in print; see
    tests/outside). The thicker sizes are written in two ways that look alike, so they are refused.
    """
    text = _clean(written, _DIAMETER_HINT)
    if re.search(r"\d ?x$|^x ?\d", text):
        return _x_size(text, str(written).strip())
    pairs = _pairs(text, DIAMETER_MM, written, _DIAMETER_HINT)
    return Diameter(*_one(pairs, DIAMETER_BOUNDS_MM, "diameter", "0.03 to 3 mm", written))


def parse_strength(written: object) -> Strength:
    """Read a strength such as `25 lb` or `11.3 kg`."""
    text = _clean(written, _STRENGTH_HINT)
    pairs = _pairs(text, STRENGTH_KG, written, _STRENGTH_HINT)
    return Strength(*_one(pairs, STRENGTH_BOUNDS_KG, "strength", "0.1 to 250 kg", written))


_LENGTH_HINT = 'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
_DIAMETER_HINT = 'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
_STRENGTH_HINT = 'write a strength with its unit, such as "25 lb" or "11.3 kg"'


class _Pair(NamedTuple):
    number: str  # plain: `7 1/2`, `0.023`
    unit: str
    amount: Fraction


def _length(written: object, bounds: tuple[Fraction, Fraction]) -> Length:
    text = _clean(written, _LENGTH_HINT)
    pairs = _pairs(text, LENGTH_MM, written, _LENGTH_HINT)
    if [pair.unit for pair in pairs] == ["ft", "in"]:
        feet, inches = pairs
        pairs = [_Pair(f"{feet.number} ft {inches.number}", "in", feet.amount + inches.amount)]
    limits = "1 mm to 60 m" if bounds == LENGTH_BOUNDS_MM else "1 mm to 10 km"
    return Length(*_one(pairs, bounds, "length", limits, written))


def _clean(written: object, hint: str) -> str:
    """Return the text in lower case with plain signs, single spaces and ASCII fractions."""
    if isinstance(written, (int, float)) and not isinstance(written, bool):
        raise refused(f"{written} has no unit", hint)
    if not isinstance(written, str):
        raise refused("this is not a text in quotes", hint)
    if len(written) > 60:
        raise refused(f"{written[:20]!r}… is too long for a quantity", hint)
    if _RAISED.search(written):
        raise refused(f"{_quoted(written)} cannot be read", hint)
    spaced = "".join(
        f" {c}" if unicodedata.decomposition(c).startswith("<fraction>") else c
        for c in written.translate(_SIGNS)
    )
    text = unicodedata.normalize("NFKC", spaced).replace("⁄", "/").lower()
    return " ".join(text.split())


def _pairs(text: str, units: dict[str, Fraction], written: object, hint: str) -> list[_Pair]:
    """Split `7 ft 6 in` into its numbers and units; every character must belong to one."""
    if re.fullmatch(_NUMBER, text):
        raise refused(f"{_quoted(written)} has no unit", hint)
    if text.startswith("-"):
        raise refused(f"{_quoted(written)} is negative", hint)
    if re.search(r"\d,\d", text):
        raise refused(f"{_quoted(written)} has a comma", "write the decimal mark as a point")
    pairs = []
    place = 0
    while match := _PAIR.match(text, place):
        unit = _UNIT.get(match[2])
        if unit not in units:
            raise refused(
                f"{_quoted(written)}: {match[2]!r} is not a unit for this",
                f"use one of: {', '.join(units)}",
            )
        amount, number = _number(match[1], written)
        pairs.append(_Pair(number, unit, amount * units[unit]))
        place = match.end() + (text[match.end() : match.end() + 1] == " ")
    if not pairs or place < len(text):
        raise refused(f"{_quoted(written)} cannot be read", hint)
    return pairs


def _number(text: str, written: object) -> tuple[Fraction, str]:
    """Return the value and the plain spelling of one number: `.5` is spelled `0.5`."""
    if max(len(digits) for digits in re.findall(r"\d+", text)) > _DIGITS:
        raise refused(f"{_quoted(written)} has too many digits", f"write at most {_DIGITS} digits")
    whole, _, fraction = text.replace("-", " ").rpartition(" ")
    if "/" not in fraction:
        plain = fraction.rstrip(".")
        return Fraction(plain), f"0{plain}" if plain.startswith(".") else plain
    if int(fraction.split("/")[1]) == 0:
        raise refused(f"{_quoted(written)} divides by nought", "write a fraction such as 3/4")
    return int(whole or 0) + Fraction(fraction), f"{whole} {fraction}".strip()


def _one(
    pairs: list[_Pair], bounds: tuple[Fraction, Fraction], kind: str, limits: str, written: object
) -> tuple[Fraction, str, str]:
    """Return amount, plain and written of the one pair there must be, within bounds."""
    if len(pairs) > 1:
        raise refused(
            f"{_quoted(written)} gives more than one {kind}",
            "write one number and unit (feet and inches may stand together)",
        )
    (pair,) = pairs
    if not bounds[0] <= pair.amount <= bounds[1]:
        raise refused(f"{_quoted(written)} is no likely {kind}", f"write a {kind} from {limits}")
    return pair.amount, f"{pair.number} {pair.unit}", str(written).strip()


def _x_size(text: str, written: str) -> Diameter:
    match = re.fullmatch(r"([0-8])(\.5)? ?x", text)
    if match is None or text.startswith("8.5"):
        raise refused(
            f"{written!r} is not a size from 0X to 8X, and above 0X the trade writes two ways",
            'write the diameter itself, such as "0.013 in"',
        )
    number = match[1] + (match[2] or "")
    return Diameter((11 - Fraction(number)) * DIAMETER_MM["thou"], f"{number}X", written)


def _quoted(written: object) -> str:
    return repr(str(written).strip())
