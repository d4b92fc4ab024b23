"""What a person asks of a taper: words of the command line in, checked values out."""

import re

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.units import Diameter, Length, Strength, parse_diameter
from tagend.cards.practice.practice import Practice
from tagend.cards.propose.asked_piece import AskedPiece
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.recipe.strand import parse_strand
from tagend.layouts.base.faults import Refused, refused


class Shares(Struct, frozen=True):
    """How the length is shared among butt, taper and tippet, in percent."""

    butt: int
    taper: int
    tippet: int


# J. B. Healy, The Pocket Guide to Fishing Knots, p. 36.
USUAL_SHARES = Shares(60, 20, 20)


class Tippet(Struct, frozen=True):
    """The strand to end with; None where any will do."""

    diameter: Diameter
    material: str | None = None
    strength: Strength | None = None


class Wish(Struct, frozen=True):
    """The taper that is asked for."""

    total: Length  # finished
    butt: Diameter
    tippet: Tippet
    step: StepLimit  # between neighbours
    shares: Shares = USUAL_SHARES
    material: str | None = None  # above the tippet; None where any will do
    line_tip: Diameter | None = None  # the fly line's, where the butt was chosen by it
    bought: AskedPiece | None = None  # above all that is cut; `butt` is then its fly end
    sighter: AskedPiece | None = None
    guard: AskedPiece | None = None

    @property
    def asked_mm(self) -> Fraction:
        """The length of the pieces that are not shared out."""
        asked = (self.bought, self.sighter, self.guard)
        return sum((piece.length.mm for piece in asked if piece), start=Fraction(0))

    @property
    def thickest(self) -> Diameter:
        """The diameter that the taper begins with."""
        return (self.bought and self.bought.diameter) or self.butt

    @property
    def tippet_material(self) -> str | None:
        return self.tippet.material or self.material


def read_shares(text: str) -> Shares:
    """Read `60/20/20`; raises `Refused`."""
    match = re.fullmatch(r"(?a:(\d{1,2})/(\d{1,2})/(\d{1,2}))", text.replace(" ", ""))
    parts = [int(part) for part in match.groups()] if match else []
    if sum(parts) != 100 or 0 in parts:
        raise refused(
            f"{text!r} is not a share for each of butt, taper and tippet",
            "write three percentages that make 100, such as 60/20/20",
        )
    return Shares(*parts)


def read_tippet(text: str, practice: Practice) -> Tippet:
    """Read `4X`, or with material and strength `4X fluorocarbon 5 lb`; raises `Refused`."""
    try:
        return Tippet(parse_diameter(text))
    except Refused:
        strand = parse_strand(text, practice)
    if strand.length is not None:
        raise refused(f"{text!r} gives a length", "leave it out: it follows from total and shares")
    return Tippet(strand.diameter, strand.material, strand.strength)
