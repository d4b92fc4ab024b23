"""What to buy for so many leaders: a leader and a count in, a line a spool out."""

from cards.batch import Order, Shortage, batch
from cards.fitness import inches
from cards.leader import Leader
from cards.spell import line_length
from cards.words import thickness


def shopping_lines(leader: Leader, count: int) -> tuple[str, ...]:
    """Return the line of each kind that the leaders take, and what is bought ready made."""
    whole = batch([Order(leader, count)], None)
    spools = [
        f"{line_length(pull.mm, leader.unit)} of {thickness(pull.cuts[0].piece)}"
        for pull in whole.pulls
    ]
    ready = [
        f"{count} × {piece.section.length.plain} of {thickness(piece)}, ready made"
        for piece in leader.pieces
        if piece.section.bought
    ]
    return (f"For {count} leader{'s' if count > 1 else ''}, buy:", *ready, *spools)


def shortage_line(shortage: Shortage) -> str:
    """Return what to buy of a line that the rack has too little of, and what it is for."""
    unit = shortage.cuts[0].leader.unit
    pieces = sum(cut.count for cut in shortage.cuts)
    return (
        f"{line_length(shortage.mm, unit)} of {inches(shortage.diameter_mm)} {shortage.material}, "
        f"for {pieces} piece{'s' if pieces > 1 else ''} from leader {shortage.first_leader} on"
    )
