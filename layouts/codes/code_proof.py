"""A symbol in, the same out once what will be drawn of it has been read back as its text."""

from tagend.layouts.codes.code import QUIET, symbol_path
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
    """Return the symbol when a camera's reader reads it from the rectangles that will be drawn.

    Raises `NotProven`.
    """
    import zxingcpp

    formats = zxingcpp.barcode_formats_from_str("QRCode")
    found = zxingcpp.read_barcodes(_pixels(symbol), formats=formats, is_pure=True)
    if [code.text for code in found] != [symbol.text]:
        raise NotProven(f"it reads {found[0].text!r}" if found else "it cannot be read")
    return symbol


def _pixels(symbol: Symbol) -> memoryview:
    """Return the symbol and its quiet zone as grey pixels, row by row."""
    side = symbol.side + 2 * QUIET
    grid = bytearray(b"\xff" * side * side)
    for x, y, width, height in symbol_path(symbol):
        dark = bytes(width)
        for start in range((y + QUIET) * side + x + QUIET, (y + height + QUIET) * side, side):
            grid[start : start + width] = dark
    wide = grid.replace(b"\x00", b"\x00" * _DOTS).replace(b"\xff", b"\xff" * _DOTS)
    line = side * _DOTS
    rows = (wide[start : start + line] * _DOTS for start in range(0, len(wide), line))
    return memoryview(b"".join(rows)).cast("B", (line, line))
