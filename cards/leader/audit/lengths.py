"""Rules on lengths and strengths: whether the leader comes out as its recipe says."""

import math
from collections.abc import Iterator, Mapping
from fractions import Fraction

from tagend.cards.base.shown_lengths import length, long_length
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Extent, Leader
from tagend.cards.practice.rules import Rule
from tagend.cards.recipe.recipe import Section

_NEWTONS_PER_KG = 9.80665  # standard gravity, ISO 80000-3: kilograms-force to newtons


def too_short(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find sections with no room between their two knots."""
    for piece in leader.pieces:
        room = piece.at_butt.barrel_mm + piece.at_fly.barrel_mm
        if not piece.section.bought and piece.finished.low_mm <= room:
            left = max(piece.finished.low_mm, Fraction(0))
            yield Fact(
                piece.place,
                f"section {piece.place} has {length(left, leader.unit)} between its knots",
            )


def weak_sections(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find sections above the tippet that are weaker than it."""
    tippet = leader.tippet
    strength = tippet.section.strength
    if strength is None:
        return
    for piece in leader.pieces[: tippet.place - 1]:
        own = piece.section.strength
        if own is None or own.kg >= strength.kg:
            continue
        # Strength may rise where nylon passes to thinner fluorocarbon: common practice, no source.
        passes = piece.place == tippet.place - 1 and leader.joints[piece.place - 1].meeting.mixed
        says = f"section {piece.place} ({own.plain}) is weaker than the tippet ({strength.plain})"
        if passes:
            yield Fact(piece.place, says, "note", "sound where nylon passes to fluorocarbon")
        else:
            yield Fact(piece.place, says)


def stated_total(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the sum of the sections against the length that the recipe states."""
    total = leader.recipe.total
    (tolerance,) = rule.limits
    if total is None:
        return
    sums = leader.finished
    if not sums.low_mm - tolerance <= total.mm <= sums.high_mm + tolerance:
        made = _range(sums, leader)
        yield Fact(None, f"the recipe says {total.plain}, its sections make {made}")


def strength_for_size(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find strengths that no nylon or fluorocarbon of that diameter has."""
    low, high = rule.limits
    for piece in leader.pieces:
        section = piece.section
        stress = nominal_stress_mpa(section) if piece.material.drawn else None
        if section.strength is not None and stress is not None and not low <= stress <= high:
            word = "strong" if stress > high else "weak"
            yield Fact(
                piece.place,
                f"section {piece.place}: {section.strength.plain} is {word} for "
                f"{section.diameter.plain}",
            )


def nominal_stress_mpa(section: Section) -> float | None:
    """Return strength over the strand's cross-section, in MPa (N/mm2)."""
    if section.strength is None or section.tapers_to is not None:
        return None
    area = math.pi * float(section.diameter.mm) ** 2 / 4
    return float(section.strength.kg) * _NEWTONS_PER_KG / area


def class_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The class tippet is measured inside its knots."""
    tippet = leader.tippet
    (least,) = rule.limits
    if leader.recipe.record_lengths and tippet.finished.low_mm < least:
        yield Fact(
            tippet.place,
            f"the tippet is {length(tippet.finished.low_mm, leader.unit)} between its knots, "
            f"and the published least is {length(least, leader.unit)}",
        )


def shock_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The shock tippet is measured with its knots, from the eye to the single strand above."""
    (most,) = rule.limits
    for piece in leader.pieces:
        if not leader.recipe.record_lengths or piece.part != "bite guard":
            continue
        measured = piece.finished.high_mm + piece.at_butt.barrel_mm + piece.at_fly.barrel_mm
        if measured > most:
            yield Fact(
                piece.place,
                f"the bite guard is {length(measured, leader.unit)} with its knots, "
                f"and the published most is {length(most, leader.unit)}",
            )


def reach(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Add line out, leader and rod, where the recipe asks for it."""
    asked = leader.recipe.reach
    if asked is None:
        return
    out, rod = asked.line_out, asked.rod
    whole = leader.finished.longer(out.mm + rod.mm)
    yield Fact(
        None,
        f"{out.plain} of line, {_range(leader.finished, leader)} of leader and "
        f"{rod.plain} of rod reach {_range(whole, leader)}",
    )


def _range(lengths: Extent, leader: Leader) -> str:
    low, high = (long_length(mm, leader.unit) for mm in (lengths.low_mm, lengths.high_mm))
    return high if low == high else f"{low} to {high}"


LENGTH_RULES: Mapping[str, Look] = {
    "too short": too_short,
    "weak section": weak_sections,
    "stated total": stated_total,
    "strength for size": strength_for_size,
    "class tippet": class_tippet,
    "shock tippet": shock_tippet,
    "reach": reach,
}
