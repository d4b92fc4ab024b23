import json
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend


def test_a_new_tippet_is_told_with_its_cost_and_what_to_carry(tagend: Tagend, demo: Path) -> None:
    run = tagend("renew", demo / "sandbar-eight.toml")
    assert (run.status, run.err) == (0, "")
    assert "section 6, tippet: takes 3 3/4 in of section 5 (triple surgeon's)" in run.out
    assert "section 5 has 8 in: good for 1" in run.out
    # 6 x 37 1/4 in = 223 1/2 in, 6.21 yd; every second needs a new section 5 too, 46 1/2 in
    assert "6 ×  37 1/4 in  section 6  0.010 in fluorocarbon, 8.5 lb  6.3 yd in all" in run.out
    assert "3 ×  15 1/2 in  section 5  0.013 in hard nylon, 8 lb      1.3 yd in all" in run.out


def test_a_ring_is_told_to_save_line(tagend: Tagend, tmp_path: Path) -> None:
    ringed = tmp_path / "ringed.toml"
    ringed.write_text(
        'name = "Ringed"\n'
        '[[section]]\nlength = "6 ft"\ndiameter = "3X"\nmaterial = "nylon"\nknot = "ring joint"\n'
        '[[section]]\nlength = "2 ft"\ndiameter = "5X"\nmaterial = "nylon"\n'
    )
    run = tagend("renew", ringed)
    assert "takes nothing of section 1, whose side of the ring joint stays tied" in run.out
    assert "spent" not in run.out


def test_one_section_is_cut_anew(tagend: Tagend, tmp_path: Path) -> None:
    level = b'name = "L"\n[[section]]\nlength = "6 ft"\ndiameter = "3X"\nmaterial = "nylon"\n'
    run = tagend("renew", "-", stdin=level)
    assert (run.status, "it is one section: cut it anew" in run.out) == (0, True)


def test_a_used_leader_is_told_piece_by_piece(tagend: Tagend, demo: Path) -> None:
    run = tagend("renew", demo / "sandbar-eight.toml", "--left", "5: 4 in, 6: 0")
    lines = run.out.splitlines()
    assert lines[4].endswith("10 in left  stays, 6 1/4 in, new knots take 3 3/4 in")
    assert lines[5].endswith("4 in left   CUT 15 1/2 in")
    assert lines[6].endswith("lost        CUT 37 1/4 in")
    assert "2 sections to cut; it comes to 10 ft 8 1/4 in, 3 3/4 in short" in lines[7]


def test_a_used_leader_that_is_mostly_lost_is_better_tied_anew(tagend: Tagend, demo: Path) -> None:
    sandbar = demo / "sandbar-eight.toml"
    assert "better start anew: 41 in" in tagend("renew", sandbar, "--left", "2:0").out
    assert "better" not in tagend("renew", sandbar, "--left", "3:0").out
    assert "nothing of it stays" in tagend("renew", sandbar, "--left", "1: 0 in;").out
    assert "nothing to cut" in tagend("renew", sandbar, "--left", "6: 2 ft").out


@pytest.mark.parametrize(
    ("left", "says"),
    [
        ("7: 2 in", "left, 7: the leader has 6 sections; write a section from 1 to 6"),
        ("5: 9 in", "left, 5: 9 in is more than its recipe has; write 8 in or less"),
        ("5: 4", "left, 5: '4' has no unit; write a length"),
        ("5: 0,5 in", "left, 5: '0,5 in' has a comma; write the decimal mark as a point"),
        ("5: 4 in, 5: 3 in", "left, 5: this section is named twice; say one length for it"),
        ("5 4 in", "left: '5 4 in' cannot be read; write sections"),
        ("", "left: '' cannot be read; write sections"),
    ],
)
def test_what_cannot_be_left_is_refused(tagend: Tagend, demo: Path, left: str, says: str) -> None:
    run = tagend("renew", demo / "sandbar-eight.toml", "--left", left)
    assert run.status == 2
    assert run.faults[0].startswith(says)


def test_every_slip_is_told_at_once(tagend: Tagend, demo: Path) -> None:
    run = tagend("renew", demo / "sandbar-eight.toml", "--left", "5: 4, 4: -1 in, 3: 1 in")
    assert len(run.faults) == 2


def test_what_is_left_is_of_one_leader(tagend: Tagend, demo: Path) -> None:
    sandbar = demo / "sandbar-eight.toml"
    run = tagend("renew", sandbar, "--variants", "--left", "5: 0")
    assert (run.status, "give one RECIPE" in run.err) == (2, True)
    assert tagend("renew", sandbar, "--variant", "in hard wind", "--left", "5: 0").status == 0


def test_json_has_both_and_the_warnings(tagend: Tagend, demo: Path) -> None:
    run = tagend("renew", demo / "sandbar-eight.toml", "--json", "--count", "4", "--left", "6: 0")
    (line,) = run.out.splitlines()
    whole = json.loads(line)
    (new,) = whole["renewals"]
    assert (new["section"], new["above"], new["number"]) == (6, 5, 1)
    assert new["takes_above_mm"] == pytest.approx(3.75 * 25.4)
    assert [each["count"] for each in new["carry"]] == [1, 2, 4]
    assert [each["stays"] for each in whole["rebuilt"]["sections"]] == [True] * 5 + [False]
    assert whole["rebuilt"]["short_mm"] == pytest.approx(3.75 * 25.4)
    assert "rule" in whole["warnings"][0]


def test_several_recipes_stand_apart_with_their_findings_on_standard_error(
    tagend: Tagend, demo: Path
) -> None:
    run = tagend("renew", demo / "hasty-seven.toml", demo / "gravel-five.toml")
    assert run.status == 0
    assert "\n\nGravel five" in run.out
    assert "Hasty seven: " in run.err
