"""A text in, its QR symbol out; and the room there is in, the size of the symbol's modules out."""

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Literal, TypeAlias

from tagend.layouts.codes.codewords import codewords, smallest
from tagend.layouts.codes.modules import modules
from tagend.layouts.paper.face import MM, POINTS_PER_INCH, Symbol
from tagend.layouts.paper.lengths import fits

# Dark modules that touch: x and y, counted from the symbol's top left module, width and height.
Rectangle: TypeAlias = tuple[int, int, int, int]
Level: TypeAlias = Literal["L", "M", "Q", "H"]
LEVELS: tuple[Level, ...] = ("L", "M", "Q", "H")  # from least correction to most

QUIET = 4  # ISO/IEC 18004: modules of the light border
_DARK = re.compile(b"\x01+")

_DOT = POINTS_PER_INCH / 600
# Whole dots of a 600 dpi printer, so that all modules come out alike. 10 dots (0.42 mm) are also
# 5 dots at 300 dpi. No fewer than 4 dots is the advice of the code's inventor (qrcode.com, "module
# size"): 8 here keep it at 300 dpi. More than 14 (0.59 mm) is never
# needed: common practice, no source.
DESIGN_MODULE = 10 * _DOT
# By the tables of tests/bench/wear.py a larger module does more than a higher level up to here, and
# a higher level more from here on: M of 0.51 mm outlives Q of 0.42, and Q of 0.51 M of 0.59.
LASTING_MODULE = 0.5 * MM
SMALLEST_MODULE = 8 * _DOT
MODULES = tuple(dots * _DOT for dots in (14, 12, 10, 9, 8))


def modules_at(dpi: int | None) -> tuple[float, ...]:
    """Return the modules of whole dots in points, the largest first; `MODULES` where None."""
    if dpi is None:
        return MODULES
    dot = POINTS_PER_INCH / dpi
    return tuple(
        dots * dot
        for dots in range(dpi, 0, -1)
        if fits(SMALLEST_MODULE, dots * dot) and fits(dots * dot, MODULES[0])
    )


class TextTooLong(ValueError):
    """Not even the largest symbol holds the text at the level asked for."""


@lru_cache(maxsize=64)
def symbol(text: str, level: Level = "M") -> Symbol:
    """Return the smallest symbol of at least the level; a higher level where it costs no module.

    Only ASCII is taken: readers disagree about what any other byte means. Raises ValueError
    for other text and TextTooLong.
    """
    version = smallest_version(text, level)
    best = max((each for each in LEVELS if _version(text, each) == version), key=LEVELS.index)
    correction = _correction(best)
    dark = modules(codewords(text, version, correction), version, correction)
    return Symbol(text=text, version=version, level=best, dark=dark)


def smallest_version(text: str, level: Level) -> int:
    """Return the smallest version that holds the text. Raises as `symbol` does."""
    if not text or not text.isascii():
        raise ValueError(f"a code needs ASCII text, not {text!r}")
    version = _version(text, level)
    if version is None:
        raise TextTooLong(f"a code at level {level} cannot hold {len(text)} characters")
    return version


def symbol_path(symbol: Symbol) -> tuple[Rectangle, ...]:
    """Return the dark modules as few rectangles."""
    path = iter(_path(symbol))
    return tuple(zip(path, path, path, path, strict=True))


@lru_cache(maxsize=512)  # asked for to be read, and again to be drawn
def _path(symbol: Symbol) -> bytes:
    """Return each rectangle in four bytes: no symbol has more than 177 modules along its side."""
    return bytes(measure for each in rectangles(symbol.rows) for measure in each)


def rectangles(rows: Sequence[bytes]) -> Iterator[Rectangle]:
    """Yield what is dark as few rectangles: runs along a row, merged with equal ones below."""
    growing: dict[tuple[int, int], int] = {}  # (x, width) of a run: the row it began in
    for y, row in enumerate((*rows, b"")):
        found = _runs(row)
        for x, width in [run for run in growing if run not in found]:
            top = growing.pop((x, width))
            yield x, top, width, y - top
        for run in found:
            growing.setdefault(run, y)


def best_module(available: float, side: int) -> float | None:
    """Return the largest module in points, quiet zone and all; None when the floor is too large.

    From the design module up it is a whole number of dots at 300 dpi too. Below it, where every
    dot counts, at 600 dpi only.
    """
    return next((m for m in MODULES if fits((side + 2 * QUIET) * m, available)), None)


def _runs(row: bytes) -> list[tuple[int, int]]:
    """Return where dark modules that touch begin, and how many they are."""
    return [(run.start(), len(run[0])) for run in _DARK.finditer(row)]


def _version(text: str, level: Level) -> int | None:
    return smallest(text, _correction(level))


def _correction(level: Level) -> int:
    from qrcode import constants

    return int(getattr(constants, f"ERROR_CORRECT_{level}"))
