import json
from typing import Any

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.words.worksheet_json import json_line
from tests.written import PRACTICE, recipe, section

WRITTEN = recipe(
    section("60 cm", "0.50 mm", "nylon", "10 kg", knot="blood"),
    section("22 to 28 cm", "0.30 mm", "fluorocarbon"),
    fly="clinch",
    total="2 m",
)


def line(count: int = 1) -> dict[str, Any]:
    parsed: dict[str, Any] = json.loads(json_line(worksheet(WRITTEN, PRACTICE), count))
    return parsed


def test_it_is_one_line() -> None:
    assert "\n" not in json_line(worksheet(WRITTEN, PRACTICE))


def test_a_section_has_the_keys_that_scripts_rely_on() -> None:
    first, last = line()["sections"]
    for key in ("finished_mm", "cut_mm", "diameter_mm", "material", "strength_kg", "knot"):
        assert key in first
    assert first["finished_mm"] == 600
    assert first["cut_mm"] % 5 == 0
    assert first["diameter_mm"] == 0.5
    assert (first["material"], first["strength_kg"], first["knot"]) == ("nylon", 10, "blood")
    assert (last["finished_mm"], last["finished_least_mm"]) == (280, 220)
    assert (last["strength_kg"], last["knot"]) == (None, None)


def test_the_whole_has_its_totals() -> None:
    whole = line(count=12)
    assert whole["name"] == "Under test"
    assert (whole["total_finished_mm"], whole["total_finished_least_mm"]) == (880, 820)
    assert whole["total_cut_mm"] == sum(section["cut_mm"] for section in whole["sections"])
    assert (whole["count"], whole["batch_cut_mm"]) == (12, 12 * whole["total_cut_mm"])


def test_warnings_carry_rule_severity_section_and_message() -> None:
    warnings = line()["warnings"]
    for warning in warnings:
        assert warning.keys() >= {"rule", "severity", "section", "message"}
        assert warning["severity"] in ("error", "warning", "note")
    assert (warnings[0]["rule"], warnings[0]["severity"]) == ("stated total", "error")
    assert warnings[0]["section"] is None
    assert warnings[0]["message"] == (
        "the recipe says 2 m, its sections make 82 cm to 88 cm: "
        "the recipe says one length and adds up to another"
    )


def test_a_pound_is_written_to_a_tenth_of_a_gram() -> None:
    pound = worksheet(recipe(section("9 ft", "4X", "nylon", "4 lb")), PRACTICE)
    assert json.loads(json_line(pound))["sections"][0]["strength_kg"] == 1.8144  # 4 x 0.45359237
