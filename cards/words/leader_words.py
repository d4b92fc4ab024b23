"""A worksheet's facts as words for people: shared by tables, cards and labels."""

from tagend.cards.base.shown_lengths import (
    ShownUnit,
    diameter_in,
    length,
    length_number,
    long_length,
)
from tagend.cards.base.units import Diameter, Length, Span
from tagend.cards.leader.joints import End, Joint
from tagend.cards.leader.leader import Extent, Leader, Piece
from tagend.cards.words.language import Wording


def span(lengths: Extent, leader: Leader, wording: Wording) -> str:
    """Return a length, or a range of lengths, as people say it: `11 ft`."""
    return _span(lengths, leader.unit, wording)


def second_span(lengths: Extent, leader: Leader, wording: Wording) -> str:
    """Return the same in the second unit, or nothing where a person wants only one."""
    return _span(lengths, leader.second_unit, wording) if leader.second_unit else ""


def spans(lengths: Extent, leader: Leader, wording: Wording) -> str:
    """Return a length in each unit that a person wants: `11 ft · 3.35 m`."""
    each = (span(lengths, leader, wording), second_span(lengths, leader, wording))
    return " · ".join(filter(None, each))


def span_number(lengths: Extent, leader: Leader, wording: Wording) -> str:
    """Return a length, or a range, for a column that says its unit above: `22–28`."""
    low, high = (length_number(mm, leader.unit) for mm in (lengths.low_mm, lengths.high_mm))
    return wording.number(high if low == high else f"{low}–{high}")


def diameter(thick: Diameter, leader: Leader, wording: Wording) -> str:
    """Return a diameter as it was written, or in the unit that a person wants all shown in."""
    plain = diameter_in(thick, leader.unit) if leader.converted else thick.plain
    return wording.number(plain)


def length_words(of: Length | Span, leader: Leader, wording: Wording) -> str:
    """Return a length, or a range, as it was written, or in the metric or inches all are in."""
    low, _, high = _plain(of, leader).partition(" to ")
    if not high:
        return wording.number(low)
    return wording.say("range", low=wording.number(low), high=wording.number(high))


def _plain(of: Length | Span, leader: Leader) -> str:
    low, high = (of, of) if isinstance(of, Length) else (of.low, of.high)
    if not leader.converted or high.in_inches == (leader.unit == "in"):
        return of.plain
    longest = length(high.mm, leader.unit)
    return longest if low == high else f"{length_number(low.mm, leader.unit)} to {longest}"


def thickness(piece: Piece, leader: Leader, wording: Wording) -> str:
    """Return how thick a piece is and of what: `0.010 in fluorocarbon`."""
    return wording.say(
        "strand",
        diameter=_along(piece, leader, wording),
        material=wording.material(piece.section.material),
    )


def _along(piece: Piece, leader: Leader, wording: Wording) -> str:
    """Return the diameter; of a knotless taper, from its butt to its fly: `0.021–0.012 in`."""
    section = piece.section
    thick = diameter(section.diameter, leader, wording)
    if section.tapers_to is None:
        return thick
    thin = diameter(section.tapers_to, leader, wording)
    unit = thin.rpartition(" ")[2]
    return f"{thick.removesuffix(f' {unit}')}–{thin}"


def strand(piece: Piece, leader: Leader, wording: Wording) -> str:
    """Return all that a spool says of a piece: `0.010 in fluorocarbon, 8.5 lb`."""
    strength = piece.section.strength
    more = f", {wording.number(strength.plain)}" if strength else ""
    return thickness(piece, leader, wording) + more


def end_words(end: End, leader: Leader, wording: Wording) -> str:
    """Return the end at the butt or at the fly: `perfection loop, 3/4 in`."""
    if end.knot is None or not end.knot.takes.thick.loop:
        return end_name(end, leader, wording)
    return f"{end_name(end, leader, wording)}, {_loop(end, leader, wording)}"


def end_name(end: End, leader: Leader, wording: Wording) -> str:
    """Return the end's knot without the size of its loop: `perfection loop`."""
    if end.knot is not None:
        return wording.knot(end.knot.name)
    bought = end is leader.butt and leader.pieces[0].section.bought
    return wording.say("as_bought" if bought else "bare_end")


def loop_words(leader: Leader, wording: Wording) -> str:
    """Return the loops at both ends, or nothing: `loop 3/4 in at the butt, 1/4 in at the fly`."""
    looped = {
        key: _loop(end, leader, wording)
        for key, end in (("butt", leader.butt), ("fly", leader.fly))
        if end.knot is not None and end.knot.takes.thick.loop
    }
    return wording.say(f"loop_at_{'_and_'.join(looped)}", **looped) if looped else ""


def joint_words(joint: Joint, wording: Wording) -> str:
    """Return the knot between two sections, with its turns where they depend on the strands.

    The turns on the thick strand come first: `blood 4+6`.
    """
    name = wording.knot(joint.knot.name)
    if not joint.knot.counted:
        return name
    turns = (joint.turns.thick, joint.turns.thin)
    return f"{name} {'+'.join(str(count) for count in turns if count)}"


def dropper_words(leader: Leader, wording: Wording) -> str:
    """Return the droppers, or nothing: `dropper of 6 in left above section 4`."""
    droppers = [
        wording.say(
            "dropper",
            length=length_words(piece.section.dropper, leader, wording),
            section=piece.place + 1,
        )
        for piece in leader.pieces
        if piece.section.dropper is not None
    ]
    return "; ".join(droppers)


def taper_words(leader: Leader, wording: Wording) -> str:
    """Return the knotless tapers, or nothing: `section 1 tapers, 0.021–0.012 in`."""
    tapers = [
        wording.say("tapers", section=piece.place, diameters=_along(piece, leader, wording))
        for piece in leader.pieces
        if piece.section.tapers_to is not None
    ]
    return "; ".join(tapers)


def _loop(end: End, leader: Leader, wording: Wording) -> str:
    return wording.number(length(end.loop_mm, leader.unit))


def _span(lengths: Extent, unit: ShownUnit, wording: Wording) -> str:
    low, high = (wording.number(long_length(mm, unit)) for mm in (lengths.low_mm, lengths.high_mm))
    return high if low == high else wording.say("range", low=low, high=high)
