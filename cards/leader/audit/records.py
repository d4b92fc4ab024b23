"""Rules on record leaders: whether class and shock tippet are as the published rules have them."""

from collections.abc import Iterator, Mapping

from cfractions import Fraction

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.said import said
from tagend.cards.practice.rules import Rule


def class_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The class tippet is measured inside its knots."""
    if not leader.recipe.record_lengths:
        return
    tippet, (least,) = leader.tippet, rule.limits
    if tippet.finished.low_mm < least:
        lengths = tippet.finished.low_mm, least
        yield Fact(tippet.place, said("short_class_tippet", lengths=lengths))


def shock_tippet(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """The shock tippet is measured from the hook's eye to the single strand of class tippet.

    So its knots count with both their sides, and all loops.
    """
    if not leader.recipe.record_lengths:
        return
    (most,), guards = rule.limits, leader.pieces[leader.tippet.place :]
    if not guards:
        return
    ends = [leader.tippet.at_fly, *(end for each in guards for end in (each.at_butt, each.at_fly))]
    measured = sum((each.finished.high_mm for each in guards), start=Fraction(0))
    measured += sum(end.barrel_mm + end.loop_mm for end in ends)
    if measured > most:
        yield Fact(guards[0].place, said("long_shock_tippet", lengths=(measured, most)))


def class_strength(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the tippet's strength against the class that the recipe names."""
    asked = leader.recipe.class_
    if asked is None:
        return
    strength, classes = leader.tippet.section.strength, rule.limits
    # Pounds are nominal: what is called 20 lb is the class of 10 kg, and may break at 22.04 lb.
    most = min((kg for kg in classes if kg >= asked.kg), default=asked.kg)
    if asked.kg not in classes:
        next_class = said("next_class", most=most) if most in classes else None
        yield Fact(None, said("no_class", asked=asked, classes=classes), "note", next_class)
    if strength is not None and strength.kg > most:
        yield Fact(leader.tippet.place, said("over_class", bears=strength, most=most))


RECORD_RULES: Mapping[str, Look] = {
    "class tippet": class_tippet,
    "shock tippet": shock_tippet,
    "class strength": class_strength,
}
