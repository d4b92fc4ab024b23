"""How much line the knot at an end takes up: a knot and its strands in, the line in parts out."""

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from tagend.cards.base.shown_lengths import inches
from tagend.cards.base.units import Length
from tagend.cards.leader.joints import End, Joint
from tagend.cards.practice.knots import Knot, Knots, Side, Takes, turns
from tagend.cards.practice.practice import Practice

_HUNDREDTHS = 100  # of a mm: finer than any tape; what is computed is exact from here on


class Share(NamedTuple):
    """One part of an allowance: what the line goes into, how much, and how that came about."""

    into: str
    mm: Fraction
    how: str


class Allowance(NamedTuple):
    """What one end of a section takes beyond its finished length."""

    knot: str | None  # None for a bare end
    shares: tuple[Share, ...]
    barrel_mm: Fraction  # how long the finished knot is on this side

    @property
    def mm(self) -> Fraction:
        return sum((share.mm for share in self.shares), start=Fraction(0))


BARE = Allowance(None, (), Fraction(0))


def joint_allowances(joint: Joint, practice: Practice) -> tuple[Allowance, Allowance]:
    """Return what a joint takes from the section above and from the section below."""
    upper, lower = joint.meeting.upper_mm, joint.meeting.lower_mm
    thick_above = upper >= lower
    return (
        _side(joint.knot, "thick" if thick_above else "thin", upper, lower, practice),
        _side(joint.knot, "thin" if thick_above else "thick", lower, upper, practice),
    )


def end_allowance(end: End, diameter_mm: Fraction, practice: Practice) -> Allowance:
    """Return what the knot at the butt or at the fly takes."""
    if end.knot is None:
        return BARE
    return _side(end.knot, "thick", diameter_mm, diameter_mm, practice, end.loop_mm)


def with_dropper(allowance: Allowance, dropper: Length | None) -> Allowance:
    """Return the allowance with the tag that is left long for a fly."""
    if dropper is None:
        return allowance
    share = Share("dropper", dropper.mm, f"a tag of {dropper.plain} left long")
    return Allowance(allowance.knot, (*allowance.shares, share), allowance.barrel_mm)


def helix_mm(turns: int, radius_mm: float, height_mm: float) -> float:
    """Return the length of `turns` turns of a helix over its whole height, in mm.

    s = sqrt((2 pi N R)^2 + h^2): OpenStax, Calculus Volume 3, arc length and curvature.
    """
    return math.hypot(2 * math.pi * turns * radius_mm, height_mm)


def wraps_mm(turns: int, wound_mm: Fraction, core_mm: Fraction, strands: int) -> Fraction:
    """Return the line in `turns` close turns of a strand round `strands` strands, in mm.

    Round one strand the radius is half of both diameters. Round several, side by side, a turn
    also runs along their hull, a core diameter for each: 2 d2 + pi (d1 + d2) for two. Rounded
    up to 0.01 mm.
    """
    wound, core = float(wound_mm), float(core_mm)
    hull = strands * core if strands > 1 else 0.0
    radius = (hull + math.pi * (wound + core)) / (2 * math.pi)
    return _up(helix_mm(turns, radius, turns * wound))


def _side(
    knot: Knot,
    side: Side,
    own_mm: Fraction,
    other_mm: Fraction,
    practice: Practice,
    loop_mm: Fraction | None = None,
) -> Allowance:
    """Return what one side of a knot takes from a strand of `own_mm` that meets `other_mm`."""
    count = turns(knot, own_mm, other_mm, side)
    takes = knot.takes.thick if side == "thick" else knot.takes.thin
    barrel = own_mm * (count * takes.strands if takes.core else 2)
    own = practice.own_allowance(knot, side)
    if own is not None:
        return Allowance(knot.name, (Share("own", own, "your own figure"),), barrel)
    loop = practice.knots.fly_loop_mm if loop_mm is None else loop_mm
    return Allowance(
        knot.name, tuple(_shares(takes, count, (own_mm, other_mm), practice.knots, loop)), barrel
    )


def _shares(
    takes: Takes, count: int, strands_mm: tuple[Fraction, Fraction], knots: Knots, loop_mm: Fraction
) -> Iterator[Share]:
    own_mm, other_mm = strands_mm
    if takes.core and count:
        yield _wraps(takes, count, own_mm, other_mm)
    if takes.body:
        yield Share("body", _up(takes.body * own_mm), f"bends and bights, {takes.body} diameters")
    if takes.loop:
        yield Share("loop", 2 * loop_mm, "twice the loop")
    yield Share("tag", knots.tag_mm, "left on when trimmed")
    if takes.hold:
        yield Share("hand", takes.hold * knots.hold_mm(own_mm), "held, and trimmed off")


def _wraps(takes: Takes, count: int, own_mm: Fraction, other_mm: Fraction) -> Share:
    each = wraps_mm(count, own_mm, other_mm, takes.core)
    core = "one strand" if takes.core == 1 else f"{takes.core} strands"
    doubled = ", doubled" if takes.strands == 2 else ""
    return Share(
        "wraps", takes.strands * each, f"{count} turns round {core} of {inches(other_mm)}{doubled}"
    )


def _up(mm: float | Fraction) -> Fraction:
    return Fraction(math.ceil(mm * _HUNDREDTHS), _HUNDREDTHS)
