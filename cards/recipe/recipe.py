"""A recipe as it was written, checked: the sections of one leader from the butt to the fly."""

from collections.abc import Mapping
from datetime import date
from typing import Literal

from msgspec import Struct

from tagend.cards.base.units import Diameter, Length, Span, Strength

Part = Literal["butt", "taper", "tippet", "bite guard", "sighter"]
LengthsMean = Literal["finished", "cut"]


NAME_MOST = 60  # characters
NOTE_MOST = 200
SECTIONS_MOST = 30  # the longest published tapers have ten
VARIANTS_MOST = 30


class Section(Struct, frozen=True):
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


class Butt(Struct, frozen=True):
    """The end at the fly line: a loop, or `none` for a bare end."""

    end: str | None = None
    loop: Length | None = None


class Fly(Struct, frozen=True):
    """The end at the fly: the knot, or `none` for a bare end."""

    knot: str | None = None


class Reach(Struct, frozen=True):
    """What adds to the leader between the angler's hand and the fly."""

    line_out: Length  # fly line outside the tip ring
    rod: Length


class Strand(Struct, frozen=True):
    """Line that a variant puts in; without a length it is as long as what it replaces."""

    diameter: Diameter
    material: str  # a name in the materials file
    strength: Strength | None
    length: Span | None
    written: str

    def __str__(self) -> str:
        return self.written


class Variant(Struct, frozen=True):
    """What one variant of a leader changes; its lengths mean what the recipe's own mean."""

    name: str  # follows the leader's own: `in hard wind`
    use: str | None = None
    line_weight: int | None = None
    replace: Mapping[int, Strand] | None = None  # by section, the first at the butt is 1
    stop_after: int | None = None
    tippet: Strand | None = None
    guard: Strand | None = None
    butt: Length | None = None
    total: Length | None = None  # finished


class Recipe(Struct, frozen=True):
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
    class_: Strength | None = None  # of a record: what its tippet may bear at most
    butt: Butt = Butt()
    fly: Fly = Fly()
    reach: Reach | None = None
    variants: tuple[Variant, ...] = ()
