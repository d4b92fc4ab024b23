"""Worksheets and what a person wants of the paper in, the bytes of a PDF out."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import repeat
from typing import TYPE_CHECKING, NamedTuple

from tagend.cards.code.notation import write_notation
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import LabelNote
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.card_making import (
    CardStyle,
    CardText,
    card_text,
    cards_of,
    size_that_holds,
)
from tagend.cards.printing.card_sheets import SheetWishes, card_sheets, rule_words
from tagend.cards.printing.own_paper import own_paper
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_text import file_name, recipe_text
from tagend.cards.words.language import Wording, wording_of
from tagend.fonts import FontMissing, NoGlyph
from tagend.layouts.base.faults import Fault, Refused
from tagend.layouts.codes.code import Level, TextTooLong, symbol
from tagend.layouts.codes.code_proof import NotProven, proven
from tagend.layouts.paper.face import Face, Symbol
from tagend.layouts.paper.text import TooWide
from tagend.layouts.pdf.attach import AttachedFile
from tagend.layouts.pdf.pdf import Duplex, write_pdf
from tagend.layouts.sheets.imposition import Card, DoesNotFit, MixedSizes, NoSuchLabel, place_labels
from tagend.layouts.sheets.margins import with_rules
from tagend.layouts.sheets.pieces import Backs
from tagend.layouts.sheets.printer import corrected
from tagend.layouts.stock.formats import CardSize, LabelSheet
from tagend.layouts.stock.stock import card_size, label_sheet, paper

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack

CREATOR = "tagend"
_LABEL_LEVELS: tuple[Level, ...] = ("Q", "M")  # of a label's code; Q where it costs nothing
# Their messages say already what to do.
_TOLD = (
    DoesNotFit,
    NoSuchLabel,
    MixedSizes,
    TextTooLong,
    FontMissing,
    NotProven,
)
_DUPLEX: dict[Backs, Duplex] = {"long-edge": "long edge", "short-edge": "short edge"}


class CardWishes(NamedTuple):
    """What a person wants of the cards' paper; None leaves the usual."""

    size: str | None = None
    paper: str | None = None
    sheets: SheetWishes = SheetWishes()
    copies: int = 1
    style: CardStyle = CardStyle()
    rack: "Rack | None" = None  # to name the person's own spools
    deck: bool = False  # with a cover, a reference and a cautions card
    hole: bool = False  # with a strip for a ring


@dataclass(frozen=True, slots=True)
class LabelWishes:
    """What a person wants of a sheet of labels; None leaves the usual."""

    stock: str | None = None
    count: int = 1
    start: int = 1
    skip: tuple[int, ...] = ()
    numbers: tuple[tuple[str, ...], ...] = ()  # of each recipe's labels, where they are numbered
    note: LabelNote = field(default_factory=LabelNote)


class _CardJob(NamedTuple):
    """What all cards of a run share."""

    practice: Practice
    shop: Shop
    wording: Wording
    wishes: CardWishes
    size: CardSize
    known: tuple[CardSize, ...]

    @property
    def grows(self) -> bool:
        """Whether large type may take a larger card."""
        return self.wishes.style.large and self.wishes.size is None


def cards_pdf(
    worksheets: Sequence[Worksheet], practice: Practice, shop: Shop, wishes: CardWishes
) -> bytes:
    """Return a PDF of pocket cards. Raises `Refused` for what does not fit or cannot be set."""
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        usual = own.stock.defaults
        size = card_size(wishes.size or shop.card or usual["card"], own.stock)
        sheet = paper(wishes.paper or shop.paper or usual["paper"], own.stock)
        job = _CardJob(practice, shop, wording, wishes, size, tuple(own.stock.cards.values()))
        texts = [_text(worksheet, job) for worksheet in worksheets]
        if wishes.deck:
            from tagend.cards.printing.deck_making import deck, deck_cards

            made = deck_cards(texts, size, job.known, grows=job.grows)
            cards = deck(worksheets, _copied(made, job), practice, shop, wording, wishes.style.logo)
        else:
            cards = _copied([_cards(text, job) for text in texts], job)
        if wishes.hole:
            from tagend.cards.faces.hole import with_hole

            cards = [with_hole(card) for card in cards]
        return write_pdf(
            card_sheets(cards, size.corner, sheet, own.printer, wishes.sheets, wording),
            title=_title(worksheets, "cards", wording),
            creator=CREATOR,
            files=recipe_files([worksheet.leader.recipe for worksheet in worksheets]),
            duplex=_DUPLEX.get(wishes.sheets.backs),
        )


