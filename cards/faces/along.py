"""What is plotted along leaders: leaders in; diameter, impedance and stiffness, with marks, out."""

import math
from collections.abc import Callable, Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.shown_lengths import ShownUnit, thickness
from tagend.cards.base.units import DIAMETER_MM
from tagend.cards.leader.leader import Piece
from tagend.cards.leader.passing import Spread
from tagend.cards.leader.waves import Strip, measure
from tagend.cards.words.leader_words import Told

_MOST_MARKS = 8
_THOU = DIAMETER_MM["thou"]
# Between two marks: for lengths in inches and for metric ones.
_DIAMETER_MM = ((5 * _THOU, 10 * _THOU, 20 * _THOU), (Fraction(1, 10), Fraction(1, 5), Fraction(1)))

Ends = tuple[float, float]  # of a piece, towards the butt and towards the fly
Value = Callable[[Strip], Ends | None]


class DrawnLeader(Struct, frozen=True):
    """A leader to be drawn."""

    told: Told
    strips: tuple[Strip, ...]

    @property
    def rows(self) -> Iterator[tuple[Strip, Piece]]:
        """Each strip with the piece that it is."""
        return zip(self.strips, self.told.leader.pieces, strict=True)


class Along(Struct, frozen=True):
    """One quantity along leaders; `marks` are the values with a line and a label, from 0 to 1."""

    title: str
    value: Value  # from 0 to 1; None where it is not known
    marks: tuple[tuple[float, str], ...]


def drawn_lines(all_told: Sequence[Told]) -> list[DrawnLeader]:
    """Return leaders to be drawn."""
    return [DrawnLeader(told, measure(told.leader).strips) for told in all_told]


def diameters(lines: Sequence[DrawnLeader]) -> Along:
    """Measure in the unit of the first leader, from 0 on."""
    leader, wording = lines[0].told.leader, lines[0].told.wording
    unit: ShownUnit = "in" if leader.unit == "in" else "mm"
    thickest = max(mm for line in lines for strip in line.strips for mm in strip.diameters_mm)
    steps = _DIAMETER_MM[unit == "mm"]
    step = next((step for step in steps if thickest <= _MOST_MARKS * step), steps[-1])
    count = math.ceil(thickest / step)
    marks = ((n / count, thickness(n * step, unit).split()[0]) for n in range(1, count + 1))
    return Along(
        wording.say("diameter_along", unit=unit),
        lambda strip: _shares(strip.diameters_mm, count * step),
        tuple((share, wording.number(label)) for share, label in marks),
    )


def impedances(lines: Sequence[DrawnLeader]) -> Along:
    """Measure against the lightest strand."""
    known = [end for line in lines for strip in line.strips for end in strip.impedance or ()]
    lightest = min((end.middle for end in known), default=1.0)
    most = max((end.middle / lightest for end in known), default=0.0)
    step = next(step for step in (1, 2, 5, 10, 20, 50, 100) if most <= _MOST_MARKS * step)
    top = step * math.ceil(round(most / step, 6))
    return Along(
        lines[0].told.wording.say("impedance_along"),
        lambda strip: strip.impedance and _middles(strip.impedance, top * lightest),
        tuple((mark / top, f"{mark} ×") for mark in range(step, top + 1, step)),
    )


def stiffnesses(lines: Sequence[DrawnLeader]) -> Along:
    """Measure against the limpest strand, on a scale of powers of ten.

    Stiffness in bending goes with the fourth power of the diameter (EI = E x pi x d^4 / 64, any
    mechanics of materials text). Where the modulus of one line is not known, all lines are drawn
    as one material, and wire and thread, which are nothing like it, are not drawn.
    """
    rows = [(strip, piece.material.drawn) for line in lines for strip, piece in line.rows]
    of_one = any(drawn and not strip.stiffness for strip, drawn in rows)
    unlike = {strip for strip, drawn in rows if of_one and not drawn}

    def stiff(strip: Strip) -> Ends | None:
        if of_one and strip not in unlike:
            upper, lower = (float(mm**4) for mm in strip.diameters_mm)
            return upper, lower
        return None if of_one else strip.stiffness and _middles(strip.stiffness, 1.0)

    known = [end for strip, _ in rows for end in stiff(strip) or ()]
    least = min(known, default=1.0)
    decades = max(1, math.ceil(math.log10(max(known, default=1.0) / least)))

    def value(strip: Strip) -> Ends | None:
        ends = stiff(strip)
        return ends and (
            math.log10(ends[0] / least) / decades,
            math.log10(ends[1] / least) / decades,
        )

    return Along(
        lines[0].told.wording.say("stiffness_of_one" if of_one else "stiffness_along"),
        value,
        tuple((power / decades, f"{10**power} ×") for power in range(decades + 1) if known),
    )


def _shares(ends: tuple[Fraction, Fraction], top: Fraction) -> Ends:
    return float(ends[0] / top), float(ends[1] / top)


def _middles(ends: tuple[Spread, Spread], top: float) -> Ends:
    return ends[0].middle / top, ends[1].middle / top
