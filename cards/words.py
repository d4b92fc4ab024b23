"""A worksheet's facts as words for people: shared by tables, cards and labels."""

from cards.joints import End, Joint
from cards.leader import Extent, Leader, Piece
from cards.spell import length, length_number, long_length


def span(lengths: Extent, leader: Leader) -> str:
    """Return a length, or a range of lengths, as people say it: `11 ft`."""
    low, high = (long_length(mm, leader.unit) for mm in (lengths.low_mm, lengths.high_mm))
    return high if low == high else f"{low} to {high}"


def span_number(lengths: Extent, leader: Leader) -> str:
    """Return a length, or a range, for a column that says its unit above: `22–28`."""
    low, high = (length_number(mm, leader.unit) for mm in (lengths.low_mm, lengths.high_mm))
    return high if low == high else f"{low}–{high}"


def thickness(piece: Piece) -> str:
    """Return how thick a piece is and of what: `0.010 in fluorocarbon`."""
    return f"{piece.section.diameter.plain} {piece.section.material}"


def strand(piece: Piece) -> str:
    """Return all that a spool says of a piece: `0.010 in fluorocarbon, 8.5 lb`."""
    strength = piece.section.strength
    return thickness(piece) + (f", {strength.plain}" if strength else "")


def end_words(end: End, leader: Leader) -> str:
    """Return the end at the butt or at the fly: `perfection loop, 3/4 in`."""
    if end.knot is None:
        return "bare end"
    loop = f", {length(end.loop_mm, leader.unit)}" if end.knot.takes.thick.loop else ""
    return f"{end.knot.name}{loop}"


def joint_words(joint: Joint) -> str:
    """Return the knot between two sections, with its turns where they depend on the strands.

    The turns on the thick strand come first: `blood 4+6`.
    """
    if not joint.knot.counted:
        return joint.knot.name
    return f"{joint.knot.name} {'+'.join(str(count) for count in joint.turns if count)}"


def dropper_words(leader: Leader) -> str:
    """Return the droppers, or nothing: `dropper of 6 in left above section 4`."""
    droppers = [
        f"dropper of {piece.section.dropper.plain} left above section {piece.place + 1}"
        for piece in leader.pieces
        if piece.section.dropper is not None
    ]
    return "; ".join(droppers)
