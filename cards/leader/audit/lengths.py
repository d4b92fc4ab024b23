"""Rules on lengths: whether the leader comes out as its recipe says, and as leaders are."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from tagend.cards.base.shown_lengths import length, long_length
from tagend.cards.leader.audit.finding import Fact, Look
from tagend.cards.leader.leader import Extent, Leader
from tagend.cards.leader.shown import shown_length
from tagend.cards.practice.rules import Rule


def too_short(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Find sections with no room between their two knots."""
    for piece in leader.pieces:
        if not piece.bought and piece.finished.low_mm <= piece.barrels_mm:
            left = max(piece.finished.low_mm, Fraction(0))
            yield Fact(
                piece.place,
                f"section {piece.place} has {length(left, leader.unit)} between its knots",
            )


def stated_total(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Hold the sum of the sections against the length that the recipe states."""
    total = leader.recipe.total
    (tolerance,) = rule.limits
    if total is None:
        return
    sums = leader.finished
    if not sums.low_mm - tolerance <= total.mm <= sums.high_mm + tolerance:
        made = _range(sums, leader)
        yield Fact(None, f"the recipe says {shown_length(total, leader)}, its sections make {made}")


def leader_length(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find leaders that nobody fishes so long or so short."""
    (low, high), whole = rule.limits, leader.finished
    if whole.low_mm < low or whole.high_mm > high:
        yield Fact(None, f"the leader is {_range(whole, leader)}, and {_usual(rule, leader)}")


def tippet_length(leader: Leader, rule: Rule) -> Iterator[Fact]:
    """Find tippets that nobody fishes so long or so short; a leader of one piece has none."""
    (low, high), tippet = rule.limits, leader.tippet
    whole = tippet.finished
    if len(leader.pieces) > 1 and (whole.low_mm < low or whole.high_mm > high):
        yield Fact(
            tippet.place, f"the tippet is {_range(whole, leader)}, and {_usual(rule, leader)}"
        )


def _usual(rule: Rule, leader: Leader) -> str:
    low, high = (long_length(mm, leader.unit) for mm in rule.limits)
    return f"{low} to {high} is usual"


def reach(leader: Leader, _: Rule) -> Iterator[Fact]:
    """Add line out, leader and rod, where the recipe asks for it."""
    asked = leader.recipe.reach
    if asked is None:
        return
    whole = leader.finished.longer(asked.line_out.mm + asked.rod.mm)
    out, rod = (shown_length(each, leader) for each in (asked.line_out, asked.rod))
    yield Fact(
        None,
        f"{out} of line, {_range(leader.finished, leader)} of leader and "
        f"{rod} of rod reach {_range(whole, leader)}",
    )


def _range(lengths: Extent, leader: Leader) -> str:
    low, high = (long_length(mm, leader.unit) for mm in (lengths.low_mm, lengths.high_mm))
    return high if low == high else f"{low} to {high}"


LENGTH_RULES: Mapping[str, Look] = {
    "too short": too_short,
    "stated total": stated_total,
    "leader length": leader_length,
    "tippet length": tippet_length,
    "reach": reach,
}
