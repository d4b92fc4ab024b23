"""A leader and how a person wants its cards in, the bytes of an SVG of all their sides out."""

from functools import cache, partial

from msgspec.structs import replace

from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.cards import CardWishes, made_cards
from tagend.cards.printing.drawing import svg_of
from tagend.cards.printing.job import Job, Printed
from tagend.layouts.sheets.column import column
from tagend.layouts.sheets.sheet import Pieces, Sheet


def cards_svg(job: Job, worksheet: Worksheet, wishes: CardWishes) -> Printed:
    """Return an SVG of the sides, one below the other. Raises as `cards_pdf` does."""
    made = cache(partial(made_cards, job, [worksheet], wishes))

    def sheet() -> Sheet:
        cards = made().cards
        sides = [side for card in cards for side in (card.front, card.back) if side]
        drawn = column(sides, job.card_size(wishes.size).corner)
        return replace(drawn, cut=Pieces("card", len(cards), len(sides)))

    printed = svg_of(job, sheet, [worksheet], title=job.title("cards", [worksheet]))
    printed.left_out = made().left_out
    return printed
