"""Everything that is printed for a shop with a decimal comma: no number of it has a point."""

import re
from io import BytesIO

import pypdf
import pytest

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.printing.bench import bench_pdf
from tagend.cards.printing.card_sheets import SheetWishes
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.counter import counter_pdf
from tagend.cards.printing.job import job_of
from tagend.cards.printing.labels import LabelNote, LabelWishes, labels_pdf
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import languages
from tests.layouts.drawn import text
from tests.tree import SAMPLES

POINT = re.compile(r"\d\.\d")
COMMA = re.compile(r"\d,\d")
LISTED = re.compile(r"\d,\s+\d")  # one number, or two?

RECIPES = tuple(
    file.read_bytes()
    for file in sorted(SAMPLES.iterdir())
    if file.name.endswith(".toml") and b"[[section]]" in file.read_bytes()
)
RACK = (SAMPLES / "rack.toml").read_bytes()
EVERYTHING = CardWishes(
    size="A6",
    shopping=7,
    ruler=True,
    deck=True,
    sheets=SheetWishes(pouch="dry", hole=True),
)

SHOPS = {
    f"{language}, {units}": Shop(units=units, language=language, decimal=",")
    for language in languages()
    for units in ("cm and in", "in and cm")
}
every_shop = pytest.mark.parametrize("shop", SHOPS.values(), ids=SHOPS)


def sheets(shop: Shop) -> list[Worksheet]:
    practice = practice_of(shop)
    return [worksheet(read_recipe(recipe, practice), practice) for recipe in RECIPES]


def check(pdf: bytes) -> None:
    pages = len(pypdf.PdfReader(BytesIO(pdf)).pages)
    shown = "\n".join(text(pdf, page) for page in range(pages))
    assert COMMA.search(shown)
    assert POINT.findall(shown) == []
    assert LISTED.findall(shown) == []


@every_shop
def test_cards(shop: Shop) -> None:
    check(cards_pdf(job_of(shop), sheets(shop), EVERYTHING))


@every_shop
@pytest.mark.parametrize("stock", ["letter-3x5-66.7x50.8", "letter-2x3-101.6x84.7"])
def test_labels(shop: Shop, stock: str) -> None:
    note = LabelNote(number="3 / 12", first_out="fly", test_box=True)
    wishes = LabelWishes(stock=stock, notes=((note,),) * len(RECIPES))
    check(labels_pdf(job_of(shop), sheets(shop), wishes))


@every_shop
@pytest.mark.parametrize("rack", [None, RACK], ids=["without a rack", "from a rack"])
def test_bench_sheets(shop: Shop, rack: bytes | None) -> None:
    practice = practice_of(shop)
    worksheets = sheets(shop)
    orders = [Order(sheet.leader, 12) for sheet in worksheets]
    own = read_rack(rack, practice) if rack else None
    check(bench_pdf(job_of(shop), worksheets, cut_batch(orders, own), None))


@every_shop
def test_counter_sheets(shop: Shop) -> None:
    check(counter_pdf(job_of(shop), sheets(shop), None))
