"""Numbers with their units, as people write them, in; exact amounts, plainly spelled, out."""

import re
import unicodedata
from collections.abc import Mapping

from cfractions import Fraction
from msgspec import Struct

from tagend.layouts.base.faults import refused

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

_DIGITS = 7  # no measured quantity needs more on either side of the point
_NUMBER = r"(?a:\d+[ -]\d+/\d+|\d+/\d+|\d+\.\d+|\.\d+|\d+\.?)"
_PAIR = re.compile(rf"({_NUMBER}) ?([a-z]+\.?|[\"'])")
_RAISED = frozenset("²³¹⁰ⁱ⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ₀₁₂₃₄₅₆₇₈₉₊₋₌₍₎")  # 30² is not 302
_SIGNS = str.maketrans(
    {"″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "‘": "'", "‑": "-", "‐": "-", "−": "-"}
)


class Measured(Struct, frozen=True):
    """A number with its unit, spelled in ASCII; `amount` is in the base unit of its kind."""

    number: str  # `7 1/2`, `0.023`; `7 ft 6` before inches
    unit: str
    amount: Fraction


def read_length(written: object, hint: str) -> Measured:
    """Return a length in mm: `30 in`, `7½ ft`, `¾″`, `76 cm` or, as inches, `7' 6"`.

    Raises `Refused`, with the hint where the text is none.
    """
    found = _all_measured(written, LENGTH_MM, hint)
    if [each.unit for each in found] == ["ft", "in"]:
        feet, inches = found
        return Measured(f"{feet.number} ft {inches.number}", "in", feet.amount + inches.amount)
    return _only(found, "length", written)


def read_measured(written: object, units: Mapping[str, Fraction], kind: str, hint: str) -> Measured:
    """Return the one number with its unit; raises `Refused`, as `read_length` does."""
    return _only(_all_measured(written, units, hint), kind, written)


def with_unit(text: str, unit: str) -> str:
    """Return the text with the unit behind it where it is a number alone, as 22 in 22 to 28 in."""
    return f"{text} {unit}" if re.fullmatch(_NUMBER, text) else text


def mixed(value: Fraction) -> str:
    """Return a number as a rule shows it: `7 1/2`."""
    whole = value // 1
    rest = value - whole
    return f"{whole} {rest}" if whole and rest else str(whole or rest)


def plain(written: object, hint: str) -> str:
    """Return the text in lower case with plain signs, single spaces and ASCII fractions."""
    if isinstance(written, (int, float)) and not isinstance(written, bool):
        raise refused(f"{written} has no unit", hint)
    if not isinstance(written, str):
        raise refused("this is not a text in quotes", hint)
    if len(written) > 60:
        raise refused(f"{written[:20]!r}… is too long for a quantity", hint)
    if not _RAISED.isdisjoint(written):
        raise refused(f"{quoted(written)} cannot be read", hint)
    spaced = "".join(
        f" {c}" if unicodedata.decomposition(c).startswith("<fraction>") else c
        for c in written.translate(_SIGNS)
    )
    text = unicodedata.normalize("NFKC", spaced).replace("⁄", "/").lower()
    return " ".join(text.split())


def quoted(written: object) -> str:
    """Return what was written as a message shows it."""
    return repr(str(written).strip())


def _all_measured(
    written: object, units: Mapping[str, Fraction], hint: str
) -> tuple[Measured, ...]:
    """Split `7 ft 6 in` into its numbers and units; every character must belong to one."""
    text = plain(written, hint)
    if re.fullmatch(_NUMBER, text):
        raise refused(f"{quoted(written)} has no unit", hint)
    if text.startswith("-"):
        raise refused(f"{quoted(written)} is negative", hint)
    if re.search(r"\d,\d", text):
        raise refused(f"{quoted(written)} has a comma", "write the decimal mark as a point")
    found = []
    place = 0
    while match := _PAIR.match(text, place):
        unit = _UNIT.get(match[2], "")
        if unit not in units:
            raise refused(
                f"{quoted(written)}: {match[2]!r} is not a unit for this",
                f"use one of: {', '.join(units)}",
            )
        amount, number = _number(match[1], written)
        found.append(Measured(number, unit, amount * units[unit]))
        place = match.end() + (text[match.end() : match.end() + 1] == " ")
    if not found or place < len(text):
        raise refused(f"{quoted(written)} cannot be read", hint)
    return tuple(found)


def _number(text: str, written: object) -> tuple[Fraction, str]:
    """Return the value and the plain spelling of one number: `.5` is spelled `0.5`."""
    if max(len(digits) for digits in re.findall(r"\d+", text)) > _DIGITS:
        raise refused(f"{quoted(written)} has too many digits", f"write at most {_DIGITS} digits")
    whole, _, fraction = text.replace("-", " ").rpartition(" ")
    if "/" not in fraction:
        number = fraction.rstrip(".")
        return Fraction(number), f"0{number}" if number.startswith(".") else number
    if int(fraction.split("/")[1]) == 0:
        raise refused(f"{quoted(written)} divides by nought", "write a fraction such as 3/4")
    return int(whole or 0) + Fraction(fraction), f"{whole} {fraction}".strip()


def _only(found: tuple[Measured, ...], kind: str, written: object) -> Measured:
    if len(found) > 1:
        raise refused(
            f"{quoted(written)} gives more than one {kind}",
            "write one number and unit (feet and inches may stand together)",
        )
    return found[0]
