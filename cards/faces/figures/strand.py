"""A strand of a figure: its way through space and how it looks."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from cards.faces.figures.curve import Point, smooth

Look: TypeAlias = Literal["outline", "solid"]


@dataclass(frozen=True, slots=True)
class Strand:
    """Points along a strand, from its first end to its last, in strand's thicknesses.

    A cut end is closed; any other runs on beyond the figure.
    """

    points: tuple[Point, ...]
    look: Look
    width: float = 1.0
    first_cut: bool = False
    last_cut: bool = False


def line(places: Sequence[Point], look: Look = "outline") -> Strand:
    """Return a strand from its standing part, which runs on, to its tag, which is cut."""
    return Strand(smooth(places), look, last_cut=True)


def turned(places: Sequence[Point]) -> list[Point]:
    """Return places turned half round about the line of sight."""
    return [(-x, -y, z) for x, y, z in places]
