"""A strip with a hole's place beside a card's sides, so that a deck can hang on a ring."""

from tagend.layouts.paper.curves import circle
from tagend.layouts.paper.face import MM, Face, Path, shifted
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.pouch import HOLE

_STRIP = 10 * MM


def with_hole(card: Card) -> Card:
    """Return the card wider by a strip at the left of its front, which is the right of its back."""
    behind = _widened(card.back, at_left=False) if card.back is not None else None
    return Card(_widened(card.front, at_left=True), behind)


def _widened(face: Face, *, at_left: bool) -> Face:
    x = _STRIP / 2 if at_left else face.width + _STRIP / 2
    hole = Path(circle(x, _STRIP / 2, HOLE / 2), 0.5)
    items = shifted(face.items, _STRIP if at_left else 0.0, 0.0)
    return Face(face.name, face.width + _STRIP, face.height, (*items, hole))
