"""Every face of every sample, in every size, type size and language: whole, apart and readable."""

from functools import cache
from importlib.resources import files

import pytest

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.counter import counter_sheet
from tagend.cards.faces.deck import care, cover, reference
from tagend.cards.faces.label import LabelNote, wallet_label
from tagend.cards.faces.page import MARGIN
from tagend.cards.faces.panel import INSET
from tagend.cards.faces.pocket import pocket_card
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.leader import Leader, work_out
from tagend.cards.practice.rack_file import read_rack
from tagend.cards.practice.shop_file import Shop, practice_of, wording_of
from tagend.cards.printing.card_making import CardStyle, card_text
from tagend.cards.printing.pages import code_of
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.cautions import cautions_for
from tagend.cards.words.language import languages
from tagend.layouts.logo.logo_file import read_logo
from tagend.layouts.paper.face import MM, Face, Symbol
from tagend.layouts.stock.formats import CardSize, LabelSheet
from tagend.layouts.stock.stock import card_size, paper, shipped
from tests.seen import faults

SAMPLES = {
    file.name.removesuffix(".toml"): file.read_bytes()
    for file in files("samples").iterdir()
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
LOGO = read_logo(files("samples").joinpath("wrack-line.svg").read_bytes())
STYLES = {
    "normal": CardStyle(logo=LOGO),
    "large": CardStyle(large=True, shopping=10, logo=LOGO),
    "figures": CardStyle(figures=True),
}
NAMES = ("The Wrack Line Bench", "Leaders tied by hand, one knot at a time")
SHOPS = {
    "en": Shop(*NAMES),
    "en, in and cm": Shop(*NAMES, units="in and cm"),
    **{code: Shop(*NAMES, units="cm", language=code) for code in languages() if code != "en"},
}
USUAL_LABELS = "letter-3x10-66.7x25.4"

every_sample = pytest.mark.parametrize("sample", sorted(SAMPLES))
every_shop = pytest.mark.parametrize("shop", SHOPS.values(), ids=SHOPS)


@cache
def worked(sample: str, language: str | None, units: str | None) -> tuple[Leader, Symbol]:
    practice = practice_of(Shop(language=language, units=units))
    leader = work_out(read_recipe(SAMPLES[sample], practice), practice)
    return leader, code_of(leader.recipe, practice)


def leader_of(sample: str, shop: Shop) -> tuple[Leader, Symbol]:
    return worked(sample, shop.language, shop.units)


def ways(size: CardSize) -> tuple[CardSize, CardSize]:
    return size, CardSize(size.name, size.height, size.width, size.corner)


@every_sample
@every_shop
@pytest.mark.parametrize("style", STYLES)
def test_every_card(sample: str, shop: Shop, style: str) -> None:
    leader, code = leader_of(sample, shop)
    wording = wording_of(shop)
    text = card_text(leader, code, practice_of(shop), shop, wording, STYLES[style], None)
    held = set()
    for size in CARDS:
        for way in ways(size):
            try:
                card = pocket_card(text.front, text.backing, way, text.least, ruled=text.ruled)
            except TooSmall:
                continue
            held.add(size.name)
            for side in card:
                assert faults(side, INSET) == [], (way, side.name)
    assert held >= {"A6", "index-5x8"}
    if style != "large" and not leader.second_unit:
        assert "ID-1" in held


@every_sample
@every_shop
def test_every_label(sample: str, shop: Shop) -> None:
    leader, code = leader_of(sample, shop)
    full = LabelNote(number="12 / 12", first_out="butt", test_box=True)
    for stock in LABELS:
        for note in (LabelNote(), full):
            label = _label(leader, code, stock, shop, note)
            if label is not None:
                assert faults(label, stock.inset) == [], stock.name
            else:
                assert stock.name != USUAL_LABELS


def _label(
    leader: Leader, code: Symbol, stock: LabelSheet, shop: Shop, note: LabelNote
) -> Face | None:
    try:
        return wallet_label(leader, code, stock, wording_of(shop), note)
    except TooSmall:
        return None


@every_shop
def test_every_page(shop: Shop) -> None:
    practice, wording = practice_of(shop), wording_of(shop)
    leaders = [leader_of(sample, shop)[0] for sample in SAMPLES]
    cautions = cautions_for(leaders, practice.materials, wording)
    rack = read_rack(files("samples").joinpath("rack.toml").read_bytes(), practice)
    for name in ("Letter", "A4", "A5"):
        page = paper(name)
        pages = [*counter_sheet(leaders, practice.materials, wording, "Leaders", page, LOGO)]
        for orders in ([Order(leader, 12) for leader in leaders], [Order(leaders[0], 300)]):
            for own in (rack, None):
                pages += bench_sheet(cut_batch(orders, own), cautions, wording, page)
        for face in pages:
            assert faults(face, MARGIN - 4 * MM) == [], (name, face.name)


@every_shop
def test_every_card_of_a_deck(shop: Shop) -> None:
    practice, wording = practice_of(shop), wording_of(shop)
    leaders = [leader_of(sample, shop)[0] for sample in SAMPLES]
    for size in map(card_size, ("ID-1", "index-3x5", "A6", "A7")):
        for way in ways(size):
            faces = [
                *cover(leaders, shop.name, shop.line, wording, way, LOGO),
                *reference(reference_tables(practice, wording), way),
                *care(cautions_for(leaders, practice.materials, wording), wording, way),
            ]
            for face in faces:
                assert faults(face, INSET) == [], (way, face.name)
