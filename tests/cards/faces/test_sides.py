"""How many sides a leader takes on which card: a table of samples, and laws for any leader."""

import pytest
from hypothesis import given, settings

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.pocket import pocket_card
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.fonts import OURS, NoGlyph
from tagend.layouts.codes.code import TextTooLong
from tagend.layouts.paper.face import MM, Face
from tagend.layouts.stock.formats import CardSize
from tests.seen import runs, words
from tests.strategies import recipes
from tests.tieable import counts, is_tieable, seeds, tieable
from tests.told import JOB
from tests.tree import SAMPLES
from tests.written import PRACTICE, leader

# In mm, each at least as wide and as high as the one before.
GROWING = ((85, 54), (85.6, 53.98), (91, 55), (105, 74), (127, 76.2), (148, 105), (203.2, 127))

# A card has two sides; an even number leaves none blank.
SIDES = {
    "breakwater-ten": (2, 2, 2, 2, 2),
    "gravel-five": (2, 2, 2, 2, 2),
    "hasty-seven": (2, 2, 2, 2, 2),
    "millrace-three": (2, 2, 2, 2, 2),
    "reedbed-six": (2, 2, 2, 2, 2),
    "sandbar-eight": (2, 2, 2, 2, 2),
}
TABLED = ((85.6, 53.98), (85, 54), (105, 74), (127, 76.2), (148, 105))


def sides(of: Leader, mm: tuple[float, float], wishes: CardWishes) -> tuple[Face, ...] | None:
    """Return the sides on a card; None where it does not hold the leader."""
    size = CardSize("card", mm[0] * MM, mm[1] * MM)
    try:
        return pocket_card(card_text(JOB, Worksheet(of, ()), wishes), size, OURS).faces
    except TooSmall:
        return None


@pytest.mark.parametrize("sample", SIDES)
def test_samples_take_so_many_sides(sample: str) -> None:
    written = read_recipe((SAMPLES / f"{sample}.toml").read_bytes(), PRACTICE)
    of = worksheet(written, PRACTICE).leader
    found = [sides(of, mm, CardWishes()) for mm in TABLED]
    assert [len(faces or ()) for faces in found] == list(SIDES[sample])


def assert_fewer_on_larger(of: Leader, wishes: CardWishes) -> None:
    found = [sides(of, mm, wishes) for mm in GROWING]
    numbers = [99 if faces is None else len(faces) for faces in found]
    assert numbers[0] >= numbers[2]
    assert numbers[1:] == sorted(numbers[1:], reverse=True)


@given(seeds, counts)
@settings(max_examples=12, deadline=None)
def test_a_larger_card_takes_no_more_sides(seed: int, count: int | None) -> None:
    assert_fewer_on_larger(tieable(seed, count), CardWishes())


@given(seeds, counts)
@settings(max_examples=5, deadline=None)
def test_so_it_is_in_large_type(seed: int, count: int | None) -> None:
    assert_fewer_on_larger(tieable(seed, count), CardWishes(large=True))


@given(recipes)
@settings(max_examples=10, deadline=None)
def test_so_it_is_of_anything_that_is_written(written: Recipe) -> None:
    of = leader(written)
    if is_tieable(of):
        try:
            assert_fewer_on_larger(of, CardWishes())
        except (NoGlyph, TextTooLong):
            return


@given(seeds, counts)
@settings(max_examples=12, deadline=None)
def test_no_side_is_blank_or_goes_on_for_one_row(seed: int, count: int | None) -> None:
    of = tieable(seed, count)
    for mm in GROWING:
        faces = sides(of, mm, CardWishes()) or ()
        assert len(faces) % 2 == 0
        assert all(runs(face) for face in faces)
        for face in faces:
            if "continued" in words(face):
                numbers = [run.text for run in runs(face) if run.x < 20 and run.text.isdigit()]
                assert len(numbers) != 1 or len(of.pieces) == 2
