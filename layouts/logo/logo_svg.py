"""The bytes of an SVG file in, a logo of its filled and stroked shapes out."""

import re
from collections.abc import Iterable, Iterator
from io import StringIO
from math import isfinite
from typing import TYPE_CHECKING

from tagend.layouts.logo.logo import BadLogo, Logo, drawn, number
from tagend.layouts.logo.svg_shapes import Colour, Painted, painted_shapes, segments, six
from tagend.layouts.logo.svg_source import svg_source

if TYPE_CHECKING:
    from svgelements import PathSegment, Shape

_LARGEST = 1e6  # units
_FAINTEST = 0.98  # what is no darker than this shows as bare paper
_CAPS = {"butt": 0, "round": 1, "square": 2}
_JOINS = {"miter": 0, "round": 1, "bevel": 2}


def read_svg(data: bytes) -> Logo:
    """Return what the file draws within its view box. Raises BadLogo."""
    try:
        return _drawn(svg_source(data))
    except BadLogo:
        raise
    except Exception as fault:  # whatever the library meets in a stranger's file
        raise BadLogo("this SVG cannot be read", "save it again as plain SVG") from fault


def _drawn(source: str) -> Logo:
    from svgelements import SVG

    root = SVG.parse(StringIO(source), reify=False, on_error="raise")
    width, height = float(root.width), float(root.height)
    if not (0 < width < _LARGEST and 0 < height < _LARGEST):
        raise BadLogo(f"this SVG is {width:g} × {height:g} units", "give it another viewBox")
    painted = list(painted_shapes(root))
    colours = [colour for _, fill, stroke in painted for colour in (fill, stroke) if colour]
    if not colours:
        raise BadLogo("this SVG has nothing to draw", "give one that shows something")
    if all(min(colour) >= _FAINTEST for colour in colours):
        raise BadLogo("it is all white", "give a version that is dark on white paper")
    lines = (f"1 0 0 -1 0 {number(height)} cm", *map(_operators, painted))
    return drawn(width, height, "\n".join(lines).encode())


def _operators(painted: Painted) -> str:
    """Return a shape as PDF draws it: ISO 32000-1, 8.4 and 8.5."""
    shape, fill, stroke = painted
    lines = ["q", f"{_numbers(six(shape.transform))} cm"]
    if fill:
        lines.append(_ink(fill, "g", "rg"))
    if stroke:
        lines += [_ink(stroke, "G", "RG"), *_pen(shape)]
    lines += map(_segment, segments(shape))
    rule = "*" if fill and shape.values.get("fill-rule") == "evenodd" else ""
    lines.append(("B" if fill and stroke else "f" if fill else "S") + rule)
    return "\n".join((*lines, "Q"))


def _ink(colour: Colour, grey: str, rgb: str) -> str:
    """Return the operator that takes a colour; of a grey, black ink alone."""
    if len(set(colour)) == 1:
        return f"{number(colour[0])} {grey}"
    return f"{_numbers(colour)} {rgb}"


def _pen(shape: "Shape") -> Iterator[str]:
    values = shape.values
    yield f"{_numbers([shape.stroke_width])} w"
    yield f"{_CAPS[values.get('stroke-linecap') or 'butt']} J"
    yield f"{_JOINS[values.get('stroke-linejoin') or 'miter']} j"
    yield f"{_numbers([max(float(values.get('stroke-miterlimit') or 4), 1)])} M"
    dashes = (values.get("stroke-dasharray") or "none").strip()
    lengths = [] if dashes == "none" else list(map(_units, re.split(r"\s*,\s*|\s+", dashes)))
    if sum(lengths) > 0:
        start = _units(values.get("stroke-dashoffset") or "0")
        yield f"[{_numbers(lengths)}] {_numbers([start % (2 * sum(lengths))])} d"


def _units(written: str) -> float:
    from svgelements import Length

    return float(Length(written).value(ppi=96))  # CSS: 96 units are an inch


def _segment(segment: "PathSegment") -> str:
    from svgelements import Close, CubicBezier, Move, QuadraticBezier

    start, end = segment.start, segment.end
    match segment:
        case Move():
            return f"{_numbers(end)} m"
        case Close():
            return "h"
        case CubicBezier():
            return f"{_numbers((*segment.control1, *segment.control2, *end))} c"
        case QuadraticBezier():  # each handle of the cubic is two thirds of the way to this one's
            handles = (
                place + 2 / 3 * (control - place)
                for at in (start, end)
                for place, control in zip(at, segment.control, strict=True)
            )
            return f"{_numbers((*handles, *end))} c"
    return f"{_numbers(end)} l"


def _numbers(values: Iterable[float]) -> str:
    listed = [float(value) for value in values]
    if not all(isfinite(value) and abs(value) < _LARGEST for value in listed):
        raise BadLogo("this SVG has a number that is too large", "give it another viewBox")
    return " ".join(map(number, listed))
