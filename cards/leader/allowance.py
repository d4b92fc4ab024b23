"""How much line the knot at an end takes up: a strand in its knot in, the line in parts out."""

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import Literal

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.leader.joints import End, Half, Joint
from tagend.cards.leader.said import Said, said
from tagend.cards.practice.knots import Hold, Takes, step_for
from tagend.cards.practice.practice import Practice

Into = Literal["wraps", "body", "loop", "tag", "hand", "lap"]

_HELD, _LEFT_ON, _TWICE = said("held"), said("left_on"), said("twice_the_loop")
_ONE, _DOUBLED, _AS_OTHER = said("one_strand"), said("doubled"), said("as_the_other_side")

_HUNDREDTHS = 100  # of a mm: finer than any tape; what is computed is exact from here on


class Share(Struct, frozen=True):
    """One part of an allowance: what the line goes into, how much, and how that came about."""

    into: Into
    mm: Fraction
    how: Said


class _Habits(Struct, frozen=True):
    """What a person's knots have in common: ends to hold, the tag left on, the tape's marks."""

    hold: tuple[Hold, ...]
    tag_mm: Fraction
    mark_mm: Fraction | None

    def __hash__(self) -> int:
        return hash(self.tag_mm.numerator)


class Allowance(Struct, frozen=True, kw_only=True):
    """What one side of a knot takes of its strand, beyond the finished length."""

    knot: str | None  # None for a bare end
    shares: tuple[Share, ...] = ()  # computed; none where the person has an own figure
    mm: Fraction = Fraction(0)  # what they come to
    takes_mm: Fraction = Fraction(0)  # rounded up to a mark of the tape, or the person's own
    least_mm: Fraction = Fraction(0)  # without the end that hands hold
    barrel_mm: Fraction = Fraction(0)  # how long the finished knot is on this side
    loop_mm: Fraction = Fraction(0)  # how far a loop stands out beyond the finished length


BARE = Allowance(knot=None)


def joint_allowances(
    joint: Joint, practice: Practice, mark_mm: Fraction | None = None
) -> tuple[Allowance, Allowance]:
    """Return what a joint takes from the section above and from the one below.

    Each is rounded up to a mark of the tape, where one is given. Of a lapped knot both sides take
    what the longer one does: hands lay one lap and pinch its middle. A side that was bought ready
    made gives nothing.
    """
    if own := practice.own_laps.get(joint.knot.name):
        return (
            _of_half(joint.above, own.above_mm, practice, mark_mm),
            _of_half(joint.below, own.below_mm, practice, mark_mm),
        )
    above, below = (_of_half(half, None, practice, mark_mm) for half in (joint.above, joint.below))
    if not joint.knot.lapped:
        return above, below
    more_mm = below.mm - above.mm
    return _evened(above, more_mm, below), _evened(below, -more_mm, above)


def _evened(allowance: Allowance, by_mm: Fraction, other: Allowance) -> Allowance:
    """Return what a side takes so that the knot is in the middle of the lap."""
    if by_mm <= 0:
        return allowance
    share = Share("lap", by_mm, _AS_OTHER)
    shares = (*allowance.shares, share)
    return replace(allowance, shares=shares, mm=other.mm, takes_mm=other.takes_mm)


def end_allowance(end: End, practice: Practice, mark_mm: Fraction | None = None) -> Allowance:
    """Return what the knot at the butt or at the fly takes, rounded up to a mark."""
    return _of_half(end.half, None, practice, mark_mm) if end.half else BARE


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


def round_up(mm: Fraction, mark_mm: Fraction) -> Fraction:
    """Return the first mark of a tape at or beyond a length."""
    return -(-mm // mark_mm) * mark_mm


def _of_half(
    half: Half, own_mm: Fraction | None, practice: Practice, mark_mm: Fraction | None
) -> Allowance:
    """Return what one side of a knot takes: the person's own figure, or what is computed."""
    if half.made:
        return BARE
    knots = practice.knots
    computed = _computed(half, _Habits(knots.hold, knots.tag_mm, mark_mm))
    if own_mm is None and (own := practice.own_laps.get(half.knot.name)):
        own_mm = own.above_mm  # a knot in one strand has one fold
    if own_mm is None:
        return computed
    return replace(computed, shares=(), mm=Fraction(0), takes_mm=own_mm)


@lru_cache(maxsize=4096)  # leaders have the same strands in the same knots
def _computed(half: Half, habits: _Habits) -> Allowance:
    takes = half.knot.takes.of(half.side)
    held = Share("hand", takes.hold * step_for(habits.hold, half.own_mm).length_mm, _HELD)
    shares = (*_shares(half, takes, habits.tag_mm), *([held] if takes.hold else []))
    mm = sum((share.mm for share in shares), start=Fraction(0))
    return Allowance(
        knot=half.knot.name,
        shares=shares,
        mm=mm,
        takes_mm=round_up(mm, habits.mark_mm) if habits.mark_mm else mm,
        least_mm=mm - held.mm,
        barrel_mm=half.own_mm * (half.turns * takes.strands if takes.core else 2),
        loop_mm=half.stands_out_mm,
    )


def _shares(half: Half, takes: Takes, tag_mm: Fraction) -> Iterator[Share]:
    own_mm = half.own_mm
    if takes.core and half.turns:
        yield _wraps(half, takes)
    if takes.body:
        yield Share("body", _up(takes.body * own_mm), said("bends", diameters=takes.body))
    if takes.loop:
        yield Share("loop", 2 * half.stands_out_mm, _TWICE)
    yield Share("tag", tag_mm, _LEFT_ON)


def _wraps(half: Half, takes: Takes) -> Share:
    core_mm = half.other_mm if takes.around == "other" else half.own_mm
    each = wraps_mm(half.turns, half.own_mm, core_mm, takes.core)
    core = _ONE if takes.core == 1 else said("strands", strands=takes.core)
    doubled = _DOUBLED if takes.strands == 2 else None
    how = said("wound", count=half.turns, core=core, thick=core_mm, doubled=doubled)
    return Share("wraps", takes.strands * each, how)


def _up(mm: float | Fraction) -> Fraction:
    return Fraction(math.ceil(mm * _HUNDREDTHS), _HUNDREDTHS)
