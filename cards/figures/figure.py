"""How a knot is drawn, whatever its turns."""

from collections.abc import Callable
from typing import TypeAlias

from msgspec import Struct

from tagend.cards.figures.step import Stage
from tagend.cards.figures.strand import Course

_Build: TypeAlias = Callable[[int, int], tuple[Course, ...]]
_Steps: TypeAlias = Callable[[int, int], tuple[Stage, ...]]


class Figure(Struct, frozen=True):
    """How a knot is drawn: laid up in steps, and finished."""

    laid: tuple[tuple[_Build, _Steps], ...]
    drawn: _Build
    opening: tuple[tuple[_Build, _Steps], ...] = ()  # before its strands meet
    pulled: bool = True  # by its standing parts, which seats it
