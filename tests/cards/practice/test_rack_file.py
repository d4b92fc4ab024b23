import pytest
from cfractions import Fraction

from tagend.cards.practice.rack_file import SPOOLS_MOST, Rack, read_rack
from tagend.layouts.base.faults import Refused
from tests.tree import SAMPLES
from tests.written import PRACTICE, practice

SPOOL = """\
[[spool]]
label = "Stiff 25"
material = "hard nylon"
diameter = "0.023 in"
left = "40 yd"
"""


def read(text: str) -> Rack:
    return read_rack(text.encode(), PRACTICE)


def refusal(text: str) -> list[str]:
    with pytest.raises(Refused) as caught:
        read(text)
    return str(caught.value).splitlines()


def test_the_sample_is_read() -> None:
    rack = read_rack((SAMPLES / "rack.toml").read_bytes(), PRACTICE)
    labels = [spool.label for spool in rack.spools]
    assert len(labels) == len(set(labels)) >= 8
    stiff = rack.spools[labels.index("Stiff 25")]
    assert (stiff.material, stiff.diameter.plain, stiff.lot) == ("hard nylon", "0.023 in", "K 114")
    assert stiff.left.mm == Fraction("36576")  # 40 yd of 914.4 mm
    assert stiff.strength is not None
    assert stiff.strength.plain == "25 lb"


def test_a_spool_needs_neither_strength_nor_lot() -> None:
    (spool,) = read(SPOOL).spools
    assert (spool.strength, spool.lot) == (None, None)


def test_spools_keep_the_order_of_their_file() -> None:
    rack = read(SPOOL + SPOOL.replace("25", "18") + SPOOL.replace("25", "36"))
    assert [spool.label for spool in rack.spools] == ["Stiff 25", "Stiff 18", "Stiff 36"]


def test_a_spool_holds_far_more_than_a_leader() -> None:
    (spool,) = read(SPOOL.replace("40 yd", "5000 m")).spools
    assert spool.left.mm == 5_000_000


def test_a_material_may_be_written_by_any_of_its_names_or_be_one_s_own() -> None:
    assert read(SPOOL.replace("hard nylon", "Hard-Nylon")).spools[0].material == "hard nylon"
    own = practice('[materials.silk]\ncode = "SK"\nkind = "thread"\n')
    rack = read_rack(SPOOL.replace("hard nylon", "silk").encode(), own)
    assert rack.spools[0].material == "silk"


@pytest.mark.parametrize(
    ("rack", "messages"),
    [
        (
            SPOOL + SPOOL,
            [
                "spool 2, label: two spools are called 'Stiff 25'; "
                "give each spool a label of its own"
            ],
        ),
        (
            SPOOL.replace('left = "40 yd"\n', ""),
            ["spool 1, left: this key is missing; write left = …"],
        ),
        (
            SPOOL.replace("hard nylon", "hard nyln"),
            [
                "spool 1, material: no material is called 'hard nyln'; did you mean hard nylon "
                "or sighter nylon?",
            ],
        ),
        (
            SPOOL.replace('"40 yd"', "40"),
            [
                "spool 1, left: 40 has no unit; "
                'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
            ],
        ),
        (
            SPOOL.replace('"0.023 in"', '"0.023"'),
            [
                "spool 1, diameter: '0.023' has no unit; write a diameter with its unit, "
                'such as "0.023 in", "23 thou", "0.58 mm" or "4X"'
            ],
        ),
        (
            SPOOL.replace("40 yd", "11 km"),
            [
                "spool 1, left: '11 km': 'km' is not a unit for this; "
                "use one of: in, ft, yd, mm, cm, m"
            ],
        ),
        (
            SPOOL.replace("40 yd", "11000 m"),
            ["spool 1, left: '11000 m' is no likely length; write a length from 0.001 to 10000 m"],
        ),
        (
            SPOOL.replace("label", "lable"),
            [
                "spool 1, label: this key is missing; write label = …",
                "spool 1: no key is called 'lable'; did you mean label?",
            ],
        ),
        (
            SPOOL
            + SPOOL.replace("Stiff 25", "Stiff 18").replace("0.023 in", "2.3")
            + SPOOL.replace("Stiff 25", "").replace("40 yd", "-40 yd"),
            [
                "spool 2, diameter: '2.3' has no unit; write a diameter with its unit, "
                'such as "0.023 in", "23 thou", "0.58 mm" or "4X"',
                "spool 3, label: this text is empty; write 1 to 40 characters",
                "spool 3, left: '-40 yd' is negative; "
                'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"',
            ],
        ),
        ("", ["this file is empty; start from one that `tagend samples` writes"]),
        (
            "spool = 3\n",
            ["spool: this is not a list of tables; write each under a heading in double brackets"],
        ),
        (
            'name = "Sandbar"\n',
            [
                "spool: this key is missing; write a heading [[spool]]",
                "no key is called 'name'; write 'spool'",
            ],
        ),
    ],
)
def test_a_broken_rack_is_refused(rack: str, messages: list[str]) -> None:
    assert refusal(rack) == messages


def test_a_rack_of_too_many_spools_is_refused() -> None:
    spools = "".join(SPOOL.replace("Stiff 25", f"S{k}") for k in range(SPOOLS_MOST + 1))
    assert refusal(spools) == ["spool: there are 501; write at most 500"]
