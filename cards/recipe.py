"""A recipe as it was written, checked: the sections of one leader from the butt to the fly."""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from cards.units import Diameter, Length, Span, Strength

Part = Literal["butt", "taper", "tippet", "bite guard", "sighter"]
LengthsMean = Literal["finished", "cut"]


@dataclass(frozen=True, slots=True)
class Section:
    """One piece of line. Absent words are chosen by rule in the worksheet."""

    length: Span
    diameter: Diameter  # at the butt end, when it tapers
    material: str  # a name in the materials file
    strength: Strength | None = None
    knot: str | None = None  # a name in the knots file; joins this section to the next
    part: Part | None = None
    dropper: Length | None = None  # the tag left long at the joint to the next section
    tapers_to: Diameter | None = None  # at the fly end of a knotless taper
    bought: bool = False  # bought at its length with its loops or ends, and not cut from a spool


@dataclass(frozen=True, slots=True)
class Butt:
    """The end at the fly line: a loop, or `none` for a bare end."""

    end: str | None = None
    loop: Length | None = None


@dataclass(frozen=True, slots=True)
class Fly:
    """The end at the fly: the knot, or `none` for a bare end."""

    knot: str | None = None


@dataclass(frozen=True, slots=True)
class Reach:
    """What adds to the leader between the angler's hand and the fly."""

    line_out: Length  # fly line outside the tip ring
    rod: Length


@dataclass(frozen=True, slots=True)
class Recipe:
    """A leader as a person wants it; `lengths` says what the sections' lengths mean."""

    name: str
    sections: tuple[Section, ...]
    lengths: LengthsMean = "finished"
    use: str | None = None
    line_weight: int | None = None
    line_tip: Diameter | None = None  # the fly line's, to hold the butt against
    total: Length | None = None  # the finished length that the recipe states
    note: str | None = None
    tied: date | None = None
    record_lengths: bool = False  # hold class and shock tippet against the published lengths
    butt: Butt = Butt()
    fly: Fly = Fly()
    reach: Reach | None = None
