"""Cards in, pages for a print shop out: one side a page, with its bleed and its crop marks."""

from collections.abc import Sequence
from itertools import chain

from tagend.layouts.paper.face import MM, Face
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.marks import EDGE, GAP, LENGTH, Strip, StripRow, sheet_marks
from tagend.layouts.sheets.sheet import Placed, Sheet, SheetSide, Trim

BLEED = 3 * MM  # common practice in print; crop marks begin beyond it, at GAP
MARGIN = EDGE + LENGTH + GAP


def press_sheets(cards: Sequence[Card]) -> tuple[Sheet, ...]:
    """Return the sides of the cards, each on a page whose boxes tell trim and bleed.

    When any card has a back, every front is followed by a back, for others an empty one.
    """
    if not any(card.back for card in cards):
        return tuple(_page(card.front, (card.front,), "front") for card in cards)
    sides = (
        (
            _page(card.front, (card.front,), "front"),
            _page(card.front, (card.back,) if card.back else (), "back"),
        )
        for card in cards
    )
    return tuple(chain.from_iterable(sides))


def _page(size: Face, faces: Sequence[Face], side: SheetSide) -> Sheet:
    right, bottom = MARGIN + size.width, MARGIN + size.height
    width, height = right + MARGIN, bottom + MARGIN
    return Sheet(
        width,
        height,
        tuple(Placed(face, MARGIN, MARGIN) for face in faces),
        sheet_marks((StripRow(MARGIN, bottom, (Strip(MARGIN, right),)),), width, height),
        side=side,
        trim=Trim(MARGIN, MARGIN, size.width, size.height, BLEED),
    )
