"""Sheets: faces at places on real paper, with the marks that help to cut and fold them."""

from typing import Literal, NamedTuple, TypeAlias

from tagend.layouts.paper.face import Face, Path, TextRun, Turn

SheetSide: TypeAlias = Literal["front", "back"]


class Placed(NamedTuple):
    """A face on a sheet: the top left corner of the box it fills there, after its turn."""

    face: Face
    x: float
    y: float
    turn: Turn = 0

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the box on the sheet."""
        if self.turn in (90, 270):
            return self.face.height, self.face.width
        return self.face.width, self.face.height

    def at(self, u: float, v: float) -> tuple[float, float]:
        """Return where a point of the face lies on the sheet."""
        across, down = self.size
        match self.turn:
            case 0:
                return self.x + u, self.y + v
            case 90:
                return self.x + v, self.y + down - u
            case 180:
                return self.x + across - u, self.y + down - v
            case 270:
                return self.x + across - v, self.y + u


class Trim(NamedTuple):
    """What is left of a page once it is cut, and how far its design reaches beyond that."""

    x: float
    y: float
    width: float
    height: float
    bleed: float


class Adjustment(NamedTuple):
    """How a sheet is stretched from its top left corner and then moved before it is drawn."""

    x: float = 0.0
    y: float = 0.0
    scale_x: float = 1.0
    scale_y: float = 1.0

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Return where a place on the sheet is drawn."""
        return self.scale_x * x + self.x, self.scale_y * y + self.y


class Sheet(NamedTuple):
    """One side of one piece of paper, in points from its top left corner, y downwards."""

    width: float
    height: float
    placed: tuple[Placed, ...]
    marks: tuple[Path | TextRun, ...] = ()
    side: SheetSide = "front"
    trim: Trim | None = None  # of a page that a print shop trims to one card
    adjustment: Adjustment = Adjustment()
