"""A deck of the samples: few leaves, each knot and caution once, in type of one size."""

from collections.abc import Iterable, Iterator, Sequence
from functools import cache

import pytest

from tagend.cards.faces.pocket import LARGE
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.card_sheets import SheetWishes
from tagend.cards.printing.card_sizes import CardSizes
from tagend.cards.printing.cards import CardWishes, card_text, cards_pdf
from tagend.cards.printing.deck import deck
from tagend.cards.printing.job import Job, job_of
from tagend.cards.printing.knots import knots_cards
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import languages
from tagend.cards.words.lessons import lessons
from tagend.fonts import OURS
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.typeset import prepare
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.stock.stock import card_size, shipped
from tests.layouts.drawn import text
from tests.seen import runs, words
from tests.told import JOB
from tests.tree import SAMPLES
from tests.written import PRACTICE

SHEETS = [
    worksheet(read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE), PRACTICE)
    for name in ("sandbar-eight", "gravel-five", "breakwater-ten")
]
KNOWN = tuple(shipped().cards.values())


@cache
def leaves(size: str, *, large: bool = False) -> tuple[Card, ...]:
    wishes = CardWishes(large=large)
    texts = [card_text(JOB, sheet, wishes) for sheet in SHEETS]
    return tuple(deck(JOB, SHEETS, texts, CardSizes(card_size(size), KNOWN, large, OURS)))


def faces(cards: tuple[Card, ...]) -> Iterator[Face]:
    for card in cards:
        yield from (face for face in (card.front, card.back) if face is not None)


@pytest.mark.parametrize("size", ["ID-1", "index-3x5", "A6"])
def test_three_leaders_take_seven_leaves_or_fewer(size: str) -> None:
    assert len(leaves(size)) <= 7


@pytest.mark.parametrize("size", ["ID-1", "index-3x5"])
def test_each_knot_and_each_caution_stands_there_once(size: str) -> None:
    shown = " ".join(words(face) for face in faces(leaves(size)))
    bold = [run.text for face in faces(leaves(size)) for run in runs(face) if "bold" in run.font]
    for lesson in lessons(*JOB.told(SHEETS)):
        assert sum(prepare(lesson.name[1:]) == text[1:].split(" · ")[0] for text in bold) == 1
    for caution in JOB.cautions(SHEETS):
        assert shown.count(prepare(caution.long[:25])) == 1
        assert prepare(caution.short) not in shown


def test_the_smallest_type_is_the_same_on_all_leaves() -> None:
    smallest = {min(round(run.size, 3) for run in runs(face)) for face in faces(leaves("A6"))}
    assert len(smallest) == 1


def test_large_type_is_large_on_every_leaf() -> None:
    large = leaves("ID-1", large=True)
    assert {(face.width, face.height) for face in faces(large)} == {
        (large[0].front.width, large[0].front.height)
    }
    assert all(run.size >= 14 - 1e-9 for face in faces(large) for run in runs(face))


@pytest.mark.parametrize("large", [False, True])
def test_a_knots_card_teaches_each_knot_once_in_full(large: bool) -> None:
    cards = knots_cards(JOB, SHEETS, card_size("index-5x8"), large=large)
    shown = " ".join(words(face) for face in faces(cards))
    for lesson in lessons(*JOB.told(SHEETS)):
        assert all(shown.count(prepare(step)[:9]) for step in lesson.steps)
    least = min(run.size for face in faces(cards) for run in runs(face))
    assert least >= (LARGE if large else 1.0) * 7.6 - 1e-9


SIX = [
    worksheet(read_recipe(path.read_bytes(), PRACTICE), PRACTICE)
    for path in sorted(SAMPLES.glob("*-*.toml"))
]


def pages(job: Job, sheets: Sequence[Worksheet], size: str) -> list[str]:
    """Return the text of a deck's sides, fronts and backs in turn."""
    wishes = CardWishes(size=size, deck=True, sheets=SheetWishes(press=True))
    pdf = cards_pdf(job, sheets, wishes)
    return [" ".join(text(pdf, page).split()) for page in range(len(pdf.sheets))]


def places(of: Iterable[str], sides: Sequence[str]) -> list[int]:
    """Return on which sides words stand, by the letters that they begin with."""
    return [
        next(n for n, side in enumerate(sides) if prepare(" ".join(words.split())) in side)
        for words in of
    ]


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize(("size", "sheets"), [("ID-1", SHEETS), ("A7", SIX)])
def test_each_leaf_is_numbered_on_its_front_in_the_order_of_the_ring(
    size: str, sheets: Sequence[Worksheet], language: str
) -> None:
    job = job_of(Shop(language=language))
    sides = pages(job, sheets, size)
    count = (len(sides) + 1) // 2
    say = job.wording.say
    for number in range(1, count + 1):
        said = say("one_of", number=number, count=count)
        assert [said in side for side in sides].index(True) == 2 * (number - 1)
        assert sum(said in side for side in sides) == 1
    leaders = [sheet.leader.recipe.name for sheet in sheets]
    (index, *_), (knot, *_) = (
        places([say("leaders")], sides),
        places(
            [
                lesson.name[1:] + (f" · {lesson.laid}" if lesson.laid else "")
                for lesson in lessons(*job.told(sheets))
            ],
            sides,
        ),
    )
    (table,) = places([say("x_sizes")], sides)
    (first, *_) = [n for n, side in enumerate(sides) if side.startswith(leaders[0])]
    assert index == 0 < first < knot <= table


@pytest.mark.parametrize("language", languages())
def test_cautions_stand_together_with_the_cover(language: str) -> None:
    job = job_of(Shop(language=language))
    sides = pages(job, SHEETS, "ID-1")
    on_cover, others = " ".join(sides[:2]), " ".join(sides[2:])
    for caution in job.cautions(SHEETS):
        said = [prepare(words[:20]) for words in (caution.long, caution.short)]
        assert any(words in on_cover for words in said)
        assert not any(words in others for words in said)
