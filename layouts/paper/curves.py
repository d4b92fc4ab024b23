"""Round shapes: a box and a radius in points in, the steps of a path out."""

from tagend.layouts.paper.face import Step, rectangle

# The control points of the Bezier curve nearest to a quarter circle: 4/3 (sqrt 2 - 1).
_ARC = 4 / 3 * (2**0.5 - 1)

Steps = tuple[Step, ...]


def corner_arcs(x: float, y: float, width: float, height: float, radius: float) -> Steps:
    """Return the four arcs that round the corners of a box, each by itself."""
    right, bottom = x + width, y + height
    return (
        *_corner(x, y, radius, radius),
        *_corner(right, y, -radius, radius),
        *_corner(right, bottom, -radius, -radius),
        *_corner(x, bottom, radius, -radius),
    )


def rounded(x: float, y: float, width: float, height: float, radius: float) -> Steps:
    """Return the closed outline of a box with round corners; with a radius of 0, a rectangle."""
    if radius <= 0:
        return rectangle(x, y, width, height)
    right, bottom, k = x + width, y + height, (1 - _ARC) * radius
    return (
        ("move", x + radius, y),
        ("line", right - radius, y),
        ("curve", right - k, y, right, y + k, right, y + radius),
        ("line", right, bottom - radius),
        ("curve", right, bottom - k, right - k, bottom, right - radius, bottom),
        ("line", x + radius, bottom),
        ("curve", x + k, bottom, x, bottom - k, x, bottom - radius),
        ("line", x, y + radius),
        ("curve", x, y + k, x + k, y, x + radius, y),
        ("close",),
    )


def circle(x: float, y: float, radius: float) -> Steps:
    """Return the outline of a circle around a place."""
    return rounded(x - radius, y - radius, 2 * radius, 2 * radius, radius)


def _corner(x: float, y: float, toward_x: float, toward_y: float) -> Steps:
    """Return the arc that rounds the corner at a place, by the radius towards the middle."""
    kx, ky = (1 - _ARC) * toward_x, (1 - _ARC) * toward_y
    return (("move", x, y + toward_y), ("curve", x, y + ky, x + kx, y, x + toward_x, y))
