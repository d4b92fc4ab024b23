"""A black strand is black wherever nothing lies over it: no white speck in it, as it is printed."""

from collections.abc import Iterator
from io import BytesIO
from math import hypot

from PIL import Image
from resvg_py import svg_to_bytes

from tagend.cards.figures.frames import Frame, knot_frames
from tagend.cards.figures.ink import inked
from tagend.cards.figures.strand import Course
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Face
from tagend.layouts.svg.svg import write_svg
from tests.cards.figures.stages import every_figure
from tests.cards.figures.topology import Point

UNIT = 2.0  # points a thickness
DOTS = 10  # in a point
WITHIN = 0.2  # thicknesses from a strand's middle
CLEAR = 1.3  # thicknesses from a part that lies higher


@every_figure
def test_no_white_specks_in_black_strands(knot: Knot, thick: int, thin: int) -> None:
    for frame in knot_frames(knot, thick, thin):
        seen = [point for strand in frame.strands for point in bare(strand, frame)]
        if seen:
            picture = rendered(frame)
            assert [point for point in seen if speck(point, frame, picture)] == []


def bare(strand: Course, frame: Frame) -> Iterator[Point]:
    """Yield the points of a black strand over which nothing lies, but itself in a bend."""
    if strand.look != "solid" or strand.width != 1.0:  # metal meets itself
        return
    for number, point in enumerate(strand.points[3:-3], start=3):
        if not any(
            hypot(x - point[0], y - point[1]) < CLEAR * max(other.width, 1.0) and z > point[2]
            for other in frame.strands
            for place, (x, y, z) in enumerate(other.points)
            if other is not strand or abs(place - number) > 8
        ):
            yield point


def rendered(frame: Frame) -> Image.Image:
    size = frame.box.width * UNIT, frame.box.height * UNIT
    face = Face("frame", *size, inked(frame.strands, UNIT, frame.arrows))
    svg = write_svg(face, title="frame").decode()
    return Image.open(BytesIO(bytes(svg_to_bytes(svg_string=svg, dpi=72 * DOTS)))).convert("L")


def speck(point: Point, frame: Frame, picture: Image.Image) -> bool:
    """Return whether the paper shows by the middle of a strand."""
    near = [(x * WITHIN, y * WITHIN) for x in (-1, 0, 1) for y in (-1, 0, 1)]
    at = (
        (
            int((point[0] + dx - frame.box.left) * UNIT * DOTS),
            int((frame.box.high - point[1] - dy) * UNIT * DOTS),
        )
        for dx, dy in near
    )
    return any(int(picture.getpixel(spot) or 0) > 127 for spot in at)  # type: ignore[arg-type]
