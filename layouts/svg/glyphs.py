"""A text and its font in, the outlines of its glyphs at their places along a line out, as one path.

A glyph by itself that the path refers to would make a smaller file, of which a browser takes three
to eight times as long to show it.
"""

import re
from functools import lru_cache
from itertools import cycle
from typing import NamedTuple

from tagend.fonts import text_width
from tagend.fonts.outlines import EM, outlines
from tagend.layouts.svg.shapes import number

_STEP = re.compile(r"([A-Z])([^A-Z]*)")


class _Contour(NamedTuple):
    """A closed line of a glyph: where it starts, and from there on steps that hold anywhere."""

    x: float
    y: float
    steps: str


@lru_cache(maxsize=2048)
def glyphs_path(text: str, font: str) -> str:
    """Return path data in units of an em, y upwards, from the text's start on its baseline."""
    shapes = outlines(font, text)
    x, path = 0.0, ""
    for character in text:
        for contour in _contours(shapes[character]):
            path += f"M{number(x + contour.x)} {number(contour.y)}{contour.steps}"
        x += text_width(character, font, EM)
    return path


@lru_cache(maxsize=2048)
def _contours(outline: str) -> tuple[_Contour, ...]:
    """Return the contours of an outline."""
    return tuple(_contour(written) for written in outline.split("M")[1:])


def _contour(written: str) -> _Contour:
    """Return what is written behind an M: a place, others to which lines lead, and more."""
    (_, places), *others = _STEP.findall(f"M{written}")
    left, top, *line = map(float, places.split())
    lines = (("L", line[place : place + 2]) for place in range(0, len(line), 2))
    x, y, steps = left, top, ""
    for letter, ends in (*lines, *((each, map(float, at.split())) for each, at in others)):
        match letter, *ends:
            case ["H", end]:
                steps, x = f"{steps}h{number(end - x)}", end
            case ["V", end]:
                steps, y = f"{steps}v{number(end - y)}", end
            case ["Z"]:
                steps += "z"
            case [_, *points]:
                by = (end - start for end, start in zip(points, cycle((x, y)), strict=False))
                steps += letter.lower() + " ".join(map(number, by))
                x, y = points[-2:]
    return _Contour(left, top, steps.replace(" -", "-"))
