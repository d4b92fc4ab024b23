import pytest

from tagend.cards.leader.naming import all_named
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.code_legend import legend
from tagend.cards.words.language import ENGLISH
from tests.leaders import PLAIN, SANDBAR, write
from tests.written import leader, recipe, section


def told(written: Recipe) -> str:
    tied = all_named(leader(written))
    return " ".join(legend(tied, write(written, tied), ENGLISH)).replace("\u00a0", " ")


def test_a_legend_says_what_the_text_is_and_how_a_section_is_written() -> None:
    first, second, *_ = legend(SANDBAR, write(SANDBAR), ENGLISH)
    assert first == "The code is this recipe as text, butt to fly:"
    assert second == "length*diameter*material*strength\u2011knot"


def test_every_code_of_the_text_is_explained() -> None:
    text = told(SANDBAR)
    for code in ("HN hard nylon", "FC fluorocarbon", "B blood", "S3 triple surgeon's",
                 "NS non-slip loop", "PL perfection loop"):  # fmt: skip
        assert code in text


def test_units_are_said_once() -> None:
    assert "Units: in and lb." in told(SANDBAR)
    metric = recipe(section("80 cm", "0.43 mm"), section("45 cm", "0.38 mm", strength="5 kg"))
    assert "Units: cm, mm and kg." in told(metric)


@pytest.mark.parametrize(
    ("written", "says", "is_needed"),
    [
        (SANDBAR, "No material or knot: as above.", True),
        (PLAIN, "No material or knot: as above.", False),
        (SANDBAR, "+ chosen for it", False),
        (recipe(section("30 in", "1X"), section("20 in", "4X")), "+ chosen for it", True),
        (recipe(section("30 in", "1X"), section("20 in", "4X")), "B blood", True),
        (PLAIN, "22-28: from 22 to 28.", False),
        (recipe(section("22 to 28 in", "4X")), "22-28: from 22 to 28.", True),
        (PLAIN, "1+1/2: one and a half.", False),
        (recipe(section("30 1/2 in", "4X")), "1+1/2: one and a half.", True),
        (Recipe("Éclair", PLAIN.sections), "In words,", True),
    ],
)
def test_only_what_the_text_has_use_for_is_said(
    written: Recipe, says: str, is_needed: bool
) -> None:
    assert (says in told(written)) == is_needed
