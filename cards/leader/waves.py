"""How a leader passes a small wave on, to compare leaders with: a leader in, its measure out.

Computed for an ideal string. One tension acts all along it, so it drops out; air, bending and the
mass of knots, rings and swivels are left out, and so is what several joints do together. A taper
within a piece reflects nothing, which is the limit of a slow change; what is bought is no other.

What is known only as a range comes out as one. Formulas: any text on waves at a boundary, such as
French, Vibrations and Waves, or Crawford, Waves; bending: any mechanics of materials text.
"""

import math
from collections.abc import Iterator, Sequence

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.leader.parts import fly_end_mm
from tagend.cards.leader.passing import Passing, Spread, passing, passing_by, quotient
from tagend.cards.practice.materials import Range
from tagend.cards.practice.rules_of_thumb import rules_of_thumb

_NMM2_IN_GPA_MM4 = 1000
_G_IN_MM3 = Fraction(1, 1000)  # at 1 g/cm3


class Strip(Struct, frozen=True, kw_only=True):
    """One piece as a string, at its longest; pairs are of its butt end and of its fly end."""

    from_mm: Fraction  # from the fly to its butt end
    to_mm: Fraction  # from the fly to its fly end: 0 of the last piece
    diameters_mm: tuple[Fraction, Fraction]
    impedance: tuple[Spread, Spread] | None  # under one tension: d sqrt(density), mm sqrt(g/cm3)
    stiffness: tuple[Spread, Spread] | None  # EI, N mm2


class Measure(Struct, frozen=True, kw_only=True):
    """One leader as a string, from the butt to the fly; None where a density is not known."""

    joints: tuple[Passing, ...]
    passed: Spread | None  # share of energy past every joint, each by itself; 1 without joints
    worst: int | None  # the joint that passes least, the first is 1; None without joints too
    mass_g: Spread | None  # of the finished lengths, without knots
    thirds_g: tuple[Spread, ...] | None  # of each third of the length, from the butt
    strips: tuple[Strip, ...]
    line: Passing | None  # from the fly line's tip to the butt, where the recipe gives the tip


def measure(leader: Leader) -> Measure:
    """Return the measure of a leader."""
    joints = tuple(passing(joint.meeting) for joint in leader.joints)
    shares = [joint.passed for joint in joints if joint.passed]
    known = len(shares) == len(joints)
    least = min(shares, key=lambda share: share.middle, default=None)
    thirds = [_mass_g(leader.pieces, Fraction(n, 3), Fraction(n + 1, 3)) for n in range(3)]
    weighed = tuple(mass for mass in thirds if mass)
    return Measure(
        joints=joints,
        passed=_product(shares) if known else None,
        worst=shares.index(least) + 1 if least and known else None,
        mass_g=_mass_g(leader.pieces, Fraction(0), Fraction(1)),
        thirds_g=weighed or None,
        strips=tuple(_strips(leader.pieces)),
        line=_from_line(leader),
    )


def _from_line(leader: Leader) -> Passing | None:
    tip, butt = leader.recipe.line_tip, leader.pieces[0]
    if tip is None:
        return None
    density = quotient(rules_of_thumb().tip_density, butt.material.density)
    return passing_by(tip.mm / butt.section.diameter.mm, density, None)


def _product(shares: Sequence[Spread]) -> Spread:
    return Spread(math.prod(each.low for each in shares), math.prod(each.high for each in shares))


def _ends_mm(piece: Piece) -> tuple[Fraction, Fraction]:
    return piece.section.diameter.mm, fly_end_mm(piece.section)


def _strips(pieces: Sequence[Piece]) -> Iterator[Strip]:
    left = sum((piece.finished.high_mm for piece in pieces), start=Fraction(0))
    for piece in pieces:
        upper, lower = _ends_mm(piece)
        density, modulus = piece.material.density, piece.material.modulus
        yield Strip(
            from_mm=left,
            to_mm=(left := left - piece.finished.high_mm),
            diameters_mm=(upper, lower),
            impedance=density and (_impedance(upper, density), _impedance(lower, density)),
            stiffness=modulus and (_stiffness(upper, modulus), _stiffness(lower, modulus)),
        )


def _impedance(mm: Fraction, density: Range) -> Spread:
    return Spread(*(float(mm) * math.sqrt(each) for each in density))


def _stiffness(mm: Fraction, modulus: Range) -> Spread:
    """EI = E x pi d^4 / 64, in N mm2."""
    return Spread(*(_NMM2_IN_GPA_MM4 * float(each * mm**4) * math.pi / 64 for each in modulus))


def _mass_g(pieces: Sequence[Piece], start: Fraction, stop: Fraction) -> Spread | None:
    """Return the mass between two shares of the length; ranges are all at an end together."""
    densities = [piece.material.density for piece in pieces if piece.material.density]
    if len(densities) < len(pieces):
        return None
    masses = [
        sum(density[which] * mm3 for density, mm3 in zip(densities, volumes, strict=True))
        for lengths in zip(*((p.finished.low_mm, p.finished.high_mm) for p in pieces), strict=True)
        for volumes in [[*_volumes_over_pi(pieces, lengths, start, stop)]]
        for which in (0, 1)
    ]
    return Spread(*(float(each * _G_IN_MM3) * math.pi for each in (min(masses), max(masses))))


def _volumes_over_pi(
    pieces: Sequence[Piece], lengths: Sequence[Fraction], start: Fraction, stop: Fraction
) -> Iterator[Fraction]:
    """Yield, by piece, the volume between two shares of the length, as mm3 by pi.

    A truncated cone, in any textbook of geometry: pi h (a^2 + ab + b^2) / 12 of its diameters.
    """
    total, passed_mm = sum(lengths), Fraction(0)
    for piece, length in zip(pieces, lengths, strict=True):
        first, last = (
            min(max(share * total - passed_mm, Fraction(0)), length) for share in (start, stop)
        )
        passed_mm += length
        upper, lower = _ends_mm(piece)
        slope = (lower - upper) / length if length else Fraction(0)
        a, b = upper + slope * first, upper + slope * last
        yield (last - first) * (a * a + a * b + b * b) / 12
