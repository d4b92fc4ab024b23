"""A cell that holds a length, a diameter or a strength in; what a recipe file would say out."""

import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Any

from tagend.cards.base.units import (
    parse_diameter,
    parse_span,
    parse_strength,
)
from tagend.cards.tables.lexicon import unit_named
from tagend.layouts.base.faults import Refused

# What is measured in a field, as its columns' units go by it.
KIND: Mapping[str, str] = {
    "length": "length",
    "total": "length",
    "dropper": "length",
    "butt_loop": "length",
    "line_out": "length",
    "rod": "length",
    "diameter": "diameter",
    "tapers_to": "diameter",
    "line_tip": "diameter",
    "strength": "strength",
    "class": "strength",
}
_READ: Mapping[str, Callable[[object], Any]] = {
    "length": parse_span,
    "diameter": parse_diameter,
    "strength": parse_strength,
}
UNITS: Mapping[str, tuple[str, ...]] = {
    "length": ("in", "ft", "cm", "mm", "m"),
    "diameter": ("in", "thou", "mm"),
    "strength": ("lb", "kg"),
}

NUMBER = r"(?:\d+[ -]\d+/\d+|\d+/\d+|\d*[½¼¾⅛⅜⅝⅞]|\d+\.\d+|\.\d+|\d+\.?)"
_NUMBER = re.compile(NUMBER)
_DAY = re.compile(r"\d{4}-\d\d-\d\d")
_BARE = re.compile(rf"{NUMBER}(?: ?(?:-|–|—|to|a|hasta) ?{NUMBER})?")
_RANGE = re.compile(rf"({NUMBER}) ?(?:-|–|—|to|a|hasta) ?({NUMBER}(?! ?/))(.*)")
_WITH_WORD = re.compile(r"(?<=[\d.½¼¾⅛⅜⅝⅞])(\s*)([^\W\d_]+|[\"'”″#])(\.?)")
_COMMA = re.compile(r"(?<=\d),(?=\d)|(?<!\d),(?=\d)")
_SURE_COMMA = re.compile(r"(?<=\b0),(?=\d)|(?<=\d),(?=\d\d?\b)|(?<![\d,]),(?=\d)")

# Of bare numbers under a heading without a unit: no strand of a leader is thinner or thicker, and
# the three do not overlap; below 9 they may be X sizes as well as thousandths.
_BY_SIZE = (("in", 0.003, 0.06), ("mm", 0.07, 1.5), ("thou", 9, 60))


def is_bare(cell: str, comma: bool) -> bool:
    """Whether a cell holds a number, or two as a range, and no unit."""
    return _BARE.fullmatch(with_points(cell, comma)) is not None


def with_points(cell: str, comma: bool) -> str:
    """Return a cell with decimal points; a comma that may part thousands stays one."""
    return (_COMMA if comma else _SURE_COMMA).sub(".", cell.strip())


def unit_by_size(cell: str, comma: bool) -> str:
    """Return the one unit in which a bare diameter is that of a leader's strand, or nothing."""
    try:
        size = float(with_points(cell, comma))
    except ValueError:
        return ""
    return next((unit for unit, least, most in _BY_SIZE if least <= size <= most), "")


@lru_cache(maxsize=4096)  # a table says the same sizes again and again
def quantity(cell: str, kind: str, unit: str, comma: bool) -> str:
    """Return what a recipe file would say; what cannot be read is left for its reader to refuse."""
    if reads(cell, kind) or _DAY.fullmatch(cell):
        return cell
    text = in_our_units(with_points(cell, comma))
    if not _NUMBER.fullmatch(text) and (found := _RANGE.fullmatch(text)):
        text = f"{found[1]} to {found[2]}{found[3]}"
    if _BARE.fullmatch(text):
        text = f"{text} {unit or (unit_by_size(text, False) if kind == 'diameter' else '')}".strip()
    return text if reads(text, kind) else text if _BARE.search(text) else cell


def in_our_units(text: str) -> str:
    """Return a text with our own spelling of each unit: `25 lb` for 25# and 25 libras."""

    def ours(match: re.Match[str]) -> str:
        unit = unit_named(match[2])
        if not unit or match[2] in "\"'":
            return match[0]
        return f" {unit}"

    return _WITH_WORD.sub(ours, text)


@lru_cache(maxsize=4096)
def reads(text: str, kind: str) -> bool:
    """Whether a text is a quantity of this kind, as a recipe file says it."""
    try:
        _READ[kind](text)
    except Refused:
        return False
    return True
