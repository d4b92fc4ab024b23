"""Faces in; one sheet as large as they need out, on which they stand one below the other."""

from collections.abc import Sequence
from itertools import accumulate

from tagend.layouts.paper.curves import rounded
from tagend.layouts.paper.face import MM, Face, Path
from tagend.layouts.sheets.marks import PEN
from tagend.layouts.sheets.sheet import Placed, Sheet

BETWEEN = 3 * MM  # two faces
EDGE_GREY = 0.6  # enough to see an edge by, and not to be taken for what is said


def column(faces: Sequence[Face], corner: float = 0.0) -> Sheet:
    """Return the sheet, each face with its edge drawn, rounded by the radius of its corners."""
    downs = accumulate((face.height + BETWEEN for face in faces), initial=0.0)
    placed = tuple(Placed(face, 0, y) for face, y in zip(faces, downs, strict=False))
    *_, right, bottom = map(max, zip(*(each.box for each in placed), strict=True))
    edges = tuple(_edge(each, corner) for each in placed)
    return Sheet(right, bottom, placed, edges)


def _edge(placed: Placed, corner: float) -> Path:
    half = PEN / 2  # so that the whole line is seen at the sheet's own edge
    x, y, width, height = placed.x + half, placed.y + half, placed.size[0], placed.size[1]
    steps = rounded(x, y, width - PEN, height - PEN, corner - half)
    return Path(steps, line=PEN, grey=EDGE_GREY)
