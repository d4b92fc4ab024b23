"""A deck: what its cards say in; its leaves numbered, in type of one size, out."""

from collections.abc import Sequence
from itertools import product

from msgspec.structs import replace

from tagend.cards.faces.block import DROP, LEADING, Scale, TooSmall
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.deck import Leaf, behind, cover
from tagend.cards.faces.panel import INSET, Panel
from tagend.cards.faces.pocket import FACTORS, pocket_card
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.card_sizes import CardSizes, paired, turned
from tagend.cards.printing.job import Job
from tagend.cards.words.language import Wording
from tagend.cards.words.lessons import lessons
from tagend.fonts import Fonts
from tagend.layouts.base.faults import refused
from tagend.layouts.paper.face import Face, Item, lowest
from tagend.layouts.paper.lengths import size_in_mm
from tagend.layouts.paper.text import TooWide, set_line
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.formats import CardSize

_SIDES = 2  # of a leaf


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
    fonts, told = job.fonts, job.told(worksheets)
    scale = Scale(factor, fonts)
    foot = LEADING * scale.small  # for each leaf's number
    inner = replace(size, height=size.height - foot)
    leaf = Leaf(Panel(inner, scale), Panel(size, scale))
    leaders = [
        _leader(
            replace(text, lessons=(), cautions=(), least=factor, most=factor), size, inner, fonts
        )
        for text in texts
    ]
    try:
        first = cover(told, job.cautions(worksheets), job.imprint, leaf)
    except TooWide as error:
        raise TooSmall(str(error)) from None
    taught = lessons(*told) if any(text.lessons for text in texts) else ()
    last = behind(taught, reference_tables(job.practice, job.wording), leaf)
    return _numbered([first, *leaders, last], size, inner, scale, job.wording)


def _leader(text: CardText, size: CardSize, inner: CardSize, fonts: Fonts) -> tuple[Face, ...]:
    """Return a leader's sides, with room for a number on each front.

    On each back instead, where that saves a leaf.
    """
    numbered = pocket_card(text, inner, fonts).faces
    if len(numbered) <= _SIDES:
        return numbered
    full = pocket_card(text, size, fonts).faces
    backs_free = all(lowest(back) <= inner.height - INSET for back in full[1::2])
    return full if len(full) < len(numbered) and len(full) % 2 == 0 and backs_free else numbered


def _numbered(
    parts: Sequence[Sequence[Face]], size: CardSize, inner: CardSize, scale: Scale, wording: Wording
) -> list[Card]:
    """Return the leaves, each part beginning one, numbered low at the left.

    That is on the front, or on the back where the front is full.
    """
    cards = [
        card
        for faces in parts
        for card in paired([replace(face, height=size.height) for face in faces])
    ]
    y = size.height - INSET - (LEADING - DROP) * scale.small
    result = []
    for place, card in enumerate(cards, start=1):
        words = wording.say("one_of", number=place, count=len(cards))
        number = set_line(words, scale.bold, scale.small).at(INSET, y)
        if card.back is None or lowest(card.front) <= inner.height - INSET:
            result.append(replace(card, front=_with(card.front, number)))
        else:
            result.append(replace(card, back=_with(card.back, number)))
    return result


def _with(face: Face, items: Sequence[Item]) -> Face:
    return replace(face, items=(*face.items, *items))
