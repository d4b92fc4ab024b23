"""A cell that says all of a section, `24" .023 25lb`, in; the keys of its recipe file out."""

import re
from collections.abc import Iterator, Mapping

from tagend.cards.tables.quantity_cells import NUMBER, in_our_units, unit_by_size, with_points
from tagend.layouts.base.faults import refused

_PIECE = re.compile(
    rf"({NUMBER})(?: ?(?:-|–|to|a) ?({NUMBER}))? ?"
    r"(in\b\.?|ft\b\.?|cm\b|mm\b|m\b|thou\b|lbs?\b\.?|kg\b|x\b|[\"”″'’′#])?",
    re.IGNORECASE,
)
_BETWEEN = re.compile(
    r"\s[x×@]\s|×|@|(?<=\d)x(?=[.\d])|[;/|](?!\d)|,\s|\bof\b|\bde\b", re.IGNORECASE
)
_INCHES = ("in", '"', "”", "″")
_EXAMPLE = 'write length, diameter and strength, such as 24" .023 25lb'


def section_said(cell: str, units: Mapping[str, str], comma: bool) -> dict[str, str]:
    """Return what a cell says of a section by its keys; `units` are those of bare numbers by kind.

    Raises `Refused` for two of a kind, and where there is no quantity.
    """
    text = _BETWEEN.sub(" ", in_our_units(with_points(cell, comma)))
    said: dict[str, str] = {}
    for kind, quantity in _quantities(text, units, said):
        if kind in said and not (kind == "length" and said[kind].endswith(("ft", "'"))):
            raise refused(f"{cell[:40]!r} says more than one {kind}", _EXAMPLE)
        said[kind] = f"{said[kind]} {quantity}" if kind in said else quantity
    if not said:
        raise refused(f"{cell[:40]!r} does not say a section", _EXAMPLE)
    if material := " ".join(_PIECE.sub(" ", text).strip(" ,.-").split()):
        said["material"] = material
    return said


def _quantities(
    text: str, units: Mapping[str, str], said: Mapping[str, str]
) -> Iterator[tuple[str, str]]:
    for found in _PIECE.finditer(text):
        low, high, unit = found[1], found[2], (found[3] or "").lower().rstrip(".")
        if high and float_of(high) <= float_of(low):  # 24-.023 is no range
            yield _measured(low, "", units, said)
            low, high = high, None
        yield _measured(f"{low} to {high}" if high else low, unit, units, said)


def _measured(
    number: str, unit: str, units: Mapping[str, str], said: Mapping[str, str]
) -> tuple[str, str]:
    """Return the kind of a quantity, and how a recipe file says it."""
    size = float_of(number.partition(" to ")[0])
    if unit in ("lb", "lbs", "kg", "#"):
        return "strength", f"{number} {'kg' if unit == 'kg' else 'lb'}"
    if unit in ("x", "thou") or (unit == "mm" and size < 3) or (unit in _INCHES and size < 0.1):
        return "diameter", f"{number}{'X' if unit == 'x' else f' {unit}'}"
    if unit:
        return "length", f"{number} {unit}" if unit.isalpha() else number + unit
    if "." in number and "diameter" not in said and (found := unit_by_size(number, False)):
        return "diameter", f"{number} {units.get('diameter') or found}"
    kind = "length" if "length" not in said else "strength"
    return kind, f"{number} {units.get(kind, '')}".strip()


def float_of(number: str) -> float:
    """Return about how much a number is: `1 1/2` or `½`; only to compare."""
    total = 0.0
    for part in number.replace("-", " ").split():
        whole, _, below = part.partition("/")
        try:
            total += float(whole) / float(below or 1)
        except (ValueError, ZeroDivisionError):  # ½, which is no more than one
            total += 0.5
    return total
