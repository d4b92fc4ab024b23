"""Sheets: faces at places on real paper, with the marks that help to cut and fold them."""

from dataclasses import dataclass

from layouts.face import Face, Path, TextRun, Turn


@dataclass(frozen=True, slots=True)
class Placed:
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


@dataclass(frozen=True, slots=True)
class Sheet:
    """One side of one piece of paper, in points from its top left corner, y downwards."""

    width: float
    height: float
    placed: tuple[Placed, ...]
    marks: tuple[Path | TextRun, ...] = ()
