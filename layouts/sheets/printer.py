"""What was measured of a printer and sheets in; sheets that come out true on that printer out.

All signs are here. People measure from the sheet's left and top edge as they look at a side, so
x grows to the right and y downwards, on the back too. A shift is how far from its place a mark
came out: the sheet is drawn as far the other way. A rule is how long 100 mm came out.
"""

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from tagend.layouts.paper.face import MM
from tagend.layouts.paper.lengths import SLACK, in_mm, parse_length
from tagend.layouts.sheets.ink import Box, around, ink, on_sheet
from tagend.layouts.sheets.sheet import Adjustment, Sheet, SheetSide
from tagend.layouts.stock.entries import Fault
from tagend.layouts.stock.names import listed, nearest

# The marks whose shift is measured stand this far from the left or from the top edge.
MARK = 20 * MM
RULE = 100 * MM

# More is no printer's doing, but the print dialog's that fits pages to the paper (94 to 97 %).
MOST_SCALE = 0.02
MOST_SHIFT = 10 * MM  # a larger one is the mark's whole distance, or a slip

_SHIFTS = ("front_x", "front_y", "back_x", "back_y")
_RULES = ("rule_x", "rule_y")
KEYS = (*_SHIFTS, *_RULES)


class Printer(NamedTuple):
    """A printer as measured, all in points."""

    front_x: float = 0.0
    front_y: float = 0.0
    back_x: float = 0.0
    back_y: float = 0.0
    rule_x: float = RULE
    rule_y: float = RULE


class BadPrinter(ValueError):
    """What was measured cannot be right; holds every fault found."""

    def __init__(self, *faults: Fault) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))


class OffSheet(ValueError):
    """Undoing what a printer does would put print off the sheet; lengths in points.

    `most` is the shift that could be undone; None where the scale alone goes too far.
    """

    def __init__(self, key: str, shift: float, edge: str, over: float) -> None:
        self.key = key
        self.edge = edge
        self.over = over
        most = shift - math.copysign(over, shift)
        self.most = most if most * shift > 0 else None
        instead = (
            "bring the printer's scale nearer to 100 %"
            if self.most is None
            else f"a {key} of up to {in_mm(self.most)} can be undone here"
        )
        super().__init__(
            f"made true for this printer, print would reach {in_mm(over)} over the sheet's {edge} "
            f"edge; {instead}"
        )


def read_printer(table: Mapping[str, object]) -> Printer:
    """Return the printer of a table with KEYS, each a length such as "0.8 mm" or "-1/32 in".

    Raises `BadPrinter`.
    """
    measured: dict[str, float] = {}
    faults: list[Fault] = []
    for key, value in table.items():
        found = _measured(key, value)
        if isinstance(found, Fault):
            faults.append(found)
        else:
            measured[key] = found
    if faults:
        raise BadPrinter(*faults)
    return Printer(**measured)


def corrected(sheets: Sequence[Sheet], printer: Printer) -> tuple[Sheet, ...]:
    """Return the sheets adjusted so that they come out true. Raises `OffSheet`."""
    by: dict[SheetSide, Adjustment] = {
        "front": _undone(printer, printer.front_x, printer.front_y),
        "back": _undone(printer, printer.back_x, printer.back_y),
    }
    faces = {id(placed.face): placed.face for sheet in sheets for placed in sheet.placed}
    inked = {key: ink(face.items) for key, face in faces.items()}  # most faces come often
    adjusted = tuple(sheet._replace(adjustment=by[sheet.side]) for sheet in sheets)
    for sheet in adjusted:
        boxes = ((inked[id(placed.face)], placed) for placed in sheet.placed)
        _check(sheet, around(on_sheet(box, placed) for box, placed in boxes if box), printer)
    return adjusted


def _measured(key: str, value: object) -> float | Fault:
    if key not in KEYS:
        near = nearest(key, KEYS)
        return Fault(key, "no such key", f"write one of: {listed(near or KEYS)}")
    sign, text = _sign_and_length(value)
    try:
        length = sign * parse_length(text)
    except ValueError:
        instead = 'write a length with its unit, such as "0.8 mm" or "-1/32 in"'
        return Fault(key, f"found {value!r}", instead)
    if key in _RULES and abs(length / RULE - 1) > MOST_SCALE:
        return _wrong_scale(key, length)
    if key in _SHIFTS and abs(length) > MOST_SHIFT:
        instead = "write how far the mark is off its place, not its distance from the edge"
        return Fault(key, f"{in_mm(length)} is more than {in_mm(MOST_SHIFT)}", instead)
    return length


def _sign_and_length(value: object) -> tuple[int, str]:
    text = value.strip().replace("−", "-") if isinstance(value, str) else ""
    return (-1 if text.startswith("-") else 1), text.removeprefix("-").removeprefix("+").strip()


def _wrong_scale(key: str, length: float) -> Fault:
    off = 100 * abs(length / RULE - 1)
    found = f"{in_mm(length)} for {in_mm(RULE)} is off by {off:.1f} %, more than printers are"
    return Fault(key, found, "print at 100 %, not fitted to the page, and measure again")


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
    """Raise `OffSheet` where the box around all print does not stay on the sheet."""
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
        if over > SLACK:
            raise OffSheet(key, getattr(printer, key), edge, over)