def labels_pdf(
    worksheets: Sequence[Worksheet], practice: Practice, shop: Shop, wishes: LabelWishes
) -> bytes:
    """Return a PDF of wallet labels. Raises `Refused` for what does not fit or cannot be set."""
    wording = wording_of(shop)
    with own_paper(shop) as own, paper_faults():
        name = wishes.stock or shop.labels or own.stock.defaults["labels"]
        stock = label_sheet(name, own.stock)
        known = own.stock.labels.values()
        faces = [
            face
            for worksheet, numbers in zip(worksheets, wishes.numbers or repeat(()), strict=False)
            for face in _labels(worksheet, numbers, practice, wording, stock, wishes, known)
        ]
        sheets = place_labels(faces, stock, wishes.start, wishes.skip)
        if not stock.on_roll:
            sheets = with_rules(sheets, rule_words(wording), kept=stock.boxes)
        return write_pdf(
            corrected(sheets, own.printer),
            title=_title(worksheets, "labels", wording),
            creator=CREATOR,
            files=recipe_files([worksheet.leader.recipe for worksheet in worksheets]),
        )


def code_of(recipe: Recipe, practice: Practice, level: Level = "M") -> Symbol:
    """Return the symbol of a recipe's notation; raises `NotProven` where it does not read back."""
    return proven(symbol(write_notation(recipe, practice.knots, practice.materials), level))


def recipe_files(recipes: Sequence[Recipe]) -> tuple[AttachedFile, ...]:
    """Return recipes as files for a PDF to carry, each under a name of its own."""
    seen: Counter[str] = Counter()
    files = []
    for recipe in recipes:
        name = file_name(recipe.name)
        seen[name] += 1
        if seen[name] > 1:
            name = f"{seen[name]}-{name}"
        files.append(AttachedFile(name, "application/toml", recipe_text(recipe).encode()))
    return tuple(files)


@contextmanager
def paper_faults(where: str = "") -> Iterator[None]:
    """Turn what paper and fonts refuse into what a person reads."""
    try:
        yield
    except NoGlyph as error:
        raise Refused(Fault(where, str(error), "write it with letters and common signs")) from None
    except (TooSmall, TooWide) as error:
        raise Refused(
            Fault(where, str(error), "choose a larger size; see `tagend stock`")
        ) from None
    except _TOLD as error:
        raise Refused(Fault(where, str(error), "")) from None


def _text(worksheet: Worksheet, job: _CardJob) -> CardText:
    leader, wishes = worksheet.leader, job.wishes
    check_tieable(leader)
    with paper_faults(leader.recipe.name):
        code = code_of(leader.recipe, job.practice)
        return card_text(
            leader, code, job.practice, job.shop, job.wording, wishes.style, wishes.rack
        )


def _cards(text: CardText, job: _CardJob) -> tuple[Card, ...]:
    with paper_faults(text.front.leader.recipe.name):
        size = size_that_holds(text, job.size, job.known) if job.grows else job.size
        return cards_of(text, size, job.known)


def _copied(made: Sequence[Sequence[Card]], job: _CardJob) -> list[Card]:
    """Return the cards of each leader as often as they are wanted."""
    return [card for cards in made for card in cards for _ in range(job.wishes.copies)]


def _labels(
    worksheet: Worksheet,
    numbers: Sequence[str],
    practice: Practice,
    wording: Wording,
    sheet: LabelSheet,
    wishes: LabelWishes,
    known: Iterable[LabelSheet],
) -> list[Face]:
    from tagend.cards.printing.label_making import labels_of

    leader = worksheet.leader
    check_tieable(leader)
    with paper_faults(leader.recipe.name):
        codes = [code_of(leader.recipe, practice, level) for level in _LABEL_LEVELS]
        numbered = [wishes.note._replace(number=number) for number in numbers]
        made = labels_of(leader, codes, sheet, numbered or [wishes.note], practice, wording, known)
    return made if numbered else made * wishes.count


def _title(worksheets: Sequence[Worksheet], what: str, wording: Wording) -> str:
    names = [worksheet.leader.recipe.name for worksheet in worksheets]
    of = names[0] if len(names) == 1 else wording.say("so_many_leaders", count=len(names))
    return wording.say(f"{what}_of", leaders=of)
