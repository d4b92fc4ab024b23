"""Sheets: faces at places on real paper, with the marks that help to cut and fold them."""

from typing import Literal, TypeAlias

from msgspec import Struct

from tagend.layouts.paper.face import Box, Face, Path, TextRun, Turn

SheetSide: TypeAlias = Literal["front", "back"]

# Where one point to the right on a face goes on the sheet, and where one point down.
TURNED: dict[Turn, tuple[int, int, int, int]] = {
    0: (1, 0, 0, 1),
    90: (0, -1, 1, 0),
    180: (-1, 0, 0, -1),
    270: (0, 1, -1, 0),
}


class Placed(Struct, frozen=True):
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

    @property
    def box(self) -> Box:
        """The box on the sheet."""
        width, height = self.size
        return self.x, self.y, self.x + width, self.y + height

    def at(self, u: float, v: float) -> tuple[float, float]:
        """Return where a point of the face lies on the sheet."""
        left, top, right, bottom = self.box
        x_by_u, y_by_u, x_by_v, y_by_v = TURNED[self.turn]
        x = right if x_by_u + x_by_v < 0 else left
        y = bottom if y_by_u + y_by_v < 0 else top
        return x + x_by_u * u + x_by_v * v, y + y_by_u * u + y_by_v * v


class Trim(Struct, frozen=True):
    """What is left of a page once it is cut, and how far its design reaches beyond that."""

    x: float
    y: float
    width: float
    height: float
    bleed: float


class Adjustment(Struct, frozen=True):
    """How a sheet is stretched from its top left corner and then moved before it is drawn."""

    x: float = 0.0
    y: float = 0.0
    scale_x: float = 1.0
    scale_y: float = 1.0

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Return where a place on the sheet is drawn."""
        return self.scale_x * x + self.x, self.scale_y * y + self.y


class Pieces(Struct, frozen=True):
    """What comes of a sheet: so many of what a noun calls, and how many printed sides of these.

    A sheet of backs has sides alone.
    """

    noun: str
    count: int
    sides: int


class Sheet(Struct, frozen=True):
    """One side of one piece of paper, in points from its top left corner, y downwards."""

    width: float
    height: float
    placed: tuple[Placed, ...]
    marks: tuple[Path | TextRun, ...] = ()
    side: SheetSide = "front"
    trim: Trim | None = None  # of a page that a print shop trims to one card
    adjustment: Adjustment = Adjustment()
    cut: Pieces | None = None  # of a sheet that is cut up, or whose labels are taken off
