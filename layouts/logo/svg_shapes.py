"""An SVG's text in; its shapes in, the lowest first, with plain colours, out.

What would change their look in ways that are not drawn here is refused.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from math import hypot
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from tagend.layouts.logo.logo import BadLogo

if TYPE_CHECKING:
    from svgelements import SVG, Matrix, PathSegment, Shape, SVGElement

Colour: TypeAlias = tuple[float, ...]  # red, green and blue, from 0 to 1
Box: TypeAlias = tuple[float, float, float, float]  # left, top, right, bottom

# The words that change nothing; in their absence each is so.
_OPAQUE = r"1(\.0*)?|100%"
_PLAIN = {
    "opacity": _OPAQUE,
    "mask": "none",
    "filter": "none",
    "marker": "none",
    "marker-start": "none",
    "marker-mid": "none",
    "marker-end": "none",
    "mix-blend-mode": "normal",
    "paint-order": "normal|fill( stroke)?( markers)?",
    "vector-effect": "none",
}
# The library takes every colour that it cannot read for black.
_BLACK = re.compile(r"black|#0{3}.?|#0{6}(..)?|(rgb|hsl)a?\(0[\s,]+0%?[\s,]+0%?\b.*\)")


class Painted(NamedTuple):
    """A shape, in units of its own, with the colours that it has."""

    shape: "Shape"
    fill: Colour | None
    stroke: Colour | None


def painted_shapes(root: "SVG") -> Iterator[Painted]:
    """Yield the shapes that show within the view. Raises BadLogo."""
    from svgelements import Shape

    view = (0, 0, root.width, root.height)
    seen = {id(shape): _common(_box(shape), view) for shape in _shapes(root)}
    for element in root.elements():
        _check_plain(element.values)
        _check_clip(element, root, seen)
        if not isinstance(element, Shape) or not seen[id(element)]:
            continue
        if (element.values.get("visibility") or "visible") != "visible":
            continue
        fill, stroke = _colour(element, "fill"), _stroke(element)
        if (fill or stroke) and element.transform.determinant:
            yield Painted(element, fill, stroke)


def segments(shape: "Shape") -> Iterator["PathSegment"]:
    """Yield a shape's lines and curves in its own units, every arc as curves."""
    from svgelements import Arc

    for segment in shape.segments(transformed=False):
        if isinstance(segment, Arc):
            yield from segment.as_cubic_curves()
        else:
            yield segment


def six(matrix: "Matrix") -> tuple[float, ...]:
    """Return a matrix as SVG and PDF write it."""
    return matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f


def _check_plain(values: Mapping[str, str]) -> None:
    for key, plain in _PLAIN.items():
        value = str(values.get(key) or "none").strip()
        if value != "none" and not re.fullmatch(plain, value):
            raise _not_drawn(f"{key}: {value[:40]}")


def _check_clip(element: "SVGElement", root: "SVG", seen: Mapping[int, Box | None]) -> None:
    """Refuse a clip path, but for a rectangle that cuts nothing off: drawing programs add them."""
    from svgelements import Matrix, Rect

    link = element.values.get("clip-path") or "none"
    if link == "none":
        return
    clip = root.get_element_by_url(link)
    outermost = Matrix(element.values.get("viewport_transform", ""))
    if clip is not None and len(clip) == 1 and isinstance(clip[0], Rect):
        window, boxes = _box(clip[0]), [seen[id(shape)] for shape in _shapes(element)]
        whole = all(box is None or _common(box, window) == box for box in boxes)
        if whole and element.transform == outermost:
            return
    raise _not_drawn("clip-path")


def _shapes(element: "SVGElement") -> Iterator["Shape"]:
    """Yield the shapes in a group, or the one that this is."""
    from svgelements import Group, Shape

    parts = element.select() if isinstance(element, Group) else [element]
    return (part for part in parts if isinstance(part, Shape))


def _stroke(shape: "Shape") -> Colour | None:
    return _colour(shape, "stroke") if shape.stroke_width > 0 else None


def _colour(shape: "Shape", key: str) -> Colour | None:
    """Return the colour of a shape's fill or stroke, None where it has none."""
    written = (shape.values.get(key) or "none").strip().lower()
    found = getattr(shape, key)
    if written == "none" or found is None or found.value is None or found.alpha == 0:
        return None
    opacity = (shape.values.get(f"{key}-opacity") or "1").strip()
    if found.alpha < 255 or not re.fullmatch(_OPAQUE, opacity):
        raise _not_drawn(f"a see-through {key}")
    colour = found.red / 255, found.green / 255, found.blue / 255
    if not any(colour) and not _BLACK.fullmatch(written):
        raise _not_drawn(f"{key}: {written[:40]}")
    return colour


def _not_drawn(found: str) -> BadLogo:
    return BadLogo(
        f"this SVG has {found!r}, which is not drawn here", "use plain colours, or save it as PDF"
    )


def _box(shape: "Shape") -> Box:
    """Return the box around a shape's ends and handles, and its pen, as it stands."""
    points = [point for segment in segments(shape) for point in _points(segment)]
    matrix = shape.transform
    xs, ys = zip(*(matrix.point_in_matrix_space(point) for point in points), strict=True)
    pen = shape.stroke_width / 2 * hypot(*six(matrix)[:4]) if _stroke(shape) else 0.0
    return min(xs) - pen, min(ys) - pen, max(xs) + pen, max(ys) + pen


def _points(segment: "PathSegment") -> Iterator[Sequence[float]]:
    for name in ("start", "control", "control1", "control2", "end"):
        point = getattr(segment, name, None)
        if point is not None:
            yield point


def _common(one: Box, other: Box) -> Box | None:
    """Return the box that two boxes share, None where there is none."""
    left, top = max(one[0], other[0]), max(one[1], other[1])
    right, bottom = min(one[2], other[2]), min(one[3], other[3])
    return (left, top, right, bottom) if left <= right and top <= bottom else None
