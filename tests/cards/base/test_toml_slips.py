"""What is said of a file that a hand slipped in: just that slip, at its line."""

import pytest

from tagend.cards.base.toml_file import read_toml
from tagend.layouts.base.faults import Refused


@pytest.mark.parametrize(
    ("line", "found", "instead"),
    [
        ("name = “Low”", "curly quotes", "straight ones"),
        ("name = ‘Low’", "curly quotes", "straight ones"),
        (r'logo = "c:\pictures\logo.png"', "a back slash", "single quotes"),
        ("name = Alder run  # mine", "without quotes", 'name = "Alder run"'),
        ("length = 30 in", "without quotes", 'length = "30 in"'),
        ('length = 30"', "without quotes", "length = '30\"'"),
        ("diameter = .023", "without quotes", 'diameter = ".023"'),
        ("tied = 31/5/2026", "without quotes", 'tied = "31/5/2026"'),
        ('name: "Low"', "a colon", "name ="),
        ("line weight = 8", "more than one word", "_"),
        ("name =", "nothing stands behind name", "in quotes"),
        ('name = "Low', "not closed", "close it"),
        ('name = "he said "no" again"', "behind a text", "without such a quote"),
        ("[butt", "not closed", "[butt]"),
        ("[[section]", "not closed", "[[section]]"),
        ("[use]\n[use]", "already", "[[section]]"),
        ('use = "a"\nuse = "b"', "already", ""),
        ("use = [1, 2", "unclosed array", 'name = "text"'),
    ],
)
def test_a_slip_of_the_hand_is_said_to_be_just_that(line: str, found: str, instead: str) -> None:
    with pytest.raises(Refused) as caught:
        read_toml(f"a = 1\n{line}\nb = 2\n".encode())
    (fault,) = caught.value.faults
    assert fault.where.startswith(("line 2", "line 3", "end of document", "line 4"))
    assert found in fault.found
    assert instead in fault.instead
