import pytest
from cfractions import Fraction

from tagend.cards.practice.practice import OwnLap
from tagend.cards.practice.shop_file import common_practice, practice_of, read_shop
from tagend.layouts.base.faults import Refused
from tests.tree import SAMPLES
from tests.written import practice

COMMON = common_practice()


def refusal(shop: str) -> list[str]:
    with pytest.raises(Refused) as caught:
        read_shop(shop.encode())
    return str(caught.value).splitlines()


def test_the_sample_is_read() -> None:
    shop = read_shop((SAMPLES / "shop.toml").read_bytes())
    assert (shop.paper, shop.card, shop.labels) == ("Letter", "ID-1", "letter-3x10-66.7x25.4")
    own = practice_of(read_shop((SAMPLES / "hands.toml").read_bytes()))
    blood = own.knots.find("blood")
    assert own.own_laps[blood.name].above_mm == Fraction("101.6")  # half of 8 in
    assert own.rules["step"].limits[0] == Fraction("1.3")


def test_common_practice_rounds_up_to_quarter_inches_and_half_centimetres() -> None:
    assert COMMON.tape_mm("in") == Fraction("6.35")
    assert COMMON.tape_mm("cm") == COMMON.tape_mm("mm") == 5
    assert COMMON.unit is None


def test_a_tape_replaces_the_one_of_its_kind() -> None:
    inch = practice('tape = "1/16 in"')
    assert (inch.tape_mm("in"), inch.tape_mm("cm")) == (Fraction("1.5875"), Fraction(5))
    metric = practice('tape = "1 cm"')
    assert (metric.tape_mm("in"), metric.tape_mm("mm")) == (Fraction("6.35"), Fraction(10))


@pytest.mark.parametrize(
    ("units", "first", "second"),
    [
        ("in", "in", None),
        ("cm", "cm", None),
        ("in and cm", "in", "cm"),
        ("in and mm", "in", "mm"),
        ("cm and in", "cm", "in"),
        ("mm and in", "mm", "in"),
    ],
)
def test_lengths_are_shown_in_one_unit_or_in_two(
    units: str, first: str, second: str | None
) -> None:
    own = practice(f'units = "{units}"')
    assert (own.unit, own.second_unit) == (first, second)


def test_without_units_a_recipe_s_own_are_shown() -> None:
    assert (COMMON.unit, COMMON.second_unit) == (None, None)


@pytest.mark.parametrize("units", ["in and in", "cm and mm", "in and cm and mm", "ft and cm"])
def test_two_units_are_one_of_each_system(units: str) -> None:
    (message,) = refusal(f'units = "{units}"')
    assert message.startswith(f"units: '{units}' is not known; write one of: 'in', 'cm'")


def test_an_own_lap_may_differ_by_side() -> None:
    own = practice('[lap]\n"Blood knot" = { above = "4 in", below = "3 in" }\nclinch = "2 in"\n')
    assert own.own_laps == {
        "blood": OwnLap(Fraction("101.6"), Fraction("76.2")),
        "clinch": OwnLap(Fraction("50.8"), Fraction("50.8")),
    }


def test_an_own_knot_and_an_own_material_are_known() -> None:
    own = practice(
        "[knots.blood]\nlargest_ratio = 1.3\n[materials.silk]\ncode = 'SK'\nkind = 'thread'\n"
    )
    assert own.knots.find("blood").largest_ratio == Fraction("1.3")
    assert own.materials.find("silk").kind == "thread"


def test_an_own_order_stands_before_ours() -> None:
    own = practice('[choice]\n"same line" = ["uni to uni", "blood knot"]\n')
    assert [knot.name for knot in own.choice["same line"].own] == ["uni to uni", "blood"]
    assert own.choice["same line"].order[:2] == own.choice["same line"].own
    assert own.choice["same line"].usual == COMMON.choice["same line"].usual
    assert own.choice["fly"] == COMMON.choice["fly"]


@pytest.mark.parametrize(
    ("shop", "messages"),
    [
        (
            'nmae = "Bench"\nunits = "inches"\ntape = 5\n',
            [
                "units: 'inches' is not known; write one of: 'in', 'cm', 'mm', "
                "'in and cm', 'in and mm', 'cm and in' or 'mm and in'",
                "tape: 5 has no unit; "
                'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"',
                "no key is called 'nmae'; did you mean name?",
            ],
        ),
        (
            'decimal = "\'"\n',
            ["""decimal: "'" is not known; write one of: '.' or ','"""],
        ),
        (
            'lap = "4 in"\n',
            ["lap: this is not a table; write its keys under a heading in brackets"],
        ),
        (
            '[lap]\nblodd = "4 in"\n',
            ["lap, blodd: no knot is called 'blodd'; did you mean blood?"],
        ),
        (
            "[lap]\nblood = 4\n",
            [
                "lap, blood: 4 has no unit; "
                'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
            ],
        ),
        (
            '[lap.blood]\nthick = "4 in"\n',
            [
                "lap, blood: a table here has other keys; "
                'write the lap, such as "6 in", or above and below of a joint'
            ],
        ),
        (
            '[lap]\nalbright = "8 in"\n',
            [
                "lap, albright: this knot has no lap but a fold on each side; "
                'write { above = "4 in", below = "6 in" }'
            ],
        ),
        (
            '[choice]\nmiddle = ["blood"]\n',
            [
                "choice: no meeting is called 'middle'; write one of: wire, bought butt, "
                "nylon to fluorocarbon, big step, same line, butt, fly"
            ],
        ),
        (
            "[choice]\nwire = 5\n",
            ["choice, wire: this is not a list of 1 to 30 knots; write them in brackets: [ , ]"],
        ),
        (
            '[rules.step]\nlimit = "4 mm"\n[rules.rise]\nseverity = "none"\n',
            [
                "rules, step, limit: '4 mm' is of another kind; write a plain number, such as 1.45",
                "rules, rise, severity: 'none' is not known; "
                "write one of: 'error', 'warning', 'note' or 'off'",
            ],
        ),
        (
            '[knots.blood]\nthickest = "23"\n',
            [
                "knots, blood, thickest: '23' has no unit; write a diameter with its unit, "
                'such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
            ],
        ),
    ],
)
def test_a_broken_shop_file_is_refused(shop: str, messages: list[str]) -> None:
    assert refusal(shop) == messages


def test_a_knot_of_another_end_and_a_misspelt_one_are_told_at_once() -> None:
    elsewhere, misspelt = refusal('[choice]\nfly = ["clinch", "blood", "clynch"]\n')
    assert elsewhere.startswith("choice, fly, knot 2: 'blood' is for the joint")
    assert "clinch" in elsewhere
    assert misspelt.startswith("choice, fly, knot 3: no knot is called 'clynch'; did you mean")
