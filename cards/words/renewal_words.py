"""What new pieces cost, for paper: a leader's renewals in, a line each out."""

from collections.abc import Iterable

from tagend.cards.leader.renewal import Renewal
from tagend.cards.words.leader_words import Told


def renewal_lines(told: Told, renewals: Iterable[Renewal]) -> tuple[str, ...]:
    """Return what each costs: `Each new section 6 takes 3 3/4 in of section 5: good for 1.`."""
    return tuple(_line(told, each) for each in renewals)


def _line(told: Told, each: Renewal) -> str:
    say, new, above = told.wording.say, each.piece.place, each.above.place
    if each.number is None:
        return say("renewal_free", new=new, section=above)
    takes = told.taken(each.cost_mm)
    if not each.number:
        return say("renewal_spends", new=new, length=takes, section=above)
    return say("renewal", new=new, length=takes, section=above, count=each.number)
