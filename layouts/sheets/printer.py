"""What was measured of a printer and sheets in; sheets that come out true on that printer out.

All signs are here. People measure from the sheet's left and top edge as they look at a side, so
x grows to the right and y downwards, on the back too. A shift is how far from its place a mark
came out: the sheet is drawn as far the other way. A rule is how long 100 mm came out.
"""

import math
from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion
from tagend.layouts.paper.face import MM, Box
from tagend.layouts.paper.lengths import fits, in_mm, parse_length
from tagend.layouts.sheets.ink import around, ink, on_sheet
from tagend.layouts.sheets.sheet import Adjustment, Sheet, SheetSide

# The marks whose shift is measured stand this far from the left or from the top edge.
MARK = 20 * MM
RULE = 100 * MM

# More is no printer's doing, but the print dialog's that fits pages to the paper (94 to 97 %).
MOST_SCALE = 0.02
MOST_SHIFT = 10 * MM  # a larger one is the mark's whole distance, or a slip

_SHIFTS = ("front_x", "front_y", "back_x", "back_y")
_RULES = ("rule_x", "rule_y")
KEYS = (*_SHIFTS, *_RULES)


class Printer(Struct, frozen=True):
    """A printer as measured, all in points."""

    front_x: float = 0.0
    front_y: float = 0.0
    back_x: float = 0.0
    back_y: float = 0.0
    rule_x: float = RULE
    rule_y: float = RULE


def read_printer(table: Mapping[str, object]) -> Printer:
    """Return the printer of a table with KEYS, each a length such as "0.8 mm" or "-1/32 in".

    Raises `Refused`.
    """
    measured: dict[str, float] = {}
    faults: list[Fault] = []
    for key, value in table.items():
        with noting(faults), under(key):
            measured[key] = _measured(key, value)
    refuse_any(faults)
    return Printer(**measured)


def corrected(sheets: Sequence[Sheet], printer: Printer) -> tuple[Sheet, ...]:
    """Return the sheets adjusted so that they come out true. Raises `Refused`.

    For a printer of which nothing is measured they stay as they are.
    """
    if printer == Printer():
        return tuple(sheets)
    by: dict[SheetSide, Adjustment] = {
        "front": _undone(printer, printer.front_x, printer.front_y),
        "back": _undone(printer, printer.back_x, printer.back_y),
    }
    faces = {id(placed.face): placed.face for sheet in sheets for placed in sheet.placed}
    inked = {key: ink(face.items) for key, face in faces.items()}  # most faces come often
    adjusted = tuple(replace(sheet, adjustment=by[sheet.side]) for sheet in sheets)
    for sheet in adjusted:
        boxes = ((inked[id(placed.face)], placed) for placed in sheet.placed)
        _check(sheet, around(on_sheet(box, placed) for box, placed in boxes if box), printer)
    return adjusted


def _measured(key: str, value: object) -> float:
    if key not in KEYS:
        raise refused("no such key", suggestion(key, KEYS))
    length = _signed_length(value)
    if key in _RULES and abs(length / RULE - 1) > MOST_SCALE:
        off = 100 * abs(length / RULE - 1)
        raise refused(
            f"{in_mm(length)} for {in_mm(RULE)} is off by {off:.1f} %, more than printers are",
            "print at 100 %, not fitted to the page, and measure again",
        )
    if key in _SHIFTS and abs(length) > MOST_SHIFT:
        instead = "write how far the mark is off its place, not its distance from the edge"
        raise refused(f"{in_mm(length)} is more than {in_mm(MOST_SHIFT)}", instead)
    return length


def _signed_length(value: object) -> float:
    text = value.strip() if isinstance(value, str) else ""
    if text.startswith("+"):
        return parse_length(text[1:])
    return -parse_length(text[1:]) if text.startswith(("-", "−")) else parse_length(value)


def _undone(printer: Printer, shift_x: float, shift_y: float) -> Adjustment:
    # A place q comes out at MARK + shift + scale (q - MARK): what belongs at p is drawn at the
    # q for which that is p.
    scale_x, scale_y = printer.rule_x / RULE, printer.rule_y / RULE
    return Adjustment(
        x=MARK - (MARK + shift_x) / scale_x,
        y=MARK - (MARK + shift_y) / scale_y,
        scale_x=1 / scale_x,
        scale_y=1 / scale_y,
    )


def _check(sheet: Sheet, box: Box | None, printer: Printer) -> None:
    """Raise `Refused` where the box around all print does not stay on the sheet."""
    if box is None:
        return
    left, top = sheet.adjustment.at(*box[:2])
    right, bottom = sheet.adjustment.at(*box[2:])
    x, y = f"{sheet.side}_x", f"{sheet.side}_y"
    for key, edge, over in (
        (x, "left", -left),
        (x, "right", right - sheet.width),
        (y, "top", -top),
        (y, "bottom", bottom - sheet.height),
    ):
        if not fits(over, 0.0):
            raise _off_sheet(key, getattr(printer, key), edge, over)


def _off_sheet(key: str, shift: float, edge: str, over: float) -> Refused:
    found = (
        f"made true for this printer, print would reach {in_mm(over)} over the sheet's {edge} edge"
    )
    most = shift - math.copysign(over, shift)
    if most * shift <= 0:  # the scale alone goes too far
        return refused(found, "bring the printer's scale nearer to 100 %", f"printer, {key}")
    return refused(found, f"a {key} of up to {in_mm(most)} can be undone here", f"printer, {key}")
