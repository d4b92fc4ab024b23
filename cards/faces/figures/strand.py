"""A strand of a figure: its way through space and how it looks."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, TypeAlias

from cards.faces.figures.curve import Point, smooth

Look: TypeAlias = Literal["outline", "solid"]


@dataclass(frozen=True, slots=True)
class Strand:
    """Points along a strand, from its first end to its last, in its own thicknesses."""

    points: tuple[Point, ...]
    look: Look
    width: float = 1.0
    first_cut: bool = False  # a cut end is closed; the others run on beyond the figure
    last_cut: bool = True


def strand(places: Iterable[Point], look: Look, **ends: bool) -> Strand:
    return Strand(smooth(tuple(places)), look, **ends)


def turned(places: Iterable[Point]) -> list[Point]:
    """Return the places turned half round about the line of sight."""
    return [(-x, -y, z) for x, y, z in places]
