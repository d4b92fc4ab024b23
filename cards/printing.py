"""Worksheets and what a person wants of the paper in, the bytes of a PDF out."""

from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from typing import get_args

from cards.card_making import CardStyle, card_text, cards_of, size_that_holds
from cards.errors import Fault, Refused
from cards.faces.block import TooSmall
from cards.faces.label import LabelNote, wallet_label
from cards.notation import write_notation
from cards.practice import Practice
from cards.rack_file import Rack
from cards.recipe import Recipe
from cards.recipe_text import file_name, recipe_text
from cards.shop_file import Shop
from cards.worksheet import Worksheet
from fonts import FontMissing, NoGlyph
from layouts.attach import AttachedFile
from layouts.code import TextTooLong, symbol
from layouts.face import Face, Symbol
from layouts.formats import CardSize
from layouts.imposition import Card, DoesNotFit, NoSuchLabel, place_cards, place_labels
from layouts.pdf import Duplex, write_pdf
from layouts.pieces import Backs
from layouts.stock import UnknownStock, card_size, label_sheet, paper, shipped
from layouts.text import TooWide

CREATOR = "tagend"
_DUPLEX: dict[Backs, Duplex] = {"long-edge": "long edge", "short-edge": "short edge"}


@dataclass(frozen=True, slots=True)
class CardWishes:
    """What a person wants of the cards' paper; None leaves the usual."""

    size: str | None = None
    paper: str | None = None
    backs: Backs = "fold"
    copies: int = 1
    style: CardStyle = field(default_factory=CardStyle)
    rack: Rack | None = None  # to name the person's own spools


@dataclass(frozen=True, slots=True)
class LabelWishes:
    """What a person wants of a sheet of labels; None leaves the usual."""

    stock: str | None = None
    count: int = 1
    start: int = 1
    skip: tuple[int, ...] = ()
    numbers: tuple[str, ...] = ()  # of the labels of each recipe, where they are numbered
    note: LabelNote = field(default_factory=LabelNote)


@dataclass(frozen=True, slots=True)
class _CardJob:
    """What all cards of a run share."""

    practice: Practice
    shop: Shop
    wishes: CardWishes
    size: CardSize
    known: tuple[CardSize, ...]


def cards_pdf(
    worksheets: Sequence[Worksheet], practice: Practice, shop: Shop, wishes: CardWishes
) -> bytes:
    """Return a PDF of pocket cards. Raises `Refused` for what does not fit or cannot be set."""
    usual = shipped().defaults
    with paper_faults():
        size = card_size(wishes.size or shop.card or usual["card"])
        sheet = paper(wishes.paper or shop.paper or usual["paper"])
    job = _CardJob(practice, shop, wishes, size, tuple(shipped().cards.values()))
    cards = [card for worksheet in worksheets for card in _cards(worksheet, job)]
    with paper_faults():
        placed = place_cards(cards, sheet, backs=wishes.backs, corner=size.corner)
        return write_pdf(
            placed,
            title=_title(worksheets, "tying cards"),
            creator=CREATOR,
            files=recipe_files([worksheet.leader.recipe for worksheet in worksheets]),
            duplex=_DUPLEX.get(wishes.backs),
        )


def labels_pdf(
    worksheets: Sequence[Worksheet], practice: Practice, shop: Shop, wishes: LabelWishes
) -> bytes:
    """Return a PDF of wallet labels. Raises `Refused` for what does not fit or cannot be set."""
    with paper_faults():
        stock = label_sheet(wishes.stock or shop.labels or shipped().defaults["labels"])
    faces: list[Face] = []
    for worksheet in worksheets:
        leader = worksheet.leader
        with paper_faults(leader.recipe.name):
            code = code_of(leader.recipe, practice)
            notes = [replace(wishes.note, number=number) for number in wishes.numbers]
            made = [wallet_label(leader, code, stock, note) for note in notes or [wishes.note]]
        faces += made if notes else made * wishes.count
    with paper_faults():
        return write_pdf(
            place_labels(faces, stock, wishes.start, wishes.skip),
            title=_title(worksheets, "wallet labels"),
            creator=CREATOR,
            files=recipe_files([worksheet.leader.recipe for worksheet in worksheets]),
        )


def code_of(recipe: Recipe, practice: Practice) -> Symbol:
    """Return the symbol of a recipe's notation."""
    return symbol(write_notation(recipe, practice.knots, practice.materials))


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


def read_backs(word: str) -> Backs:
    """Return how backs are printed; the command line knows no other words."""
    backs: dict[str, Backs] = {backs: backs for backs in get_args(Backs)}
    return backs[word]


@contextmanager
def paper_faults(where: str = "") -> Iterator[None]:
    """Turn what paper and fonts refuse into what a person reads."""
    try:
        yield
    except NoGlyph as error:
        raise Refused(Fault(where, str(error), "write it with letters and common signs")) from None
    except TooSmall as error:
        raise Refused(
            Fault(where, str(error), "choose a larger size; see `tagend stock`")
        ) from None
    except (UnknownStock, DoesNotFit, NoSuchLabel, TextTooLong, TooWide, FontMissing) as error:
        raise Refused(Fault(where, str(error), "")) from None


def _cards(worksheet: Worksheet, job: _CardJob) -> Iterator[Card]:
    """Yield the cards of one worksheet, as often as they are wanted."""
    leader, wishes = worksheet.leader, job.wishes
    with paper_faults(leader.recipe.name):
        code = code_of(leader.recipe, job.practice)
        text = card_text(leader, code, job.practice, job.shop, wishes.style, wishes.rack)
        size = job.size
        if wishes.style.large and wishes.size is None:
            size = size_that_holds(text, size, job.known)
        cards = cards_of(text, size, job.known)
    for card in cards:
        yield from [card] * wishes.copies


def _title(worksheets: Sequence[Worksheet], what: str) -> str:
    names = [worksheet.leader.recipe.name for worksheet in worksheets]
    return f"{names[0]}: {what}" if len(names) == 1 else f"{len(names)} leaders: {what}"
