"""How much line the knot at an end takes up: a knot and its strands in, the line in parts out."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from tagend.cards.base.plural import counted
from tagend.cards.base.shown_lengths import inches
from tagend.cards.base.units import Length
from tagend.cards.leader.joints import End, Joint
from tagend.cards.practice.knots import Knot, Knots, Side, Takes
from tagend.cards.practice.practice import Practice

_HUNDREDTHS = 100  # of a mm: finer than any tape; what is computed is exact from here on


@dataclass(frozen=True, slots=True)
class Share:
    """One part of an allowance: what the line goes into, how much, and how that came about."""

    into: str
    mm: Fraction
    how: str


@dataclass(frozen=True, slots=True)
class Allowance:
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
    (above, below), turns = joint.sides, joint.turns
    loop = practice.knots.fly_loop_mm
    return (
        _side(joint.knot, above, turns.of(above), _Strands(upper, lower, loop), practice),
        _side(joint.knot, below, turns.of(below), _Strands(lower, upper, loop), practice),
    )


def end_allowance(end: End, practice: Practice) -> Allowance:
    """Return what the knot at the butt or at the fly takes."""
    if end.knot is None:
        return BARE
    strand_mm = end.meeting.upper_mm
    strands = _Strands(strand_mm, strand_mm, end.loop_mm)
    return _side(end.knot, "heavy", end.turns.heavy, strands, practice)


def with_dropper(allowance: Allowance, dropper: Length | None) -> Allowance:
    """Return the allowance with the tag that is left long for a fly."""
    if dropper is None:
        return allowance
    share = Share("dropper", dropper.mm, f"a tag of {dropper.plain} left long")
    return replace(allowance, shares=(*allowance.shares, share))


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


@dataclass(frozen=True, slots=True)
class _Strands:
    """What a side of a knot is tied in, in mm: its own strand, the other one, and a loop's size."""

    own_mm: Fraction
    other_mm: Fraction
    loop_mm: Fraction


def _side(knot: Knot, side: Side, turns: int, strands: _Strands, practice: Practice) -> Allowance:
    """Return what one side of a knot takes."""
    takes, own = knot.takes.of(side), practice.own_allowance(knot, side)
    if own is None:
        shares = tuple(_shares(takes, turns, strands, practice.knots))
    else:
        shares = (Share("own", own, "your own figure"),)
    barrel = strands.own_mm * (turns * takes.strands if takes.core else 2)
    return Allowance(knot.name, shares, barrel)


def _shares(takes: Takes, turns: int, strands: _Strands, knots: Knots) -> Iterator[Share]:
    own_mm = strands.own_mm
    if takes.core and turns:
        yield _wraps(takes, turns, own_mm, strands.other_mm)
    if takes.body:
        yield Share("body", _up(takes.body * own_mm), f"bends and bights, {takes.body} diameters")
    if takes.loop:
        yield Share("loop", 2 * strands.loop_mm, "twice the loop")
    yield Share("tag", knots.tag_mm, "left on when trimmed")
    if takes.hold:
        yield Share("hand", takes.hold * knots.hold_mm(own_mm), "held, and trimmed off")


def _wraps(takes: Takes, turns: int, own_mm: Fraction, other_mm: Fraction) -> Share:
    each = wraps_mm(turns, own_mm, other_mm, takes.core)
    core = "one strand" if takes.core == 1 else f"{takes.core} strands"
    how = f"{counted(turns, 'turn')} round {core} of {inches(other_mm)}"
    return Share("wraps", takes.strands * each, how + (", doubled" if takes.strands == 2 else ""))


def _up(mm: float | Fraction) -> Fraction:
    return Fraction(math.ceil(mm * _HUNDREDTHS), _HUNDREDTHS)
