"""A card's size in; a sheet on which laminating pouches are laid, to place cards and to cut, out.

A card is cut out first and the pouch afterwards, beyond the card: film that ends on the paper's
edge lets water in. So the lines to cut by cannot be on the card's own sheet.
"""

from collections.abc import Sequence
from typing import Literal, TypeAlias

from msgspec.structs import replace

from tagend.fonts import Chain
from tagend.layouts.paper.curves import circle, rounded
from tagend.layouts.paper.face import MM, Face, Item, Path, shifted
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.rulers import PEN
from tagend.layouts.paper.text import TooWide, break_lines, set_below
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.imposition import MARGIN, place_cards
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import CardSize, Paper

Use: TypeAlias = Literal["wet", "dry"]

# The film that is sealed all round: common practice in print.
SEALED: dict[Use, float] = {"wet": 5 * MM, "dry": 3.2 * MM}
HOLE = 5 * MM  # what an office punch makes is 5 to 6 mm across, common practice
_BEYOND = 3 * MM  # of film between the hole and the film's end, no source
ROUND = 3 * MM  # of the film's corners; square ones peel (common practice)

LEADING = 1.25


def pouch_sheet(
    size: CardSize,
    count: int,
    paper: Paper,
    use: Use,
    told: Sequence[str],
    fonts: Chain,
    margin: float = MARGIN,
    *,
    hole: bool = False,
) -> Sheet:
    """Return a sheet for as many cards as it holds, at most `count`, parted by shared cuts.

    With a `hole` the film is wider at the left, and has it there: as far from the card as the film
    reaches anywhere, for a hole through sealed paper leaks. What to do is told within each card,
    where it is large enough. Raises `DoesNotFit`.
    """
    pouch = Card(_pouch(size, SEALED[use], told, fonts, _BEYOND + HOLE if hole else 0.0))
    (sheet, *_) = place_cards([pouch] * count, paper, margin=margin, noun="pouch")
    return replace(sheet, cut=None)  # pouches are laid on it


def _pouch(size: CardSize, sealed: float, told: Sequence[str], fonts: Chain, more: float) -> Face:
    """Return what one pouch is cut to, with so much more film at the left, where a hole is."""
    left, width = sealed + more, size.width + 2 * sealed + more
    height = size.height + 2 * sealed
    card = rounded(left, sealed, size.width, size.height, size.corner)
    hole = circle(more - HOLE / 2, sealed + HOLE / 2, HOLE / 2)
    items = (
        Path(rounded(0, 0, width, height, ROUND), line=2 * PEN),
        Path(card, line=PEN, dash=(1.5, 1.5)),
        *([Path(hole, line=2 * PEN)] if more else ()),
        *shifted(_words(told, fonts, size, sealed), left, sealed),
    )
    return Face(name=f"pouch for {size.name}", width=width, height=height, items=items)


def _words(told: Sequence[str], fonts: Chain, size: CardSize, sealed: float) -> tuple[Item, ...]:
    """Return what to do, in the middle of the card, or nothing where that is too small for it."""
    try:
        room = size.width - 2 * sealed
        lines = [line for text in told for line in break_lines(text, fonts, FLOOR, room)]
    except TooWide:
        return ()
    pitch = LEADING * FLOOR
    if pitch * len(lines) > size.height - 2 * sealed:
        return ()
    left = (size.width - max(line.width for line in lines)) / 2
    runs, _ = set_below(lines, left, (size.height - pitch * len(lines)) / 2, LEADING)
    return tuple(runs)
