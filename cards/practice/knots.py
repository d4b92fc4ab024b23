"""Knots as the knots file describes them: a knot and its strands in, turns and words out."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, Protocol, TypeVar

from tagend.cards.base.named_table import NamedTable

Place = Literal["line", "butt", "joint", "ring", "fly"]
Mixed = Literal["yes", "no", "hard nylon"]
Straight = Literal["yes", "nearly", "no"]
Side = Literal["thick", "thin"]

COUNT = re.compile(r"\{(\w*)\}")  # where a step takes in a number of turns

# Millimetres are printed to the hundredth, so a strand of 0.33 mm may be a 0.013 in one (0.3302).
PRINTED_MM = Fraction(1, 100)
ROUNDED_MM = PRINTED_MM / 2  # what a printed diameter may be off


@dataclass(frozen=True, slots=True)
class Rung:
    """A row of a ladder of turns, for strands of `from_mm` and thicker."""

    thick: int
    thin: int
    from_mm: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class ExtraTurns:
    """Turns added on the thin side where the strands differ by `step_mm` or more."""

    step_mm: Fraction
    thin: int


@dataclass(frozen=True, slots=True)
class Takes:
    """What one side of a knot takes up; the head of knots.toml says what each part means."""

    core: int = 0
    strands: int = 1
    body: int = 0
    loop: bool = False
    hold: int = 1


@dataclass(frozen=True, slots=True)
class Sides:
    """What each side of a knot takes up."""

    thick: Takes
    thin: Takes


@dataclass(frozen=True, slots=True)
class Knot:
    """One knot of the knots file; its head says what each key means."""

    name: str
    code: str
    places: tuple[Place, ...]
    straight: Straight
    takes: Sides
    steps: tuple[str, ...]
    seat: str
    also: tuple[str, ...] = ()
    mixed: Mixed | None = None  # None where no two strands meet
    shock: bool = False
    wire: bool = False
    wire_only: bool = False
    thickest_mm: Fraction | None = None
    largest_step_mm: Fraction | None = None
    apart: bool = False
    whole_side_passes: bool = False
    tapered_only: bool = False
    turns: tuple[Rung, ...] = ()
    extra_turns: ExtraTurns | None = None
    caution: str | None = None
    source: tuple[str, ...] = ()

    def takes_strand(self, diameter_mm: Fraction, *, wire: bool) -> bool:
        """Whether it holds on a strand of this kind and still draws up on one as thick."""
        suits = self.wire if wire else not self.wire_only
        thickest = self.thickest_mm
        return suits and (thickest is None or diameter_mm - ROUNDED_MM <= thickest)

    @property
    def counted(self) -> bool:
        """Whether its turns depend on the strand, so that a card must say them."""
        return len(self.turns) > 1

    def steps_with(self, thick: str, thin: str) -> tuple[str, ...]:
        """Return the steps with the turns of each side counted in: `5`, or `5 to 7`."""
        counts = {"thick": thick, "thin": thin, "turns": thin}
        return tuple(COUNT.sub(lambda place: counts[place[1]], step) for step in self.steps)


@dataclass(frozen=True, slots=True)
class Hold:
    """A row of the ladder of hands: the end to hold on strands of `from_mm` and thicker."""

    length_mm: Fraction
    from_mm: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Knots(NamedTable[Knot]):
    """Every knot, and the lengths that all of them ask of the hands."""

    hold: tuple[Hold, ...]
    tag_mm: Fraction  # left on a trimmed knot
    loop_mm: Fraction  # a finished loop, knot to tip
    fly_loop_mm: Fraction

    def hold_mm(self, diameter_mm: Fraction) -> Fraction:
        """Return the end that the hands need to draw up and trim a strand, in mm."""
        return _rung(self.hold, diameter_mm).length_mm


def turns(knot: Knot, diameter_mm: Fraction, other_mm: Fraction, side: Side) -> int:
    """Return how many turns a strand makes on its side of a knot with another; 0 for no turns."""
    if not knot.turns:
        return 0
    rung = _rung(knot.turns, diameter_mm)
    if side == "thick":
        return rung.thick
    extra = knot.extra_turns
    if extra is None or other_mm - diameter_mm < extra.step_mm - PRINTED_MM:
        return rung.thin
    return rung.thin + extra.thin


class _FromMm(Protocol):
    @property
    def from_mm(self) -> Fraction: ...


_Row = TypeVar("_Row", bound=_FromMm)


def _rung(ladder: Sequence[_Row], diameter_mm: Fraction) -> _Row:
    """Return the row for a strand; the last row is for every strand finer than the rest."""
    at_most = diameter_mm + ROUNDED_MM
    return next(row for row in ladder if row.from_mm <= at_most)
