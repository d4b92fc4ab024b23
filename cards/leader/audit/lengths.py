"""Rules on lengths: whether the leader comes out as its recipe says, and as leaders are."""

from collections.abc import Iterator, Mapping

from cfractions import Fraction

from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Extent, Leader
from tagend.cards.leader.said import said
from tagend.cards.practice.rules import Rule


def too_short(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find sections with no room between their two knots."""
    for place, left_mm in crowded(leader):
        yield Fact(place, said("too_short", section=place, left=left_mm))


def crowded(leader: Leader) -> Iterator[tuple[int, Fraction]]:
    """Yield each section with no room between its two knots, and what there is, in mm."""
    for piece in leader.pieces:
        if not piece.bought and piece.finished.low_mm <= piece.barrels_mm:
            yield piece.place, max(piece.finished.low_mm, Fraction(0))


def stated_total(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the sum of the sections against the length that the recipe states."""
    total = leader.recipe.total
    (tolerance,) = rule.limits
    if total is None:
        return
    sums = leader.finished
    if not sums.low_mm - tolerance <= total.mm <= sums.high_mm + tolerance:
        yield Fact(None, said("other_total", total=total, made=sums))


def leader_length(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find leaders that nobody fishes so long or so short."""
    (low, high), whole = rule.limits, leader.finished
    if whole.low_mm < low or whole.high_mm > high:
        yield Fact(None, said("leader_length", whole=whole, usual=Extent(low, high)))


def tippet_length(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find tippets that nobody fishes so long or so short; a leader of one piece has none."""
    (low, high), tippet = rule.limits, leader.tippet
    whole = tippet.finished
    if len(leader.pieces) > 1 and (whole.low_mm < low or whole.high_mm > high):
        yield Fact(tippet.place, said("tippet_length", tippet=whole, usual=Extent(low, high)))


def reach(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Add line out, leader and rod, where the recipe asks for it."""
    asked = leader.recipe.reach
    if asked is None:
        return
    whole = leader.finished.longer(asked.line_out.mm + asked.rod.mm)
    parts = {"out": asked.line_out, "leader": leader.finished, "rod": asked.rod}
    yield Fact(None, said("reaches", **parts, whole=whole))


LENGTH_RULES: Mapping[str, Look] = {
    "too short": too_short,
    "stated total": stated_total,
    "leader length": leader_length,
    "tippet length": tippet_length,
    "reach": reach,
}
