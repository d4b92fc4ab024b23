"""The order of tying: a leader in; its knots in an order that every one of them allows, out."""

from collections.abc import Iterator

from msgspec import Struct

from tagend.cards.leader.leader import Leader
from tagend.cards.practice.knots import Knot


class Tie(Struct, frozen=True, kw_only=True):
    """One knot to tie, between two sections counted from the butt, the first of which is 1."""

    knot: Knot
    above: int | None  # None at the butt
    below: int | None  # None at the fly
    passes: int | None = None  # the section that passes whole through the knot
    before: tuple[int, ...] = ()  # sections whose lower joints must wait until it is tied


def tying_order(leader: Leader) -> Iterator[Tie]:
    """Yield the knots from the butt to the fly.

    Where a piece must pass whole through a knot, nothing may hang on it yet.
    """
    count = len(leader.pieces)
    if leader.butt.knot is not None and not leader.butt.made:
        yield Tie(knot=leader.butt.knot, above=None, below=1)
    for place, joint in enumerate(leader.joints, start=1):
        passes = joint.knot.whole_side_passes
        yield Tie(
            knot=joint.knot,
            above=place,
            below=place + 1,
            passes=place + 1 if passes else None,
            before=tuple(range(place + 1, count)) if passes else (),
        )
    if leader.fly.knot is not None:
        yield Tie(knot=leader.fly.knot, above=count, below=None)
