"""The outline of a thing says what it is, in the words and the number style of the shop."""

import pytest

from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.job import job_of
from tagend.cards.printing.stock import stock_pdf
from tagend.cards.words.language import languages, wording_in
from tests.layouts.drawn import text


def read(name: str, shop: Shop) -> str:
    """Return the text of the page, its lines joined and its thin spaces left out."""
    return " ".join(text(stock_pdf(job_of(shop), name)).replace("\u200a", "").split())


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("A4", "paper, 210 × 297 mm · 8.268 × 11.693 in"),
        ("index-3x5", "card, 127 × 76.2 mm · 5 × 3 in"),
        ("ID-1", "card, 85.6 × 53.98 mm · 3.37 × 2 1/8 in"),
        ("roll-51x25", "label on a roll, 50.8 × 25.4 mm · 2 × 1 in"),
        (
            "letter-3x4-50.8round",
            "3 × 4 labels, 50.8 × 50.8 mm · 2 × 2 in on Letter, 215.9 × 279.4 mm · 8 1/2 × 11 in",
        ),
    ],
)
def test_it_is_told_what_a_thing_is(name: str, told: str) -> None:
    assert f"{name} {told} Lay the real sheet on this one" in read(name, Shop())


def test_all_measures_have_the_shops_decimal_sign_and_names_stay() -> None:
    measured = read("letter-3x10-66.7x25.4", Shop(decimal=","))
    assert "letter-3x10-66.7x25.4 3 × 10 labels, 66,67 × 25,4 mm · 2 5/8 × 1 in" in measured


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("name", ["A4", "ID-1", "letter-3x10-66.7x25.4"])
def test_a_picture_speaks_every_language_and_keeps_its_rule(name: str, language: str) -> None:
    wording = wording_in(language, None)
    measured = read(name, Shop(language=language))
    for key in ("hold_to_light", "true_size_mm", "true_size_inches"):
        assert wording.say(key) in measured
