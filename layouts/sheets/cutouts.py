"""Cards on paper: a card in, the cutouts that it may be, turned and mirrored."""

from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tagend.layouts.paper.face import Face, Turn
from tagend.layouts.sheets.sheet import Placed

Backs = Literal["fold", "long-edge", "short-edge", "separate"]
Axis = Literal["upright", "level"]

_QUARTER: dict[Turn, Turn] = {0: 90, 90: 180, 180: 270, 270: 0}
# Where the top of a card points, seen from the other side of the paper.
_MIRRORED: dict[Axis, dict[Turn, Turn]] = {
    "upright": {0: 0, 90: 270, 180: 180, 270: 90},
    "level": {0: 180, 90: 90, 180: 0, 270: 270},
}


class Card(Struct, frozen=True):
    """Two sides of one size; the finished card turns over like the leaf of a book."""

    front: Face
    back: Face | None = None

    def __post_init__(self) -> None:
        front, back = self.front, self.back
        if back and (back.width, back.height) != (front.width, front.height):
            raise ValueError(f"the back of {self.front.name!r} is of another size than its front")


class Cutout(Struct, frozen=True):
    """What is cut out in one go: faces placed from its own top left corner.

    `fold` halves it by an upright or a level line; `back` goes on the paper's other side.
    """

    width: float
    height: float
    placed: tuple[Placed, ...]
    fold: Axis | None = None
    back: Face | None = None


def cutouts(card: Card, backs: Backs) -> tuple[Cutout, ...]:
    """Return the ways to cut a card out, the plainest first."""
    front, back = card.front, card.back
    if back is None or backs != "fold":
        plain = Cutout(front.width, front.height, (Placed(front, 0, 0),), back=back)
        return plain, turned(plain)
    # The front comes first for whoever has the page read out.
    beside = (Placed(front, front.width, 0), Placed(back, 0, 0))
    book = Cutout(2 * front.width, front.height, beside, "upright")
    # Folded backwards, what stands above comes out upside down.
    above = (Placed(front, 0, front.height), Placed(back, 0, 0, 180))
    tent = Cutout(front.width, 2 * front.height, above, "level")
    return book, turned(book), tent, turned(tent)


def turned(cutout: Cutout) -> Cutout:
    """Return a cutout after a quarter turn anticlockwise, when its right edge is on top."""
    placed = tuple(
        replace(part, x=part.y, y=cutout.width - part.x - part.size[0], turn=_QUARTER[part.turn])
        for part in cutout.placed
    )
    fold: Axis | None = cutout.fold and ("level" if cutout.fold == "upright" else "upright")
    return replace(cutout, width=cutout.height, height=cutout.width, placed=placed, fold=fold)


def mirrored(placed: Placed, width: float, height: float, axis: Axis) -> Placed:
    """Return where a face stands, seen from the back of a sheet turned over about the axis.

    It stays upright for somebody who turns the card over like the leaf of a book.
    """
    across, down = placed.size
    x = width - placed.x - across if axis == "upright" else placed.x
    y = height - placed.y - down if axis == "level" else placed.y
    return replace(placed, x=x, y=y, turn=_MIRRORED[axis][placed.turn])


def turning_axis(width: float, height: float, edge: Literal["long-edge", "short-edge"]) -> Axis:
    """Return the axis about which a printer turns a sheet over, bound at its long or short edge."""
    upright_is_long = height >= width
    return "upright" if upright_is_long == (edge == "long-edge") else "level"
