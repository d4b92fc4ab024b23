"""A language file with gaps: what it says is printed, the rest in English, and the gaps listed."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.bench import bench_pdf
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.counter import counter_pdf
from tagend.cards.printing.job import job_of
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.cards.words import language
from tagend.cards.words.cautions import cautions
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import ENGLISH, Wording, languages, wording_in
from tests.layouts.drawn import text
from tests.translation import missing, unknown
from tests.tree import ROOT
from tests.written import PRACTICE, SIX

HALF = """
[words]
fly = "mouche"
box_for = { other = "{count} cases" }
colour = "couleur"

[knots.blood]
name = "sang"

[knots.clinch]
seat = "Mouiller."

[cautions.eye]
short = "Pas toucher."
"""


@pytest.fixture
def half(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Wording]:
    """Give a language of few words, which no other test sees."""
    folder = ROOT / "cards" / "words" / "languages"
    shutil.copy(folder / "en.toml", tmp_path)
    (tmp_path / "xx.toml").write_text(HALF)
    monkeypatch.setattr(language, "_FOLDER", tmp_path)
    yield wording_in("xx", None)
    language.language_file.cache_clear()


def test_what_it_says_is_printed_and_the_rest_in_english(half: Wording) -> None:
    assert half.say("fly") == "mouche"
    assert half.say("butt") == ENGLISH.say("butt")
    assert half.steps("pouch") == ENGLISH.steps("pouch")
    assert (half.knot("blood"), half.knot_title("blood")) == ("sang", "sang")
    assert half.knot("davy") == "davy"
    assert half.material("nylon") == "nylon"
    assert half.decimal == "."
    clinch = PRACTICE.knots.find("clinch")
    words = knot_in(half, clinch)
    assert (words.steps, words.seat) == (clinch.steps, "Mouiller.")


def test_a_form_that_it_lacks_is_the_other_one(half: Wording) -> None:
    assert half.say("box_for", count=1) == "1 cases"


def test_cautions_that_it_lacks_are_in_english(half: Wording) -> None:
    here, there = cautions(half, "fly"), cautions(ENGLISH, "fly")
    assert here[0].short == "Pas toucher."
    assert here[0].long == there[0].long
    assert here[1:] == there[1:]


def test_every_page_is_printed_of_it(half: Wording) -> None:
    job = job_of(Shop(language=half.language))
    sheets = [worksheet(SIX, job.practice)]
    wishes = CardWishes(size="A6", shopping=1, deck=True)
    pages = (
        cards_pdf(job, sheets, wishes),
        labels_pdf(job, sheets, LabelWishes(stock="letter-3x10-66.7x25.4")),
        bench_pdf(job, sheets, cut_batch([Order(sheets[0].leader, 1)], None), None),
        counter_pdf(job, sheets, None),
    )
    _, _, bench, counter = (text(page, 0) for page in pages)
    assert "sang" in bench
    assert "to the fly" in bench
    assert "to one scale" in counter


def test_what_it_lacks_is_listed(half: Wording) -> None:
    assert "xx" in languages()
    lacking = missing(half.language)
    for key in ("decimal", "words.butt", "steps.pouch", "knots.blood.steps", "materials.nylon"):
        assert key in lacking
    assert not {"words.fly", "words.box_for", "knots.blood.name"} & set(lacking)
    assert unknown(half.language) == ("words.colour",)
