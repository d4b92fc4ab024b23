"""A leader drawn for the terminal: to scale in length and thickness, and plain where it must be."""

import pytest

from tagend.cards.cli.taper_lines import taper_lines
from tagend.cards.leader.leader import work_out
from tests.written import PRACTICE, recipe, section

LEADER = work_out(
    recipe(
        section("40 in", "0.020 in"),
        section("20 in", "0.015 in"),
        section("10 in", "0.010 in"),
        section("1/2 in", "0.002 in"),
    ),
    PRACTICE,
)


def test_lengths_are_to_scale_and_thickness_is_in_eighths() -> None:
    drawn, places = taper_lines(LEADER, "utf-8")
    runs = drawn.split("|")
    assert [run[0] for run in runs] == ["█", "▆", "▄", "▁"]  # 8, 6, 4 and hardly 1 of 8
    assert len(runs[0]) == 2 * len(runs[1]) == pytest.approx(4 * len(runs[2]), abs=2)
    assert len(runs[3]) == 1  # however short, it is seen
    assert all(len(set(run)) == 1 for run in runs)
    for place, start in enumerate([0, *(i + 1 for i, char in enumerate(drawn) if char == "|")], 1):
        assert places[start] == str(place)


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "no such", None])
def test_where_its_signs_are_not_known_it_is_plain(encoding: str | None) -> None:
    drawn, _ = taper_lines(LEADER, encoding)
    assert drawn.isascii()
    assert [run[0] for run in drawn.split("|")] == ["#", "=", "-", "."]
