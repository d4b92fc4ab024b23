"""What new pieces cost, for paper: a leader's renewals in, a line each out."""

from collections.abc import Iterable

from tagend.cards.leader.renewal import Renewal
from tagend.cards.words.leader_words import Told


def renewal_lines(told: Told, renewals: Iterable[Renewal]) -> tuple[str, ...]:
    """Return what each costs: `Each new section 6 takes 3 3/4 in of section 5: good for 1.`."""
    return tuple(_line(told, each) for each in renewals)


def _line(told: Told, each: Renewal) -> str:
    places = {"new": each.piece.place, "section": each.above.place}
    if each.number is None:
        return told.wording.say("renewal_free", **places)
    key = "renewal" if each.number else "renewal_spends"
    return told.wording.say(key, **places, length=told.taken(each.cost_mm), count=each.number)
