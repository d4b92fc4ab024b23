import json
from pathlib import Path

import pytest

from tagend.layouts.base import cores
from tests.cards.cli.conftest import Tagend

SECTION_KEYS = {"finished_mm", "cut_mm", "diameter_mm", "material", "strength_kg", "knot"}


def test_a_sound_recipe_is_done(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "reedbed-six.toml")
    assert (run.status, run.err) == (0, "")
    assert run.out == (
        "Reedbed six: 11 ft 11 in to 12 ft 5 in, 8 sections, tippet 4X nylon\n"
        "  parts, as taken from their places: 1 butt; 2 to 7 taper; 8 tippet\n"
        "  nothing to heed\n"
    )


def test_only_parts_that_are_not_named_are_told_as_taken(tagend: Tagend, demo: Path) -> None:
    # Breakwater ten names its tippet and its bite guard.
    out = tagend("check", demo / "breakwater-ten.toml").out
    assert "as taken from their places: 1 butt; 2 taper\n" in out
    assert (
        "as taken from their places: 1 butt; 2 taper\n"
        in tagend("cuts", demo / "breakwater-ten.toml").out
    )
    (whole,) = map(
        json.loads, tagend("check", "--json", demo / "breakwater-ten.toml").out.splitlines()
    )
    assert [each["part_assumed"] for each in whole["sections"]] == [True, True, False, False]


def test_notes_and_warnings_are_no_error(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "sandbar-eight.toml")
    assert run.status == 0
    assert "note: section 5 (8 lb) is weaker than the tippet (8.5 lb)" in run.out


def test_a_wrong_recipe_exits_with_1_and_says_what_is_wrong(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "hasty-seven.toml")
    assert (run.status, run.err) == (1, "")
    assert run.out.splitlines()[:3] == [
        "Hasty seven: 9 ft 6 in, 4 sections, tippet 0.011 in fluorocarbon",
        "  parts, as taken from their places: 1 butt; 2 to 3 taper; 4 tippet",
        "  error: the recipe says 9 ft, its sections make 9 ft 6 in: the recipe says one length "
        "and adds up to another [stated total; arithmetic]",
    ]


def test_one_wrong_recipe_of_several_is_enough(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", demo / "hasty-seven.toml", demo / "reedbed-six.toml")
    assert run.status == 1
    assert "Reedbed six" in run.out


def test_json_is_one_object_a_recipe_one_a_line(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", "--json", demo / "hasty-seven.toml", demo / "reedbed-six.toml")
    assert run.status == 1
    hasty, reedbed = (json.loads(line) for line in run.out.splitlines())
    assert (hasty["name"], reedbed["name"]) == ("Hasty seven", "Reedbed six")
    for whole in (hasty, reedbed):
        assert whole.keys() >= {"total_finished_mm", "warnings"}
        assert all(section.keys() >= SECTION_KEYS for section in whole["sections"])
        assert whole["sections"][-1]["knot"] is None
    assert reedbed["warnings"] == []
    for warning in hasty["warnings"]:
        assert warning.keys() >= {"rule", "severity", "section", "message"}
        assert warning["severity"] in ("error", "warning", "note")
    assert hasty["total_finished_mm"] == 2895.6  # 114 x 25.4


def test_a_recipe_may_come_on_standard_input(tagend: Tagend, demo: Path) -> None:
    run = tagend("check", "-", stdin=(demo / "reedbed-six.toml").read_bytes())
    assert (run.status, run.out[:11]) == (0, "Reedbed six")


def test_a_shop_file_sets_its_own_limits(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    recipe, shop = demo / "millrace-three.toml", demo / "hands.toml"
    assert "step to section" not in tagend("check", recipe).out
    assert "1.3 times is the most" in tagend("check", recipe, "--shop", shop).out
    monkeypatch.setenv("TAGEND_SHOP", str(shop))
    assert "1.3 times is the most" in tagend("check", recipe).out


def test_the_schema_is_printed_for_editors(tagend: Tagend) -> None:
    run = tagend("check", "--schema")
    assert run.status == 0
    assert json.loads(run.out)["title"] == "Leader recipe"


def test_without_a_recipe_it_asks_for_one(tagend: Tagend) -> None:
    run = tagend("check")
    assert run.status == 2
    assert run.faults == ["tagend check: Missing argument 'RECIPE...'. See 'tagend check --help'."]


@pytest.mark.parametrize("option", [(), ("--json",)])
def test_many_are_checked_by_all_cores_as_by_one(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch, option: tuple[str, ...]
) -> None:
    names = [demo / "reedbed-six.toml"] * 250 + [demo / "hasty-seven.toml"]
    runs = []
    for number in (1, 2):
        monkeypatch.setattr(cores, "_cores", lambda number=number: number)
        runs.append(tagend("check", *option, *names))
    assert runs[0] == runs[1]
    assert runs[0].status == 1
