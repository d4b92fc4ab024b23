"""Worksheets and how a person wants their cards in, the bytes of a PDF of pocket cards out."""

from collections.abc import Callable, Sequence
from functools import cache, partial
from typing import TYPE_CHECKING, TypeAlias

from msgspec import Struct, field
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import ShownUnit, length
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.pocket import LARGE
from tagend.cards.leader.leader import Leader, check_tieable
from tagend.cards.leader.naming import all_named
from tagend.cards.leader.renewal import renewals
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.printing.card_sheets import SheetWishes, card_sheets
from tagend.cards.printing.card_sizes import CardSizes, LeaderCards, cards_of, size_for_all
from tagend.cards.printing.codes import code_of
from tagend.cards.printing.job import DUPLEX, Job, LeftOut, Printed, paper_faults, pdf_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.code_legend import legend
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import lessons
from tagend.cards.words.renewal_words import renewal_lines
from tagend.layouts.base.cores import made_of
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Face, Symbol
from tagend.layouts.paper.text import TooWide
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.sheet import Sheet

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack


MakeCode: TypeAlias = Callable[[Leader, Practice], Symbol]

_A_CORE = 6  # leaders; for fewer, another core costs more than it saves
_FEW = 12  # leaders, for which another size and knots on cards of their own are tried besides


class CardWishes(Struct, frozen=True):
    """What a person wants of the cards; None leaves the usual."""

    size: str | None = None
    paper: str | None = None
    sheets: SheetWishes = field(default_factory=SheetWishes)
    copies: int = 1
    rack: "Rack | None" = None  # to name the person's own spools
    deck: bool = False  # with a cover, a reference and a cautions card
    taught: bool = True  # with how the knots are tied
    knots: bool = False  # these alone, each once for all leaders
    large: bool = False  # in type to be read without glasses
    shopping: int | None = None  # leaders to list the line for
    ruler: bool = False  # along the edge of the last side


class MadeCards(Struct, frozen=True):
    """All cards of a run, and what found no room on them."""

    cards: tuple[Card, ...]
    left_out: tuple[LeftOut, ...] = ()


def cards_pdf(job: Job, worksheets: Sequence[Worksheet], wishes: CardWishes) -> Printed:
    """Return a PDF of pocket cards. Raises `Refused` for what does not fit or cannot be set."""
    made = cache(partial(made_cards, job, worksheets, wishes))
    printed = pdf_of(
        job,
        lambda: _on_paper(job, made().cards, wishes),
        worksheets,
        title=job.title("cards", worksheets),
        duplex=DUPLEX.get(wishes.sheets.backs),
        true=not wishes.sheets.press,  # a print shop has its own printer
    )
    printed.left_out = made().left_out
    alone = not (wishes.deck or wishes.knots) and wishes.taught and len(worksheets) <= _FEW
    # Where each leader has but one card, it has one without its knots too.
    if alone and len(made().cards) > len(worksheets) * wishes.copies:
        apart = _pages_apart(job, worksheets, wishes)
        printed.pages_apart = apart if apart and apart < len(printed.sheets) else None
    return printed


def _pages_apart(job: Job, worksheets: Sequence[Worksheet], wishes: CardWishes) -> int | None:
    """Return how many pages there are with knots on cards of their own, if these can be made."""
    ways = (replace(wishes, taught=False), replace(wishes, knots=True))
    try:
        return sum(len(cards_sheets(job, worksheets, way)) for way in ways)
    except (TooSmall, TooWide, Refused):
        return None


def cards_sheets(job: Job, worksheets: Sequence[Worksheet], wishes: CardWishes) -> Sequence[Sheet]:
    """Return their sheets, for `pdf_of`. Raises `Refused`, and what `pdf_of` turns into it."""
    return _on_paper(job, made_cards(job, worksheets, wishes).cards, wishes)


def _on_paper(job: Job, cards: Sequence[Card], wishes: CardWishes) -> Sequence[Sheet]:
    corner = job.card_size(wishes.size).corner
    return card_sheets(cards, corner, job.paper(wishes.paper), wishes.sheets, job)


