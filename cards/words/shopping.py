"""What to buy for so many leaders: a leader and a count in, a line a spool out."""

from tagend.cards.base.shown_lengths import line_to_buy
from tagend.cards.batches.batch import Order, Shortage
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.leader.leader import Leader, Piece
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import length_words, strand


def shopping_lines(leader: Leader, count: int, wording: Wording) -> tuple[str, ...]:
    """Return the line of each kind that the leaders take, and what is bought ready made."""
    whole = cut_batch([Order(leader, count)], None)
    spools = [
        wording.say(
            "so_much_of",
            amount=wording.number(line_to_buy(pull.mm, leader.unit)),
            strand=strand(pull.cuts[0].piece, leader, wording),
        )
        for pull in whole.pulls
    ]
    ready = [
        ready_made(piece, leader, count, wording) for piece in leader.pieces if piece.section.bought
    ]
    head = wording.say("buy_for", count=count)
    return (head, *ready, *spools)


def ready_made(piece: Piece, leader: Leader, count: int, wording: Wording) -> str:
    """Return what to buy of a piece that is bought ready made, for so many leaders."""
    return wording.say(
        "ready_made",
        count=count,
        length=length_words(piece.section.length, leader, wording),
        strand=strand(piece, leader, wording),
    )


def shortage_line(shortage: Shortage, wording: Wording) -> str:
    """Return what to buy of a line that the rack has too little of, and what it is for."""
    cut = shortage.cuts[0]
    pieces = sum(cut.count for cut in shortage.cuts)
    return wording.say(
        "shortage_of",
        amount=wording.number(line_to_buy(shortage.mm, cut.leader.unit)),
        strand=strand(cut.piece, cut.leader, wording),
        count=pieces,
        leader=shortage.first_leader,
    )
