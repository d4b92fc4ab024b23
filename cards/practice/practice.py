"""How a person ties: the knots, materials, rules and habits that a worksheet goes by."""

from collections.abc import Mapping
from typing import Literal

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit
from tagend.cards.base.units import Length
from tagend.cards.practice.knots import Knot, Knots, Place
from tagend.cards.practice.materials import Materials
from tagend.cards.practice.rules import Rule
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.vocabulary import EndOf
from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import INCH_MM

# How strands meet at a joint, as a person says it; and the two ends.
Meets = Literal[
    "same line", "nylon to fluorocarbon", "big step", "wire", "bought butt", "butt", "fly"
]

# Which places of the knots file serve at each end of a section.
_SERVES: dict[EndOf, frozenset[Place]] = {
    "butt": frozenset(("butt", "line")),
    "joint": frozenset(("joint",)),
    "fly": frozenset(("fly",)),
}
# The marks of a tape that a cut is rounded up to where a person wishes no others.
_TAPE_IN_MM = INCH_MM / 4
_TAPE_METRIC_MM = Fraction(5)


class Choice(Struct, frozen=True):
    """The knots for one meeting, in the order in which they are considered."""

    own: tuple[Knot, ...]  # the person's habits, which come first
    usual: tuple[Knot, ...]

    @property
    def order(self) -> tuple[Knot, ...]:
        return tuple(dict.fromkeys((*self.own, *self.usual)))


class OwnLap(Struct, frozen=True):
    """What a person's own hands take of the strand above and of the one below a knot, in mm.

    Of a knot in one strand both are its fold.
    """

    above_mm: Fraction
    below_mm: Fraction


class Practice(Struct, frozen=True):
    """Common practice, with what a person's shop file changes of it."""

    knots: Knots
    materials: Materials
    rules: Mapping[str, Rule]
    choice: Mapping[Meets, Choice]
    own_laps: Mapping[str, OwnLap]  # by the knot's name
    unit: ShownUnit | None  # None: as each recipe is written
    tape: Length | None  # the person's own marks, to which cuts are rounded up
    second_unit: ShownUnit | None = None  # to show beside the first

    def unit_of(self, recipe: Recipe) -> ShownUnit:
        """Return what lengths of a recipe are shown in: the unit wished, else the written one."""
        if self.unit is not None:
            return self.unit
        written = recipe.sections[0].length.high
        return "in" if written.in_inches else "mm" if written.unit == "mm" else "cm"

    def tape_mm(self, unit: ShownUnit) -> Fraction:
        """Return the distance of the marks that a cut is rounded up to."""
        if self.tape is not None and self.tape.in_inches == (unit == "in"):
            return self.tape.mm
        return _TAPE_IN_MM if unit == "in" else _TAPE_METRIC_MM

    def material(self, name: str) -> str:
        """Return the name of a material in our spelling; raises `Refused` for an unknown one."""
        return self.materials.find(name).name

    def knot(self, name: str, end: EndOf) -> str:
        """Return the name of a knot in our spelling; raises `Refused` if it is not for this end."""
        return knot_at(self.knots, name, end).name


def end_of_meeting(meets: Meets) -> EndOf:
    """Return at which end of a section strands meet so."""
    return meets if meets in ("butt", "fly") else "joint"


def knot_at(knots: Knots, name: str, end: EndOf) -> Knot:
    """Return the knot of that name; raises `Refused` when it is not for this end."""
    knot = knots.find(name)
    if not _serves(knot, end):
        raise refused(
            f"{knot.name!r} is for the {' or '.join(knot.places)} and does not serve here",
            f"write one of: {', '.join(each.name for each in serving(knots, end))}",
        )
    return knot


def serving(knots: Knots, end: EndOf) -> list[Knot]:
    """Return the knots that serve at an end of a section, in the order of the knots file."""
    return [knot for knot in knots if _serves(knot, end)]


def _serves(knot: Knot, end: EndOf) -> bool:
    return not _SERVES[end].isdisjoint(knot.places)