def made_cards(job: Job, worksheets: Sequence[Worksheet], wishes: CardWishes) -> MadeCards:
    """Return all cards, not yet on paper. Raises as `cards_sheets` does."""
    sizes = _sizes(job, wishes)
    if wishes.knots:
        from tagend.cards.printing.knots import knots_cards

        taught = knots_cards(job, worksheets, sizes.size, large=wishes.large)
        return MadeCards(taught * wishes.copies)
    return _cards(job, worksheets, wishes, sizes)


def _sizes(job: Job, wishes: CardWishes) -> CardSizes:
    grows = wishes.large and wishes.size is None
    known = tuple(job.stock.cards.values())
    return CardSizes(job.card_size(wishes.size), known, grows, job.fonts)


def card_faces(
    job: Job, worksheet: Worksheet, wishes: CardWishes, code: MakeCode = code_of
) -> list[Face]:
    """Return the sides of a leader's cards by themselves. Raises `Refused`."""
    check_tieable(worksheet.leader)
    with paper_faults():
        made = cards_of(card_text(job, worksheet, wishes, code), _sizes(job, wishes))
    return [face for card in made.cards for face in (card.front, card.back) if face]


def card_text(
    job: Job, worksheet: Worksheet, wishes: CardWishes, make_code: MakeCode = code_of
) -> CardText:
    """Return what a leader's card says. Raises `NotProven`, and `Refused` for its variants."""
    leader = worksheet.leader
    code, told = make_code(leader, job.practice), _told(job, worksheet, wishes.rack)
    return CardText(
        told=told,
        symbol=code,
        legend=tuple(legend(all_named(leader), job.wording)),
        cautions=job.cautions([worksheet]),
        how_to=job.wording.say("how_to_tie", tag=_tag(job, leader.unit)),
        imprint=job.imprint,
        lessons=lessons(told) if wishes.taught else (),
        shopping=_shopping(told, wishes.shopping),
        renewals=renewal_lines(told, renewals(leader, job.practice)),
        variants=_variants(job, leader.recipe),
        ruler=wishes.ruler,
        least=LARGE if wishes.large else 1.0,
    )


def _tag(job: Job, unit: ShownUnit) -> str:
    """Return what is left on a trimmed knot, which is too short for cm."""
    return job.wording.number(length(job.practice.knots.tag_mm, "in" if unit == "in" else "mm"))


def _cards(
    job: Job, worksheets: Sequence[Worksheet], wishes: CardWishes, sizes: CardSizes
) -> MadeCards:
    """Return all cards, those of each leader as often as they are wanted."""

    @cache
    def text_of(place: int) -> CardText:
        with paper_faults(worksheets[place].leader.recipe.name):
            return card_text(job, worksheets[place], wishes)

    def of_leader(place: int) -> LeaderCards:
        with paper_faults(text_of(place).name):
            return cards_of(text_of(place), sizes)

    places = range(len(worksheets))
    if wishes.deck:
        from tagend.cards.printing.deck import deck

        leaves = deck(job, worksheets, [text_of(place) for place in places], sizes)
        return MadeCards(tuple(leaves * wishes.copies))
    made = made_of(places, of_leader, _A_CORE)
    cards = (card for each in made for card in each.cards for _ in range(wishes.copies))
    lacking = [place for place in places if made[place].missing]
    few = 0 < len(lacking) <= _FEW
    size = size_for_all([text_of(place) for place in lacking], sizes) if few else None
    left_out = (
        LeftOut(worksheets[place].leader.recipe.name, made[place].missing, size)
        for place in lacking
    )
    return MadeCards(tuple(cards), tuple(left_out))


# What few cards want is loaded for those alone, since it takes 17 ms.


def _told(job: Job, worksheet: Worksheet, rack: "Rack | None") -> Told:
    (told,) = job.told([worksheet])
    if rack is None:
        return told
    from tagend.cards.batches.cutting import spool_labels

    return replace(told, spools=spool_labels(worksheet.leader, rack))


def _shopping(told: Told, count: int | None) -> tuple[str, ...]:
    if count is None:
        return ()
    from tagend.cards.words.shopping import shopping_lines

    return shopping_lines(told, count)


def _variants(job: Job, recipe: Recipe) -> tuple[str, ...]:
    if not recipe.variants:
        return ()
    from tagend.cards.words.variant_words import variant_lines

    return variant_lines(recipe, job.practice, job.wording)
