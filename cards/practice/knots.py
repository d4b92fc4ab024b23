"""Knots as the knots file describes them: a strand in; the hold of hands and the turns out."""

import re
from collections.abc import Sequence
from typing import Generic, Literal, TypeVar

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.named_table import NamedTable
from tagend.cards.practice.materials import Strand
from tagend.cards.practice.printed_sizes import strand_up_to, thickest_meant

Place = Literal["line", "butt", "joint", "ring", "fly"]
Mixed = Literal["yes", "no", "hard nylon"]
Straight = Literal["yes", "nearly", "no"]
Side = Literal["heavy", "light"]
Around = Literal["other", "itself"]

USUAL_ROLES = ("thick", "thin")

T = TypeVar("T")

COUNT = re.compile(r"\{(\w*)\}")  # where a step takes in a number of turns, or a length
LENGTHS = ("lap", "fold", "heavy_fold", "light_fold", "loop")
TIED = ("upper", "lower")  # those of a knot that ties one side  # those of a length


class Rung(Struct, frozen=True):
    """A row of a ladder of turns, for strands of `from_mm` and thicker."""

    heavy: int
    light: int
    from_mm: Fraction = Fraction(0)


class ExtraTurns(Struct, frozen=True):
    """Turns added on the light side where the heavy strand is so many times as thick."""

    ratio: Fraction
    light: int
    most: int  # turns that print has on a side


class Takes(Struct, frozen=True):
    """What one side of a knot takes up; the head of knots.toml says what each part means."""

    core: int = 0
    strands: int = 1
    around: Around = "other"  # the strand that the turns go round
    body: int = 0
    loop: bool | Fraction = False  # its size in mm, or True for the usual size of its place
    hold: int = 1


class Sides(Struct, Generic[T], frozen=True):
    """One thing of each side of a knot: wire is always heavy, else the thicker strand is."""

    heavy: T
    light: T

    def of(self, side: Side) -> T:
        """Return what one side has."""
        return self.heavy if side == "heavy" else self.light


class Knot(Struct, frozen=True):
    """One knot of the knots file; its head says what each key means."""

    name: str
    code: str
    places: tuple[Place, ...]
    straight: Straight
    steps: tuple[str, ...]
    seat: str
    takes: Sides[Takes] = Sides(Takes(), Takes())
    roles: tuple[str, str] = USUAL_ROLES  # what the heavy and the light side are called
    on: tuple[Strand, ...] = ("line",)
    ties: tuple[str, ...] = ()  # knots that each side may be tied with, where it has one of its own
    lapped: bool = False
    also: tuple[str, ...] = ()
    mixed: Mixed | None = None  # None where no two strands meet
    shock: bool = False
    thickest_mm: Fraction | None = None
    largest_ratio: Fraction | None = None
    apart: bool = False
    comes_made: bool = False
    whole_side_passes: bool = False
    tapered_only: bool = False
    turns: tuple[Rung, ...] = ()
    extra_turns: ExtraTurns | None = None
    figure: bool = True
    caution: str | None = None
    source: tuple[str, ...] = ()

    def __hash__(self) -> int:
        """Return the name's: what is kept of a knot's figures is asked for thousands of times."""
        return hash(self.name)

    def draws_up_on(self, diameter_mm: Fraction) -> bool:
        """Whether it still draws up on a strand as thick."""
        return self.thickest_mm is None or strand_up_to(diameter_mm, self.thickest_mm)

    @property
    def counted(self) -> bool:
        """Whether its turns depend on the strand, so that a card must say them."""
        return len(self.turns) > 1


class Hold(Struct, frozen=True):
    """A row of the ladder of hands: the end to hold on strands of `from_mm` and thicker."""

    length_mm: Fraction
    from_mm: Fraction = Fraction(0)


Step = TypeVar("Step", Rung, Hold)  # of a ladder


class Knots(NamedTable[Knot], frozen=True):
    """Every knot, and the lengths that all of them ask of the hands."""

    hold: tuple[Hold, ...]
    tag_mm: Fraction  # left on a trimmed knot
    loop_mm: Fraction  # a finished loop at the butt, knot to tip
    joint_loop_mm: Fraction  # one between two sections
    fly_loop_mm: Fraction  # one at an eye


def step_for(ladder: Sequence[Step], diameter_mm: Fraction) -> Step:
    """Return the row for a strand; the last row is for every strand finer than the rest."""
    meant_mm = thickest_meant(diameter_mm)
    for row in ladder[:-1]:
        if row.from_mm <= meant_mm:
            return row
    return ladder[-1]


# What the cut, the card, its steps and figures, the bench sheet and the JSON say of turns.


def joint_turns(knot: Knot, heavy_mm: Fraction, light_mm: Fraction) -> Sides[int]:
    """Return the turns of both strands of a joint, each by its own diameter; 0 for no turns."""
    if not knot.turns:
        return Sides(0, 0)
    heavy, light = step_for(knot.turns, heavy_mm).heavy, step_for(knot.turns, light_mm).light
    extra = knot.extra_turns
    if extra is None or heavy_mm < extra.ratio * light_mm:
        return Sides(heavy, light)
    return Sides(heavy, min(light + extra.light, max(light, extra.most)))


def end_turns(knot: Knot, strand_mm: Fraction) -> Sides[int]:
    """Return the turns of a knot in one strand, which are those of both its sides."""
    count = step_for(knot.turns, strand_mm).heavy if knot.turns else 0
    return Sides(count, count)
