"""Computed lengths and diameters as words: exact millimetres in, what people say out, in ASCII."""

from collections.abc import Mapping
from typing import Literal

from cfractions import Fraction

from tagend.cards.base.units import DIAMETER_MM, STRENGTH_KG, Diameter, Length, Strength
from tagend.layouts.base.quantities import INCH_MM, LENGTH_MM, mixed

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
        return f"{round(mm) // 10}.{round(mm) % 10}".removesuffix(".0")
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
    feet, rest = divmod(sixteenths, 12 * _SIXTEENTH)
    if feet < 5:  # a short leader is said in inches
        return length(mm, unit)
    return f"{feet} ft {mixed(Fraction(rest, _SIXTEENTH))} in" if rest else f"{feet} ft"


def _mixed(inches: Fraction) -> str:
    return mixed(Fraction(round(inches * _SIXTEENTH), _SIXTEENTH))


def inches(diameter_mm: Fraction) -> str:
    """Return a diameter or step as the trade says it: `0.003 in`, to a tenth of a thousandth."""
    digits = f"{round(diameter_mm * 10 / DIAMETER_MM['thou']):05}"
    return f"0.{digits[-4:].rstrip('0').ljust(3, '0')} in"


def thickness(diameter_mm: Fraction, unit: ShownUnit) -> str:
    """Return a diameter in inches, or to a hundredth of a mm for metric lengths: `0.18 mm`."""
    return inches(diameter_mm) if unit == "in" else f"{float(diameter_mm):.2f} mm"


def diameter_in(diameter: Diameter, unit: ShownUnit) -> str:
    """Return a diameter as spools are marked, in inches or in mm; an X size stays as it is.

    Spools are marked to a thousandth of an inch and a hundredth of a mm: common practice.
    """
    if diameter.unit == "X" or (diameter.unit in ("in", "thou")) == (unit == "in"):
        return diameter.plain
    if unit == "in":
        return f"{float(diameter.mm / INCH_MM):.3f} in"
    return thickness(diameter.mm, unit)


def length_in(written: Length, unit: ShownUnit) -> str:
    """Return a length as a person wrote it, or as people say it where that was not metric or is."""
    return written.plain if written.in_inches == (unit == "in") else long_length(written.mm, unit)


def strength_in(strength: Strength, unit: ShownUnit) -> str:
    """Return a strength in pounds or, for metric lengths, kilograms, to a tenth, as spools are."""
    wanted = "lb" if unit == "in" else "kg"
    if strength.unit == wanted:
        return strength.plain
    return f"{float(strength.kg / STRENGTH_KG[wanted]):.1f}".removesuffix(".0") + f" {wanted}"


def line_length(mm: Fraction, unit: ShownUnit) -> str:
    """Return line on a spool, as spools are sold: `21.5 yd` or `19.7 m`, to the nearest tenth."""
    tenths = round(mm * 10 / LENGTH_MM[_sold_by(unit)])
    return f"{tenths // 10}.{tenths % 10}".removesuffix(".0") + f" {_sold_by(unit)}"


def line_to_buy(mm: Fraction, unit: ShownUnit) -> str:
    """Return line as spools are sold, up to the next tenth: never less than is needed."""
    tenth = LENGTH_MM[_sold_by(unit)] / 10
    return line_length(-(-mm // tenth) * tenth, unit)


def _sold_by(unit: ShownUnit) -> str:
    return "yd" if unit == "in" else "m"


def hundredths(mm: Fraction, unit: ShownUnit) -> str:
    """Return a length to a hundredth of an inch or a tenth of a mm, for sums that explain."""
    if unit == "in":
        return f"{float(mm / INCH_MM):.2f} in"
    return f"{float(mm / 10):.2f} cm" if unit == "cm" else f"{float(mm):.1f} mm"
