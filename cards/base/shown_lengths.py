"""Computed lengths as words: exact millimetres in, what a tape shows out, in ASCII."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Literal

from tagend.cards.base.units import DIAMETER_MM, INCH_MM, Diameter

ShownUnit = Literal["in", "cm", "mm"]

_SIXTEENTH = 16  # the finest mark on a common inch tape

# The finest marks of a tape, which lengths are said to.
FINEST_MM: Mapping[ShownUnit, Fraction] = {
    "in": INCH_MM / _SIXTEENTH,
    "cm": Fraction(1),
    "mm": Fraction(1),
}


def length_number(mm: Fraction, unit: ShownUnit) -> str:
    """Return the number alone: `34 1/4`, `87.5` or `875`, to the finest mark of a tape."""
    if mm < 0:  # a section whose knots take more than its cut length
        return f"-{length_number(-mm, unit)}"
    if unit == "in":
        return _mixed(mm / INCH_MM)
    if unit == "cm":
        tenths = round(mm)
        return f"{tenths // 10}.{tenths % 10}" if tenths % 10 else str(tenths // 10)
    return str(round(mm))


def length(mm: Fraction, unit: ShownUnit) -> str:
    """Return the length with its unit: `34 1/4 in`."""
    return f"{length_number(mm, unit)} {unit}"


def long_length(mm: Fraction, unit: ShownUnit) -> str:
    """Return a leader's length as people say it: `9 ft`, `9 ft 2 1/4 in`, `2.74 m`, `48 in`."""
    if unit != "in":
        hundredths = round(mm / 10)
        return f"{hundredths // 100}.{hundredths % 100:02} m" if mm >= 1000 else length(mm, unit)
    sixteenths = round(mm / INCH_MM * _SIXTEENTH)
    feet, rest = divmod(Fraction(sixteenths, _SIXTEENTH), 12)
    if feet < 5:  # a short leader is said in inches
        return length(mm, unit)
    return f"{feet} ft {_mixed(rest)} in" if rest else f"{feet} ft"


def _mixed(inches: Fraction) -> str:
    whole, rest = divmod(Fraction(round(inches * _SIXTEENTH), _SIXTEENTH), 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def diameter_in(diameter: Diameter, unit: ShownUnit) -> str:
    """Return a diameter in inches, or in mm for metric lengths; an X size stays as it is.

    Spools are marked to a thousandth of an inch and a hundredth of a mm: common practice.
    """
    inches = unit == "in"
    if diameter.unit == "X" or (diameter.unit in ("in", "thou")) == inches:
        return diameter.plain
    if inches:
        return f"{float(diameter.mm / DIAMETER_MM['in']):.3f} in"
    return f"{float(diameter.mm):.2f} mm"


def line_length(mm: Fraction, unit: ShownUnit) -> str:
    """Return line on a spool, as spools are sold: `21.5 yd` or `19.7 m`, to the nearest tenth."""
    each, word = (36 * INCH_MM, "yd") if unit == "in" else (Fraction(1000), "m")
    tenths = round(mm * 10 / each)
    return f"{tenths // 10}.{tenths % 10} {word}" if tenths % 10 else f"{tenths // 10} {word}"


def line_to_buy(mm: Fraction, unit: ShownUnit) -> str:
    """Return line as spools are sold, up to the next tenth: never less than is needed."""
    tenth = (36 * INCH_MM if unit == "in" else Fraction(1000)) / 10
    return line_length(-(-mm // tenth) * tenth, unit)


def hundredths(mm: Fraction, unit: ShownUnit) -> str:
    """Return a length to a hundredth of an inch or a tenth of a mm, for sums that explain."""
    if unit == "in":
        return f"{float(mm / INCH_MM):.2f} in"
    return f"{float(mm / 10):.2f} cm" if unit == "cm" else f"{float(mm):.1f} mm"
