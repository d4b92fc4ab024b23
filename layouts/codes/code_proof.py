"""A symbol in, the same out once what will be drawn of it has been read back as its text."""

from tagend.layouts.codes.code import QUIET, symbol_path
from tagend.layouts.codes.code_check import WrongSymbol, text_of
from tagend.layouts.codes.scan import ScanMissing, texts_in_grey
from tagend.layouts.paper.face import Symbol

_DOTS = 4  # along a module: no printer gets fewer


class NotProven(ValueError):
    """A symbol that does not read back as its text, by a fault of this program."""

    def __init__(self, why: str) -> None:
        super().__init__(
            f"its code does not read back as its text ({why}), so nothing is printed; "
            "this is a fault of the program, not of the recipe: please report it"
        )


def proven(symbol: Symbol) -> Symbol:
    """Return the symbol when it reads back from the rectangles that will be drawn.

    Each is read module by module, and also by a camera's reader where one is installed. Raises
    `NotProven`.
    """
    rows = _drawn(symbol)
    try:
        text = text_of(rows)
    except WrongSymbol as fault:
        raise NotProven(str(fault)) from None
    if text != symbol.text:
        raise NotProven(f"it reads {text!r}")
    try:
        seen = texts_in_grey(_raster(rows))
    except ScanMissing:
        return symbol
    if seen != (text,):
        raise NotProven("a camera's reader sees another text" if seen else "no camera reads it")
    return symbol


def _drawn(symbol: Symbol) -> list[list[bool]]:
    rows = [[False] * symbol.side for _ in range(symbol.side)]
    for x, y, width, height in symbol_path(symbol):
        for row in rows[y : y + height]:
            row[x : x + width] = [True] * width
    return rows


def _raster(rows: list[list[bool]]) -> memoryview:
    """Return the symbol and its quiet zone as grey pixels, row by row."""
    side = (len(rows) + 2 * QUIET) * _DOTS
    beside, light = b"\xff" * QUIET * _DOTS, b"\xff" * side * QUIET * _DOTS
    lines = (
        (beside + b"".join((b"\x00" if dark else b"\xff") * _DOTS for dark in row) + beside) * _DOTS
        for row in rows
    )
    return memoryview(light + b"".join(lines) + light).cast("B", (side, side))
