"""What is brought in: looked at without a trace, then kept; by the functions behind the page."""

import json
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace

from tagend.cards.code.notation import write_notation
from tagend.cards.desk.bring import card, keep, look
from tagend.cards.desk.desk import Desk
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tests.cards.desk.conftest import SAMPLES
from tests.pictures import beside, code_picture, file_of
from tests.tree import ROOT
from tests.written import PRACTICE

CORPUS = ROOT / "tests" / "cards" / "tables" / "corpus"
NO_UNITS = (CORPUS / "no-units.csv").read_bytes()


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return Desk(tmp_path)


def looked(desk: Desk, name: str, data: bytes, **said: object) -> Mapping[str, Any]:
    found = look(desk, name, json.dumps(said).encode() + b"\n" + data)
    assert isinstance(found, dict)
    return found


def sample(name: str) -> Recipe:
    return read_recipe((SAMPLES / f"{name}.toml").read_bytes(), PRACTICE)


def code(recipe: Recipe) -> str:
    return write_notation(recipe, PRACTICE.knots, PRACTICE.materials)


def columns(found: Mapping[str, Any]) -> dict[str, Any]:
    return {column["heading"]: column for sheet in found["sheets"] for column in sheet["columns"]}


def kept(desk: Desk, found: Mapping[str, Any]) -> list[str]:
    texts = [leader["text"] for leader in found["leaders"] if "text" in leader]
    answer = keep(desk, {"texts": texts, "answers": found.get("answers")})
    assert isinstance(answer, dict)
    names: list[str] = answer["names"]
    return names


def test_looking_leaves_no_trace_and_keeping_writes_over_nothing(desk: Desk) -> None:
    table = (SAMPLES / "list.csv").read_bytes()
    found = looked(desk, "list.csv", table)
    assert list(desk.folder.iterdir()) == []
    (desk.folder / "weir-five.toml").write_text("mine")
    names = kept(desk, found)
    assert names[0] == "weir-five-2.toml"
    assert (desk.folder / "weir-five.toml").read_text() == "mine"
    recipes = [read_recipe((desk.folder / name).read_bytes(), PRACTICE) for name in names]
    assert [recipe.name for recipe in recipes] == ["Weir five", "Tarn four", "Groyne nine"]
    again = looked(desk, "list.csv", table)
    assert [leader["here"] for leader in again["leaders"]] == names


def test_a_doubtful_column_is_taken_once_a_person_says_what_it_is(desk: Desk) -> None:
    found = looked(desk, "june.csv", NO_UNITS)
    doubtful = {name: each for name, each in columns(found).items() if each["doubt"]}
    assert doubtful["Butt length"]["why"]
    assert "leaders" not in found
    said = {name: [each["field"], each["of"], each["unit"]] for name, each in doubtful.items()}
    found = looked(desk, "june.csv", NO_UNITS, columns=said, material="nylon")
    assert not any(each["doubt"] for each in columns(found).values())
    kept(desk, found)
    # Next month's table has the same headings and another name.
    assert looked(desk, "july.csv", NO_UNITS)["leaders"][0]["text"] == found["leaders"][0]["text"]
    # What is said anew takes the place of what was kept.
    said["Butt length"][2] = "cm"
    other = looked(desk, "july.csv", NO_UNITS, columns=said)
    kept(desk, other)
    assert columns(looked(desk, "july.csv", NO_UNITS))["Butt length"]["unit"] == "cm"
    assert [path.name for path in desk.folder.glob("*.columns.toml")] == ["june.columns.toml"]
    assert all(leader.name != "june.columns.toml" for leader in desk.leaders())


def test_a_column_can_be_left_out_or_be_of_another_section(desk: Desk) -> None:
    table = b"name,butt length (in),butt dia,length 2 (in),dia 2\nWeir,40,.021,20,.015\n"
    of = {"length 2 (in)": ["length", "tippet", "in"], "dia 2": ["diameter", "tippet", ""]}
    found = looked(desk, "a.csv", table, columns=of, material="nylon")
    assert 'part = "tippet"' in found["leaders"][0]["text"]
    found = looked(desk, "a.csv", table, columns={"butt dia": ["", "", ""]}, material="nylon")
    assert columns(found)["butt dia"]["field"] == ""
    (fault,) = found["leaders"][0]["faults"]
    assert "thick" in fault["text"] or "diameter" in fault["where"]


def test_cells_that_cannot_be_read_are_told_by_their_address(desk: Desk) -> None:
    found = looked(desk, "wrong.csv", (CORPUS / "wrong-cells.csv").read_bytes())
    good, *bad = found["leaders"]
    assert good["text"]
    assert {fault["where"].split(",")[0] for each in bad for fault in each["faults"]} >= {"B3"}


def test_copied_cells_a_recipe_and_a_code_can_be_pasted(desk: Desk) -> None:
    cells = b"name\tlength (in)\tdiameter\tmaterial\nWeir\t40\t.021\tnylon\n\t20\t.015\tnylon\n"
    assert looked(desk, "", cells)["leaders"][0]["name"] == "Weir"
    recipe = sample("sandbar-eight")
    assert looked(desk, "", f"\n {code(recipe)}\n".encode())["leaders"][0]["name"] == recipe.name
    text = (SAMPLES / "sandbar-eight.toml").read_bytes()
    (name,) = kept(desk, looked(desk, "", text))
    assert (desk.folder / name).read_bytes() == text


def test_each_code_on_a_photo_is_a_leader_without_its_day(desk: Desk) -> None:
    one, other = sample("sandbar-eight"), sample("gravel-five")
    codes = [code(replace(each, tied=date(2026, 5, 1))) for each in (one, other)]
    photo = file_of(beside(*map(code_picture, codes), code_picture("https://shop.example/")))
    found = looked(desk, "photo.png", photo)
    assert {leader["name"] for leader in found["leaders"]} == {one.name, other.name}
    assert "shop.example" in found["strangers"][0]
    assert not any("2026" in leader["text"] for leader in found["leaders"])
    found = looked(desk, "photo.png", photo, tied=True)
    assert all("2026-05-01" in leader["text"] for leader in found["leaders"])


def test_a_label_is_found_in_the_tying_book(bench: Path) -> None:
    found = looked(Desk(bench), "", code(sample("sandbar-eight")).encode())
    assert found["held"] == [{"name": "Sandbar eight", "batch": 1, "numbers": "1"}]
    assert looked(Desk(bench), "", code(sample("gravel-five")).encode())["held"] == []


@pytest.mark.parametrize(
    "data", [b"", b"%PDF-1.4", b"PK\x03\x04", bytes(range(256)), b"\x89PNG", b"TAG3:X:00", b"hm"]
)
def test_what_holds_no_leader_is_refused(desk: Desk, data: bytes) -> None:
    with pytest.raises(Refused):
        looked(desk, "strange", data)


@pytest.mark.parametrize(
    "file", ["../x.columns.toml", ".columns.toml", "shop.toml", "a/b.columns.toml"]
)
def test_answers_go_nowhere_else(desk: Desk, file: str) -> None:
    nothing = {"table": "", "columns": {}, "units": {}, "material": ""}
    with pytest.raises(Refused):
        keep(desk, {"texts": [], "answers": {"file": file, **nothing}})
    assert list(desk.folder.iterdir()) == []


def test_a_card_is_drawn_before_its_leader_is_kept(desk: Desk) -> None:
    shown = card(desk, {"text": (SAMPLES / "sandbar-eight.toml").read_text()})
    assert isinstance(shown, dict)
    assert shown["svg"].startswith("<")
