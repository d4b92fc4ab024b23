"""Cards in, pages for a print shop out: one side a page, with its bleed and its crop marks."""

from collections.abc import Sequence

from tagend.layouts.paper.face import MM, Face
from tagend.layouts.sheets.cutouts import Card, Cutout
from tagend.layouts.sheets.marks import EDGE, GAP, LENGTH, sheet_marks
from tagend.layouts.sheets.sheet import Cut, Placed, Sheet, SheetSide, Trim
from tagend.layouts.sheets.shelves import Slot

BLEED = 3 * MM  # common practice in print; crop marks begin beyond it, at GAP
MARGIN = EDGE + LENGTH + GAP


def press_sheets(cards: Sequence[Card]) -> tuple[Sheet, ...]:
    """Return the sides of the cards, each on a page whose boxes tell trim and bleed.

    When any card has a back, every front is followed by a back, for others an empty one.
    """
    sides: tuple[SheetSide, ...] = ("front", "back") if any(c.back for c in cards) else ("front",)
    return tuple(
        _page(card.front, card.front if side == "front" else card.back, side)
        for card in cards
        for side in sides
    )


def _page(size: Face, face: Face | None, side: SheetSide) -> Sheet:
    slot = Slot(Cutout(size.width, size.height, ()), MARGIN, MARGIN)
    width, height = slot.right + MARGIN, slot.bottom + MARGIN
    return Sheet(
        width=width,
        height=height,
        placed=(Placed(face, MARGIN, MARGIN),) if face else (),
        marks=sheet_marks((slot,), width, height),
        side=side,
        cut=Cut("card", int(side == "front"), int(face is not None)),
        trim=Trim(x=MARGIN, y=MARGIN, width=size.width, height=size.height, bleed=BLEED),
    )
