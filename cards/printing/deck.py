"""A deck: what its cards say in; its leaves in type of one size, all lying alike, out."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

from tagend.cards.faces.block import Scale, TooSmall
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.deck import behind, cover
from tagend.cards.faces.panel import Panel
from tagend.cards.faces.pocket import FACTORS, pocket_card
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.card_sizes import CardSizes, paired, turned
from tagend.cards.printing.job import Job
from tagend.cards.words.lessons import lessons
from tagend.layouts.base.faults import refused
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.paper.text import TooWide
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize


def deck(
    job: Job, worksheets: Sequence[Worksheet], texts: Sequence[CardText], sizes: CardSizes
) -> list[Card]:
    """Return a cover with the cautions, the leaders, their knots once, and what to look up.

    As few leaves as there can be, and then the largest type with which they stay so few. A deck
    that grows takes the next larger size that holds them all. Raises `Refused`.
    """
    least = min(text.least for text in texts)
    factors = [factor for factor in FACTORS if factor >= least]
    for size in sizes.to_try():
        smallest = _either_way(job, worksheets, texts, size, factors[-1:])
        if smallest:
            found = [
                leaves
                for factor in factors[:-1]
                if (leaves := _either_way(job, worksheets, texts, size, [factor]))
                and len(leaves) <= len(smallest)
            ]
            return [*found, smallest][0]
    raise refused(
        f"this deck needs more room than {size_in_mm(sizes.size.width, sizes.size.height)} in type "
        "that can be read",
        "choose a larger --size; see `tagend stock`",
    )


def _either_way(
    job: Job,
    worksheets: Sequence[Worksheet],
    texts: Sequence[CardText],
    size: CardSize,
    factors: Sequence[float],
) -> list[Card]:
    """Return the fewer leaves of a deck that lies and one that stands; none where neither does."""
    found = []
    for way, factor in product((size, turned(size)), factors):
        try:
            found.append(_leaves(job, worksheets, texts, way, factor))
        except TooSmall:
            continue
    return min(found, key=len, default=[])


def _leaves(
    job: Job,
    worksheets: Sequence[Worksheet],
    texts: Sequence[CardText],
    size: CardSize,
    factor: float,
) -> list[Card]:
    """Return the leaves in one type. Raises `TooSmall`."""
    panel, told = Panel(size, Scale(factor, job.fonts)), job.told(worksheets)
    leaders: list[Card] = []
    for text in texts:
        plain = replace(text, lessons=(), cautions=(), least=factor, most=factor)
        leaders += paired(pocket_card(plain, size, job.fonts))
    try:
        front = cover(told, job.imprint, panel)
    except TooWide as error:
        raise TooSmall(str(error)) from None
    more = behind(
        job.cautions(worksheets),
        lessons(*told) if any(text.lessons for text in texts) else (),
        reference_tables(job.practice, job.wording),
        job.wording,
        panel,
    )
    odd = len(front) % 2  # the cover's back has the first of what follows
    return [*paired((*front, *more[:odd])), *leaders, *paired(more[odd:])]
