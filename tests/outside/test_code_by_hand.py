"""From a code's text alone the same leader is tied: what a hand reads is what was worked out."""

import pytest

from tagend.cards.faces.label import wallet_label
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.naming import all_named
from tagend.cards.printing.codes import code_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.fonts import OURS
from tagend.layouts.stock.stock import label_sheet
from tests.leaders import read, write
from tests.outside.code_by_hand import Tied, codes_of_ours, key_on_label, read_by_hand
from tests.plausible import plausible_recipes
from tests.seen import codes, words
from tests.told import told
from tests.tree import SAMPLES
from tests.written import PRACTICE, leader, recipe, section

NAMES = "breakwater-ten gravel-five hasty-seven millrace-three reedbed-six sandbar-eight"
SHIPPED = [read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE) for name in NAMES.split()]
ODD = [
    recipe(section("9 ft", "0.023 in", tapers_to="4X", bought=True), section("20 in", "5X")),
    recipe(section("1.5 m", "0.40 mm", strength="7 kg"), section("45 to 60 cm", "0.2 mm")),
    recipe(section("30 1/2 in", "20 thou"), section("12 in", "0.018 in", "wire", "27 lb")),
    recipe(section("46 in", "0.023 in", "hard nylon"), section("30 in", "8 thou"), loop="1 in"),
    recipe(
        section("7 ft 6 in", "1X", knot="uni to uni"), section("20 in", "0.008 in"), butt="none"
    ),
]


# What people tie, one of each kind, for hands that have nothing but a label with its key.
BITE = recipe(
    section("5 ft", "0.028 in", "hard nylon", "36 lb"),
    section("24 in", "0.020 in", "fluorocarbon", "30 lb", knot="albright", part="tippet"),
    section("8 1/2 in", "0.018 in", "stranded wire", "30 lb", part="bite guard"),
    butt="surgeon's loop",
    loop="1 in",
    fly="figure-eight",
)
FURLED = recipe(
    section("5 ft", "0.040 in", "furled thread", bought=True),
    section("20 in", "4X"),
    section("22 in", "5X"),
)
DROPPERS = recipe(
    section("36 in", "0.017 in"),
    section("20 in", "0.010 in", strength="8 lb", knot="triple surgeon's", dropper="6 in"),
    section("20 in", "0.009 in", strength="7 lb", dropper="5 1/2 in"),
    section("20 in", "0.008 in", "fluorocarbon", "6 lb"),
)
LOOPED = recipe(
    section("40 in", "0.021 in", knot="loop to loop"),
    section("20 in", "0.015 in", knot="loop to loop"),
    section("20 in", "3X", "fluorocarbon"),
    butt="perfection loop",
)
METRIC = recipe(
    section("1.2 m", "0.50 mm", "hard nylon", "12 kg"),
    section("60 cm", "0.40 mm", strength="9 kg"),
    section("45 to 60 cm", "0.25 mm", "fluorocarbon", "4.2 kg"),
)
X_SIZES = recipe(
    section("30 in", "0X"),
    section("20 in", "1X"),
    section("15 in", "3X"),
    section("24 in", "5X", "fluorocarbon", "4.5 lb"),
)
RINGED = recipe(
    section("6 ft", "0.021 in"),
    section("18 in", "0.012 in", "sighter nylon", knot="ring joint", part="sighter"),
    section("18 in", "5X", "fluorocarbon"),
    total="9 ft",
)
TWELVE = recipe(
    *(
        section(
            f"{24 - n} in",
            f"0.0{25 - n} in",
            "hard nylon" if n < 6 else "nylon",
            f"{30 - n} lb",
            knot=None if n == 11 else "double surgeon's" if n == 7 else "blood",
        )
        for n in range(12)
    )
)
BOUGHT = recipe(
    section("9 ft", "0.024 in", tapers_to="4X", bought=True),
    section("24 in", "5X", strength="5 lb"),
    butt="none",
    fly="none",
)
AS_CUT = recipe(
    section("3/4 yd", "0.0235 in", "hard nylon", "25 lb"),
    section("26 1/2 in", "20 thou", "hard nylon"),
    section("2 ft", "0.33 mm", "copolymer"),
    section("18 in", "0.01 in", "fluorocarbon", "8 lb"),
    lengths="cut",
)
TEN = [BITE, FURLED, DROPPERS, LOOPED, METRIC, X_SIZES, RINGED, TWELVE, BOUGHT, AS_CUT]
ROOMY = label_sheet("letter-1x2-215.9x139.7")


@pytest.mark.parametrize("of", [*SHIPPED, *ODD, *TEN, *plausible_recipes(100, seed=3)])
def test_hands_read_the_leader_that_was_worked_out(of: Recipe) -> None:
    made = leader(of)
    text = write(of, all_named(made))
    said = read_by_hand(text, codes_of_ours())
    assert_same(said, made)
    assert read(text).sections == of.sections


@pytest.mark.parametrize("of", [*SHIPPED, *TEN])
def test_hands_that_have_the_label_alone_tie_the_same_leader(of: Recipe) -> None:
    made = leader(of)
    label = wallet_label(told(made), code_of(made, PRACTICE), ROOMY, OURS)
    (code,) = codes(label)
    on_paper = words(label)
    assert_same(read_by_hand(code.symbol.text, key_on_label(on_paper)), made)
    finished = " · ".join(told(made).span_number(piece.finished) for piece in made.pieces)
    assert f"finished {finished}" in on_paper.replace("\u00a0", " ")
    assert ("23 is 0.023 in" in on_paper) == any(s.diameter.unit == "in" for s in of.sections)
    assert ("CUT" in on_paper) == (":CUT:" in code.symbol.text)


def assert_same(said: Tied, made: Leader) -> None:
    """Hold what hands read against the leader that was worked out."""
    of = made.recipe
    assert said.lengths_mm == [(s.length.low.mm, s.length.high.mm) for s in of.sections]
    assert said.diameters_mm == [piece.section.diameter.mm for piece in made.pieces]
    assert said.materials == [piece.material.name for piece in made.pieces]
    assert said.knots[:-1] == [joint.knot.name for joint in made.joints]
    for end, name in ((made.butt, said.butt), (made.fly, said.knots[-1])):
        assert name == (end.knot.name if end.knot else None)
    assert said.loop_mm == (of.butt.loop.mm if of.butt.loop else None)
    for each, strength, marks in zip(of.sections, said.strengths, said.marks, strict=True):
        assert bool(each.strength) == bool(strength)
        assert bool(each.dropper) == ("/DROP" in marks)
        assert each.bought == ("/BOUGHT" in marks)
        assert (each.part == "bite guard") == ("/GUARD" in marks)
