"""A taper in; how it falls from the butt to the tippet, as a person compares it, out."""

from collections.abc import Iterator

from msgspec import Struct

from tagend.cards.base.shown_lengths import thickness
from tagend.cards.base.units import Diameter, Length
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.passing import Percent, turned_back
from tagend.cards.leader.waves import measure
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


class TaperTold(Struct, frozen=True, kw_only=True):
    """How a taper falls, and what a wave meets on its way down an ideal string."""

    steps: tuple[str, ...]  # in diameter, but to a bite guard, where it rises
    ratios: tuple[str, ...]
    shares: tuple[tuple[str, int], ...]  # each part's of the finished length, in percent
    turned_back: tuple[str | None, ...]  # of a wave, at each joint; None where it is not known
    passed: str | None  # of its energy


def taper_told(told: Told) -> TaperTold:
    """Return how a taper falls."""
    leader, number = told.leader, told.wording.number
    meetings = [joint.meeting for joint in leader.joints if joint.meeting.step_mm >= 0]
    found = measure(leader)
    turned = map(turned_back, found.joints)
    return TaperTold(
        steps=tuple(number(thickness(meet.step_mm, leader.unit)) for meet in meetings),
        ratios=tuple(number(f"{float(meet.upper_mm / meet.lower_mm):.2f}") for meet in meetings),
        shares=tuple(_shares(leader)),
        turned_back=tuple(str(Percent.of(share)) if share else None for share in turned),
        passed=str(Percent.of(found.passed)) if found.passed else None,
    )


def taper_name(total: Length, butt: Diameter, tippet: Diameter, wording: Wording) -> str:
    """Return what a taper is called after its measures: `9 ft, 0.021 in to 4X`."""
    number = wording.number
    return wording.say(
        "taper_of", total=number(total.plain), butt=number(butt.plain), tippet=number(tippet.plain)
    )


def _shares(leader: Leader) -> Iterator[tuple[str, int]]:
    for part in dict.fromkeys(piece.part for piece in leader.pieces):
        mm = sum(piece.finished.high_mm for piece in leader.pieces if piece.part == part)
        yield part, round(100 * mm / leader.finished.high_mm)
