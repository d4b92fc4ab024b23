import pytest

from tagend.cards.base.named_table import plain_name
from tagend.cards.practice.knot_file import load_knots
from tagend.layouts.base.faults import Refused

KNOTS = load_knots()


@pytest.mark.parametrize(
    "written",
    [
        "triple surgeon's",
        "Triple Surgeon’s Knot",
        " TRIPLE  surgeons ",
        "triple-surgeon's knot",
        "triple surgeon",
        "three-pass surgeon's",
    ],
)
def test_a_name_is_found_however_it_is_written(written: str) -> None:
    assert KNOTS.find(written).name == "triple surgeon's"


def test_every_name_finds_its_own_row() -> None:
    for knot in KNOTS:
        for name in (knot.name, *knot.also):
            assert KNOTS.find(name) is knot


def test_every_code_finds_its_own_row() -> None:
    for knot in KNOTS:
        assert KNOTS.by_code(knot.code) is knot


def test_a_misspelt_name_is_met_with_the_near_one() -> None:
    with pytest.raises(Refused) as refusal:
        KNOTS.find("blod")
    assert str(refusal.value) == "no knot is called 'blod'; did you mean blood?"


def test_a_name_that_two_knots_share_is_met_with_them() -> None:
    with pytest.raises(Refused, match=r"did you mean .*surgeon's.* or .*surgeon's.*\?"):
        KNOTS.find("surgeon's knot")


def test_a_name_unlike_any_is_met_with_all() -> None:
    with pytest.raises(Refused, match=r"no knot is called 'zzz'; write one of: blood, doubled"):
        KNOTS.find("zzz")


def test_an_unknown_code_is_met_with_the_codes() -> None:
    with pytest.raises(Refused, match=r"no knot has the code 'QQ'; the codes are: B, DB, S2"):
        KNOTS.by_code("QQ")


def test_a_name_that_is_only_the_word_knot_keeps_it() -> None:
    assert plain_name("Knot") == "knot"
    assert plain_name("NAIL_KNOT") == "nail"
