"""Texts that name every knot tied: the leader is all in them, and the recipe comes back."""

from hypothesis import given, reject
from msgspec.structs import replace

from tagend.cards.code.check_characters import check_characters
from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.leader.naming import all_named
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Refused
from tests.leaders import SANDBAR, SANDBAR_TEXT, read, write
from tests.strategies import recipes
from tests.written import leader, practice, recipe, section

UNNAMED = recipe(
    section("40 in", "0.021 in"),
    section("20 in", "0.013 in", knot="blood"),
    section("20 in", "0.011 in", "fluorocarbon", part="tippet"),
)


def test_a_knot_that_the_rule_chose_is_said_and_left_to_the_rule_again() -> None:
    text = write(UNNAMED, all_named(leader(UNNAMED)))
    assert ":BUTT +PL:40*21*N+S3:20*13-B:20*11*FC+IC/:" in text
    assert read(text) == UNNAMED


def test_a_habit_of_a_person_is_read_where_nobody_knows_it() -> None:
    shop = 'choice."same line" = ["Bench join"]\nknots.loop = "1 1/2 in"\n'
    shop += '[knots."Bench join"]\ncode = "BJ"\nplaces = ["joint"]\nmixed = "yes"\n'
    shop += 'straight = "yes"\ntakes.hold = 1\nsteps = ["Tie it."]\nseat = "Pull."\n'
    own = practice(shop)
    habit = recipe(section("40 in", "0.013 in"), section("20 in", "0.011 in"))
    text = write_notation(habit, own.knots, own.materials, all_named(leader(habit, own)))
    assert ":BUTT +PL+1+1/2:40*13*N+%+BENCH JOIN%:20*11+IC:" in text
    assert read(text) == read_notation(text, own.knots, own.materials) == habit


@given(recipes)
def test_every_knot_said_or_not_the_same_recipe_comes_back(any_one: Recipe) -> None:
    try:
        tied = all_named(leader(any_one))
        write(any_one, tied)
    except Refused:
        reject()
    assert read(write(any_one, tied)) == any_one


def test_a_text_of_the_second_version_is_read() -> None:
    second = (
        "TAG2:SANDBAR EIGHT:W8:BUTT PL*3/4:30*.023*HN*25-B:24*.020*20:20*.017*16:12*.015*12:"
        "12*.013*10-S3:24*.013*FC*14-NS:O2"
    )
    assert read(second) == SANDBAR


def test_a_text_of_the_first_version_is_read_where_no_knot_means_none() -> None:
    first = SANDBAR_TEXT.replace("TAG3", "TAG1")[:-2]
    knots = [only.knot for only in read(first + check_characters(first)).sections]
    assert knots == ["blood", None, None, None, "triple surgeon's", None]
    for bare in (":24*20*20", ":20*17*16", ":12*15*12"):
        first = first.replace(bare, f"{bare}-B")
    assert read(first + check_characters(first)) == SANDBAR


def test_a_knot_below_a_named_one_may_be_left_to_the_rule() -> None:
    sections = *SANDBAR.sections[:2], replace(SANDBAR.sections[2], knot=None), *SANDBAR.sections[3:]
    text = write(replace(SANDBAR, sections=sections))
    assert "25-B:24*20*20:20*17*16+:12*15*12-B:12" in text
    assert read(text).sections == sections
