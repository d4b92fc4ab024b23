"""What to buy for so many leaders: a leader and a count in, a line a spool out."""

from collections.abc import Iterator

from tagend.cards.base.shown_lengths import line_to_buy
from tagend.cards.batches.batch import Order, Shortage
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.words.language import Wording
from tagend.cards.words.leader_words import Told


def shopping_lines(told: Told, count: int) -> tuple[str, ...]:
    """Return the line of each kind that the leaders take, and what is bought ready made."""
    leader, wording = told.leader, told.wording
    spools = (
        wording.say(
            "so_much_of",
            amount=wording.number(line_to_buy(pull.mm, leader.unit)),
            strand=told.strand(pull.cuts[0].piece),
        )
        for pull in cut_batch([Order(leader, count)], None).pulls
    )
    return (wording.say("buy_for", count=count), *ready_made(told, count), *spools)


def ready_made(told: Told, count: int) -> Iterator[str]:
    """Yield what to buy of each piece that is bought ready made, for so many leaders."""
    for piece in told.leader.pieces:
        if piece.bought:
            length, strand = told.length(piece.section.length), told.strand(piece)
            yield told.wording.say("ready_made", count=count, length=length, strand=strand)


def spool_name(label: str, lot: str | None, wording: Wording) -> str:
    """Return what a person calls a spool, with its lot: `Clear 8, lot F 7`."""
    return ", ".join((label, wording.say("lots_of", count=1, lots=lot))) if lot else label


def shortage_line(shortage: Shortage, wording: Wording) -> str:
    """Return what to buy of a line that the rack has too little of, and what it is for."""
    cut = shortage.cuts[0]
    return wording.say(
        "shortage_of",
        amount=wording.number(line_to_buy(shortage.mm, cut.leader.unit)),
        strand=Told(cut.leader, wording).strand(cut.piece),
        count=sum(cut.count for cut in shortage.cuts),
        leader=shortage.first.number,
        name=shortage.first.order.leader.recipe.name,
    )
