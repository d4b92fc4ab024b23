import pytest
from msgspec.structs import replace

from tagend.cards.faces.block import Block
from tagend.cards.faces.head import continued_head, head
from tagend.cards.leader.leader import Leader
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide
from tests.seen import faults, runs, words
from tests.told import scale, told
from tests.written import leader, practice, recipe, section

SCALE = scale()
WRITTEN = replace(
    recipe(section("7 ft", "0.021 in"), section("22 to 28 in", "4X", "fluorocarbon")),
    name="Sandbar eight",
    use="Crabs over pale sand",
    line_weight=8,
)


def face(block: Block, width: float) -> Face:
    return Face("head", width, block.height, block.items)


def headed(written: Recipe, width: float) -> Face:
    card = face(head(told(leader(written)), SCALE, width), width)
    assert faults(card, 0) == []
    return card


def lines(card: Face) -> list[list[str]]:
    """Return the text of each line, from left to right."""
    rows = sorted({run.y for run in runs(card)})
    return [
        [run.text for run in sorted(runs(card), key=lambda run: run.x) if run.y == y] for y in rows
    ]


def test_a_glance_tells_the_leader_its_use_and_how_it_ends() -> None:
    card = headed(WRITTEN, 300)
    assert lines(card) == [
        ["Sandbar eight", "8-weight · 8 ft 10 in to 9 ft 4 in"],
        ["Crabs over pale sand", "tippet 4X fluorocarbon"],
    ]
    for run in runs(card):
        assert run.x == 0 or run.x + run.width == pytest.approx(300)  # at one end or the other


def test_the_name_is_the_largest_type() -> None:
    name, *_ = runs(headed(WRITTEN, 300))
    assert (name.text, name.size) == ("Sandbar eight", SCALE.name)
    assert all(run.size <= name.size for run in runs(headed(WRITTEN, 300)))


def test_on_a_narrow_card_the_length_stays_and_the_rest_moves_down() -> None:
    card = headed(WRITTEN, 170)
    # The name is smaller, and so stands on a baseline of its own above the length's.
    assert sorted(lines(card)[:2]) == [["8 ft 10 in to 9 ft 4 in"], ["Sandbar eight"]]
    assert "8-weight · tippet 4X fluorocarbon" in words(card)


def test_a_long_name_is_set_smaller_and_then_broken_but_never_cut() -> None:
    long = replace(WRITTEN, name="A leader for the long flats beyond the second bar at low tide")
    card = headed(long, 230)
    for word in long.name.split():
        assert word in words(card).split()
    assert min(run.size for run in runs(card)) >= SCALE.small


def test_a_word_wider_than_the_card_is_refused() -> None:
    with pytest.raises(TooWide, match=r"is .* mm wide, its place only"):
        head(told(leader(replace(WRITTEN, name="W" * 60))), SCALE, 200)


def test_a_leader_without_a_use_or_weight_says_nothing_of_them() -> None:
    plain = replace(WRITTEN, use=None, line_weight=None)
    assert lines(headed(plain, 300)) == [
        ["Sandbar eight", "8 ft 10 in to 9 ft 4 in"],
        ["tippet 4X fluorocarbon"],
    ]


def test_a_dropper_is_told() -> None:
    dropped = recipe(section("7 ft", "0.011 in", dropper="6 in"), section("24 in", "4X"))
    assert "dropper" in words(headed(dropped, 300))


def test_a_table_that_goes_on_says_whose_it_is() -> None:
    written: Leader = leader(WRITTEN)
    card = face(continued_head(told(written), SCALE, 300), 300)
    assert words(card) == "Sandbar eight, continued"


@pytest.mark.parametrize("width", [170, 300])
def test_a_person_s_second_unit_is_told_beside_the_tippet(width: float) -> None:
    # 106 in = 269.24 cm, 112 in = 284.48 cm
    of = leader(WRITTEN, practice('units = "in and cm"'))
    card = face(head(told(of), SCALE, width), width)
    assert faults(card, 0) == []
    assert "8 ft 10 in to 9 ft 4 in" in words(card)
    assert "2.69 m to 2.84 m · tippet 4X fluorocarbon" in words(card)


def test_both_lengths_have_the_decimal_sign_of_the_shop() -> None:
    of = leader(WRITTEN, practice('units = "cm and in"'))
    card = face(head(told(of, Wording("en", ",")), SCALE, 300), 300)
    assert "8-weight · 2,69 m to 2,84 m" in words(card)
    assert "8 ft 10 in to 9 ft 4 in · tippet 4X" in words(card)
