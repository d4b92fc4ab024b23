import json
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend

SANDBAR = """\
Sandbar eight: 11 ft, 6 sections, tippet 0.010 in fluorocarbon
  █████████████████████|▇▇▇▇▇▇▇▇▇▇▇|▆▆▆▆▆▆|▅▅▅▅▅|▅▅▅▅|▃▃▃▃▃▃▃▃▃▃▃▃▃▃
  1                     2           3      4     5    6
  at the butt: perfection loop, 3/4 in, fold 6 1/4 in
     line          diameter  strength   tied             CUT  knot to the next
  1  hard nylon    0.023 in  25 lb     46 in       57 1/4 in  blood 4+4         lap 10 in
  2  hard nylon    0.020 in  18 lb     24 in       33 3/4 in  blood 4+5         lap 9 1/2 in
  3  hard nylon    0.017 in  13 lb     14 in       22 1/2 in  blood 5+5         lap 7 1/2 in
  4  hard nylon    0.015 in  10 lb     10 in       17 1/2 in  blood 5+5         lap 7 1/2 in
  5  hard nylon    0.013 in  8 lb       8 in       15 1/2 in  triple surgeon's  lap 7 1/2 in
  6  fluorocarbon  0.010 in  8.5 lb    30 in       37 1/4 in
     in all                            11 ft  15 ft 3 3/4 in
  at the fly: non-slip loop, 1/4 in, fold 3 1/2 in
"""


def test_the_cut_list_is_a_table_to_cut_from(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "sandbar-eight.toml")
    assert (run.status, run.err) == (0, "")
    assert run.out.startswith(SANDBAR)


def test_the_reason_for_each_chosen_knot_is_given(tagend: Tagend, demo: Path) -> None:
    lines = tagend("cuts", demo / "sandbar-eight.toml").out.splitlines()
    assert "  1 to 2: blood, one kind of line and a small step" in lines
    assert lines[-1] == "  5 to 6: triple surgeon's, nylon meets fluorocarbon"


def test_several_recipes_stand_apart(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "reedbed-six.toml", demo / "millrace-three.toml")
    assert "\n\nMillrace three: 2.25 m, 5 sections" in run.out


def test_json_gives_the_cuts_in_millimetres(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", "--json", demo / "sandbar-eight.toml", demo / "millrace-three.toml")
    assert (run.status, run.err) == (0, "")
    sandbar, millrace = (json.loads(line) for line in run.out.splitlines())
    inches = [section["cut_mm"] / 25.4 for section in sandbar["sections"]]
    assert inches == pytest.approx([57.25, 33.75, 22.5, 17.5, 15.5, 37.25])
    assert sandbar["total_finished_mm"] == 3352.8  # 11 ft
    laps = [section["lap_mm"] / 25.4 for section in sandbar["sections"][:-1]]
    assert laps == pytest.approx([10, 9.5, 7.5, 7.5, 7.5])
    assert sandbar["sections"][-1]["lap_mm"] is None
    folds = [sandbar["butt_fold_mm"] / 25.4, sandbar["fly_fold_mm"] / 25.4]
    assert folds == pytest.approx([6.25, 3.5])
    assert sum(inches) - sum(laps) - sum(folds) == pytest.approx(132)
    assert all(section["cut_mm"] % 5 == 0 for section in millrace["sections"])


def test_a_batch_counts_what_it_draws(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "sandbar-eight.toml", "--count", "12", "--json")
    whole = json.loads(run.out)
    assert (whole["count"], whole["batch_cut_mm"]) == (12, pytest.approx(12 * 183.75 * 25.4))


@pytest.mark.parametrize(
    ("count", "says"),
    [
        ("0", "0 is not in the range 1<=x<=10000."),
        ("some", "'some' is not a valid integer range."),
    ],
)
def test_a_count_is_a_whole_number(tagend: Tagend, demo: Path, count: str, says: str) -> None:
    run = tagend("cuts", demo / "sandbar-eight.toml", "--count", count)
    assert run.status == 2
    assert run.faults == [
        f"tagend cuts: Invalid value for '--count': {says} See 'tagend cuts --help'."
    ]
