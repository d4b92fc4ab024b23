"""Every face of every sample, in every size, type size and language: whole, apart and readable."""

from functools import cache

import pytest

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.faces.block import Scale, TooSmall
from tagend.cards.faces.counter import Offer, counter_sheet
from tagend.cards.faces.deck import Leaf, behind, cover
from tagend.cards.faces.label import wallet_label
from tagend.cards.faces.label_lines import LabelNote
from tagend.cards.faces.page import MARGIN, NARROW_MARGIN
from tagend.cards.faces.panel import INSET, Panel
from tagend.cards.faces.pocket import pocket_card
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.printing.codes import code_of
from tagend.cards.printing.job import Job, job_of
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import languages
from tagend.cards.words.leader_words import Told
from tagend.cards.words.lessons import lessons
from tagend.fonts import OURS
from tagend.layouts.logo.logo_file import read_logo
from tagend.layouts.paper.face import MM, Face, Symbol
from tagend.layouts.stock.formats import CardSize, LabelSheet
from tagend.layouts.stock.stock import card_size, paper, shipped
from tests.seen import faults
from tests.tree import SAMPLES

RECIPES = {
    file.name.removesuffix(".toml"): file.read_bytes()
    for file in sorted(SAMPLES.iterdir())
    if file.name.endswith(".toml") and "-" in file.name
}
CARDS = tuple(  # every shape there is; several are the same to a millimetre or two
    card_size(name)
    for name in (
        *("ID-1", "index-3x5", "index-4x6", "index-5x8"),
        *("trading-card", "pocket-tall", "A6", "A7"),
    )
)
LABELS = tuple(shipped().labels.values())
LOGO = read_logo((SAMPLES / "wrack-line.png").read_bytes())
STYLES = {
    "normal": CardWishes(),
    "large": CardWishes(large=True, shopping=10),
    "brief": CardWishes(taught=False),
}
NAMES = ("The Wrack Line Bench", "Leaders tied by hand, one knot at a time")
SHOPS = {
    "en": Shop(*NAMES),
    "en, in and cm": Shop(*NAMES, units="in and cm"),
    **{code: Shop(*NAMES, units="cm", language=code) for code in languages() if code != "en"},
}
USUAL_LABELS = "letter-3x10-66.7x25.4"

every_sample = pytest.mark.parametrize("sample", sorted(RECIPES))
every_shop = pytest.mark.parametrize("shop", SHOPS.values(), ids=SHOPS)


@cache
def job_for(language: str | None, units: str | None) -> Job:
    return job_of(Shop(*NAMES, units=units, language=language), LOGO)


@cache
def worked(sample: str, job_key: tuple[str | None, str | None]) -> Worksheet:
    practice = job_for(*job_key).practice
    return worksheet(read_recipe(RECIPES[sample], practice), practice)


def of_shop(shop: Shop) -> tuple[Job, list[Worksheet]]:
    """Return a shop's job and the worksheets of all samples, in their order."""
    key = (shop.language, shop.units)
    return job_for(*key), [worked(sample, key) for sample in RECIPES]


def of_sample(sample: str, shop: Shop) -> tuple[Job, Worksheet]:
    key = (shop.language, shop.units)
    return job_for(*key), worked(sample, key)


def ways(size: CardSize) -> tuple[CardSize, CardSize]:
    return size, CardSize(size.name, size.height, size.width, size.corner)


@every_sample
@every_shop
@pytest.mark.parametrize("style", STYLES)
def test_every_card(sample: str, shop: Shop, style: str) -> None:
    job, sheet = of_sample(sample, shop)
    text = card_text(job, sheet, STYLES[style])
    held = set()
    for size in CARDS:
        for way in ways(size):
            try:
                card = pocket_card(text, way, job.fonts).faces
            except TooSmall:
                continue
            held.add(size.name)
            for side in card:
                assert faults(side, INSET) == [], (way, side.name)
    assert "index-5x8" in held
    if style != "large":
        assert held >= {"ID-1", "A6"}


@every_sample
@every_shop
def test_every_label(sample: str, shop: Shop) -> None:
    job, sheet = of_sample(sample, shop)
    (told,), code = job.told([sheet]), code_of(sheet.leader, job.practice)
    full = LabelNote(number="12 / 12", first_out="butt", test_box=True)
    for stock in LABELS:
        for note in (LabelNote(), full):
            label = _label(told, code, stock, note)
            if label is not None:
                assert faults(label, stock.inset) == [], stock.name
            else:
                assert stock.name != USUAL_LABELS or note.test_box


def _label(told: Told, code: Symbol, stock: LabelSheet, note: LabelNote) -> Face | None:
    try:
        return wallet_label(told, code, stock, OURS, note)
    except TooSmall:
        return None


@every_shop
def test_every_page(shop: Shop) -> None:
    job, worksheets = of_shop(shop)
    told, cautions = job.told(worksheets), job.cautions(worksheets)
    rack = read_rack((SAMPLES / "rack.toml").read_bytes(), job.practice)
    for name in ("Letter", "A4", "A5"):
        page = paper(name)
        codes = [code_of(sheet.leader, job.practice) for sheet in worksheets]
        offered = [list(map(Offer, told, codes)), list(map(Offer, told))]
        pages = [
            face
            for offers in offered
            for face in counter_sheet(offers, job.imprint, page, job.fonts)
        ]
        to_work_from: list[Face] = []
        for some, count in ((told, 12), (told[:1], 300)):
            for own in (rack, None):
                whole = cut_batch([Order(each.leader, count) for each in some], own)
                to_work_from += bench_sheet(some, whole, cautions, page, job.fonts)
        for face in pages:
            assert faults(face, MARGIN - 4 * MM) == [], (name, face.name)
        for face in to_work_from:
            assert faults(face, NARROW_MARGIN) == [], (name, face.name)


@every_shop
def test_every_card_of_a_deck(shop: Shop) -> None:
    job, worksheets = of_shop(shop)
    tables = reference_tables(job.practice, job.wording)
    for size in map(card_size, ("ID-1", "index-3x5", "A6", "A7")):
        for way in ways(size):
            panel = Panel(way, Scale(1.0, job.fonts))
            leaf, told = Leaf(panel, panel), job.told(worksheets)
            try:
                first = cover(told, job.cautions(worksheets), job.imprint, leaf)
                faces = [*first, *behind(lessons(*told), tables, leaf)]
            except TooSmall:
                assert way.height > way.width
                continue
            for face in faces:
                assert faults(face, INSET) == [], (way, face.name)
