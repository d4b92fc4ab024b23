"""Rules on record leaders: whether class and shock tippet are as the published rules have them."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from tagend.cards.base.shown_lengths import ShownUnit, hundredths, length
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.rules import Rule


def class_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The class tippet is measured inside its knots."""
    tippet = leader.tippet
    (least,) = rule.limits
    if leader.recipe.record_lengths and tippet.finished.low_mm < least:
        is_, limit = told_apart(tippet.finished.low_mm, least, leader.unit)
        yield Fact(
            tippet.place,
            f"the tippet is {is_} between its knots, and the published least is {limit}",
        )


def shock_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The shock tippet is measured from the hook's eye to the single strand of class tippet.

    So its knots count with both their sides, and all loops.
    """
    (most,) = rule.limits
    guards = leader.pieces[leader.tippet.place :]
    if not leader.recipe.record_lengths or not guards:
        return
    ends = [leader.tippet.at_fly, *(end for each in guards for end in (each.at_butt, each.at_fly))]
    measured = sum((each.finished.high_mm for each in guards), start=Fraction(0))
    measured += sum(end.barrel_mm + end.loop_mm for end in ends)
    if measured > most:
        is_, limit = told_apart(measured, most, leader.unit)
        yield Fact(
            guards[0].place,
            f"the bite guard is {is_} from the fly to the single strand of the tippet, "
            f"and the published most is {limit}",
        )


def class_strength(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the tippet's strength against the class that the recipe names."""
    asked, strength = leader.recipe.class_, leader.tippet.section.strength
    if asked is None:
        return
    classes = rule.limits
    # Pounds are nominal: what is called 20 lb is the class of 10 kg, and may break at 22.04 lb.
    most = min((kg for kg in classes if kg >= asked.kg), default=asked.kg)
    if asked.kg not in classes:
        named = ", ".join(f"{float(kg):g}" for kg in classes)
        yield Fact(
            None,
            f"a class of {asked.plain} is none of {named} kg",
            "note",
            f"the next of the published classes is {float(most):g} kg" if most in classes else None,
        )
    if strength is not None and strength.kg > most:
        yield Fact(
            leader.tippet.place,
            f"the tippet bears {strength.plain}, more than its class of {float(most):g} kg",
        )


def told_apart(one: Fraction, other: Fraction, unit: ShownUnit) -> tuple[str, str]:
    """Return two lengths that differ in words that do, however close they are."""
    told = ((tell(one, unit), tell(other, unit)) for tell in (length, hundredths))
    exact = f"{float(one):.4f} mm", f"{float(other):.4f} mm"
    return next((words for words in told if words[0] != words[1]), exact)


RECORD_RULES: Mapping[str, Look] = {
    "class tippet": class_tippet,
    "shock tippet": shock_tippet,
    "class strength": class_strength,
}
