import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.toml_edit import with_value
from tagend.cards.base.toml_file import read_toml
from tagend.layouts.base.faults import Refused

SHOP = """\
# What belongs to the person.
name = "The Wrack Line Bench"   # on each card

[lap]
# Our own hands.
blood = "4 in"                  # tied wet
clinch = { above = "3 in", below = "2 in" }

# The audit.
[rules.step]
limit = "0.003 in"
"""


def edited(text: str, key: str, value: str = "5 in") -> str:
    return with_value(text.encode(), "lap", key, value).decode()


def changed_lines(before: str, after: str) -> tuple[list[str], list[str]]:
    """Return the lines that went and the lines that came."""
    old, new = before.splitlines(), after.splitlines()
    return [line for line in old if line not in new], [line for line in new if line not in old]


def test_a_value_is_replaced_and_nothing_else() -> None:
    after = edited(SHOP, "blood")
    assert changed_lines(SHOP, after) == (
        ['blood = "4 in"                  # tied wet'],
        ['blood = "5 in"                  # tied wet'],
    )
    assert [line.split(" =")[0] for line in after.splitlines()] == [
        line.split(" =")[0] for line in SHOP.splitlines()
    ]


def test_a_new_value_stands_under_its_heading() -> None:
    after = edited(SHOP, "non-slip loop")
    assert changed_lines(SHOP, after) == ([], ['"non-slip loop" = "5 in"'])
    assert after.startswith(SHOP[: SHOP.index("# Our own hands.")])
    assert after.endswith(SHOP[SHOP.index("# Our own hands.") :])


def test_a_table_that_is_not_there_comes_last() -> None:
    before = 'name = "Bench"  # mine\n'
    assert edited(before, "blood") == before + '\n[lap]\nblood = "5 in"\n'
    assert edited(before.strip(), "blood") == before + '\n[lap]\nblood = "5 in"\n'


def test_a_table_of_two_sides_becomes_one_length() -> None:
    after = edited(SHOP, "clinch")
    assert changed_lines(SHOP, after) == (
        ['clinch = { above = "3 in", below = "2 in" }'],
        ['clinch = "5 in"'],
    )


@pytest.mark.parametrize(
    "before",
    [
        'lap.blood = "4 in"\n',
        "[ lap ]\nblood = '4 in'\n",
        "[lap]",
        '[lap.blood]\nabove = "4 in"\nbelow = "3 in"\n\n[rules.step]\nlimit = "0.003 in"\n',
        'name = "x"\r\n[lap]\r\n# c\r\nblood = "4 in"\r\n',
        "\ufeff[lap]\n",
    ],
)
@pytest.mark.parametrize("key", ["blood", "clinch", "albright's"])
def test_any_way_to_write_the_table_is_understood(before: str, key: str) -> None:
    old, new = (tomllib.loads(text.lstrip("\ufeff")) for text in (before, edited(before, key)))
    assert new["lap"].pop(key) == "5 in"
    old.get("lap", {}).pop(key, None)
    assert new == {"lap": {}, **old}


@pytest.mark.parametrize("key", ["blood", "clinch"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_a_byte_order_mark_stay(mark: str, key: str) -> None:
    before = mark + SHOP.replace("\n", "\r\n")
    assert edited(before, key) == mark + edited(SHOP, key).replace("\n", "\r\n")


@pytest.mark.parametrize("key", ["blood", "albright", "new one"])
def test_a_file_of_mixed_line_ends_keeps_each(key: str) -> None:
    before = SHOP.replace("[lap]\n", "[lap]\r\n").replace("wet\n", "wet\r\n")
    gone, came = (
        set(one.splitlines(keepends=True)) - set(other.splitlines(keepends=True))
        for one, other in ((before, edited(before, key)), (edited(before, key), before))
    )
    assert len(gone) == (key == "blood")
    assert len(came) == 1


def test_a_heading_in_a_text_is_no_heading() -> None:
    before = 'note = """\n[lap]\n"""\n\n["lap"]\nblood = "4 in"\n'
    after = tomllib.loads(edited(before, "clinch"))
    assert after == {"note": "[lap]\n", "lap": {"clinch": "5 in", "blood": "4 in"}}


@pytest.mark.parametrize("wrong", ["lap = 3\n", 'lap = { blood = "4 in" }\n'])
def test_what_is_no_table_is_refused(wrong: str) -> None:
    with pytest.raises(Refused) as caught:
        edited(wrong, "blood")
    assert str(caught.value) == "lap: this is not a table; write it as [lap]"


written = st.characters(exclude_categories=["C"])


@given(st.text(written, min_size=1, max_size=20), st.text(written, max_size=20))
def test_any_key_and_value_come_back_as_they_were(key: str, value: str) -> None:
    after = tomllib.loads(edited(SHOP, key, value))
    assert after["lap"].pop(key) == value
    before = tomllib.loads(SHOP)
    before["lap"].pop(key, None)
    assert after == before


@pytest.mark.parametrize(
    ("before", "after"),
    [
        (b'# a\n[lap]\nblood = "8 in"  # b\nclinch = "3 in"\n', b'# a\n[lap]\nclinch = "3 in"\n'),
        (b'# a\nlap = { blood = "8 in" }\n', b"# a\nlap = {  }\n"),
        (b'# a\nname = "b"\n', b'# a\nname = "b"\n'),
        (b'[lap]\nclinch = "3 in"\n', b'[lap]\nclinch = "3 in"\n'),
    ],
)
def test_a_value_is_taken_out_and_nothing_else(before: bytes, after: bytes) -> None:
    assert with_value(before, "lap", "blood", None) == after


def test_a_table_over_several_lines_is_read_and_stays() -> None:
    """TOML 1.1 (toml.io/en/v1.1.0) allows line breaks and a last comma in braces."""
    before = SHOP.replace('{ above = "3 in", below = "2 in" }', '{\n  above = "3 in",\n}')
    after = edited(before, "blood")
    assert changed_lines(before, after) == (
        ['blood = "4 in"                  # tied wet'],
        ['blood = "5 in"                  # tied wet'],
    )
    assert read_toml(after.encode())["lap"] == {"blood": "5 in", "clinch": {"above": "3 in"}}
