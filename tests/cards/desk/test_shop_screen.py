"""The shop's file typed on the page: what is changed is kept, and all else as it was."""

import tomllib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import FilePayload, Page, expect

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.shop import save
from tagend.cards.practice.shop_keys import new_shop_file
from tagend.layouts.base.faults import Refused
from tests.cards.desk.conftest import SAMPLES, Served

Opened = Callable[..., Page]


def saved(page: Page) -> None:
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#status")).to_have_text("Saved.")


def text_of(served: Served) -> str:
    return (served.folder / "shop.toml").read_bytes().decode()


def tables_of(served: Served) -> Mapping[str, Any]:
    return tomllib.loads(text_of(served))


def comments(text: str) -> list[str]:
    return ["#" + line.partition("#")[2] for line in text.splitlines() if "#" in line]


def test_another_language_changes_the_page_at_once_and_keeps_the_comments(
    shop_folder: Served, opened: Opened
) -> None:
    before = comments(text_of(shop_folder))
    page = opened(shop_folder, "/shop")
    page.get_by_label("Name of the shop").fill('The "Low Tide" <b>Bench</b>')
    page.get_by_label("Units").select_option("cm and in")
    page.get_by_label("Language").select_option("es")
    expect(page.locator("html")).to_have_attribute("lang", "es")
    assert page.locator("[name=name]").input_value() == 'The "Low Tide" <b>Bench</b>'
    found = tables_of(shop_folder)
    assert (found["language"], found["units"]) == ("es", "cm and in")
    assert comments(text_of(shop_folder)) == before


def test_where_there_is_no_file_one_is_begun_with_examples(served: Served, opened: Opened) -> None:
    page = opened(served, "/shop")
    page.get_by_label("Paper").first.select_option("A4")
    page.get_by_label("Size of the card").select_option("another size …")
    page.get_by_label("Its size").locator("visible=true").fill("90 x 60 mm")
    saved(page)
    asked = {"paper": "A4", "card": "90 x 60 mm"}
    assert (served.folder / "shop.toml").read_bytes() == new_shop_file(asked)


def test_what_cannot_be_is_told_beside_its_field_and_nothing_written(
    shop_folder: Served, opened: Opened
) -> None:
    before = text_of(shop_folder)
    page = opened(shop_folder, "/shop", width=320)
    tape = page.get_by_label("Marks of your tape")
    tape.fill("1/4")
    page.keyboard.press("Control+s")
    expect(page.locator("label").filter(has=tape)).to_contain_text("has no unit")
    expect(tape).to_be_focused()
    assert text_of(shop_folder) == before
    tape.fill("1/8 in")
    saved(page)
    assert text_of(shop_folder) == before.replace('"1/4 in"', '"1/8 in"')
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_a_logo_is_kept_under_a_safe_name_and_never_over_another_file(
    shop_folder: Served, opened: Opened
) -> None:
    there = shop_folder.folder / "b.png"
    there.write_bytes(b"somebody else's")
    page = opened(shop_folder, "/shop")
    logo = (SAMPLES / "wrack-line.png").read_bytes()
    name = "..\\..\\<b>evil</b>.png"
    page.get_by_label("Drop a logo").set_input_files(
        FilePayload(name=name, mimeType="image/png", buffer=logo)
    )
    expect(page.get_by_label("Its file")).not_to_have_value("wrack-line.png")
    expect(page.locator("#status")).to_have_text("Saved.")
    assert tables_of(shop_folder)["logo"] == "b-2.png"
    assert (shop_folder.folder / "b-2.png").read_bytes() == logo
    assert there.read_bytes() == b"somebody else's"
    expect(page.get_by_alt_text("The name and the logo")).to_be_visible()

    broken = FilePayload(name="a.png", mimeType="image/png", buffer=b"\x89PNG and no more")
    page.get_by_label("Drop a logo").set_input_files(broken)
    expect(page.get_by_label("Its file")).to_have_attribute("aria-invalid", "true")
    assert not (shop_folder.folder / "a.png").exists()


def test_habits_and_laps_are_kept_and_given_up(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, "/shop")
    before = text_of(shop_folder)
    page.get_by_label("At the fly").select_option("non-slip loop")
    page.locator("#own_knot").select_option("blood")
    page.get_by_label("Its lap or fold").fill("8 in")
    page.get_by_role("button", name="Save").click()
    lap = page.locator("#laps").get_by_label("blood")
    expect(lap).to_have_value("8 in")
    found = tables_of(shop_folder)
    assert (found["choice"], found["lap"]) == ({"fly": "non-slip loop"}, {"blood": "8 in"})

    page.get_by_label("At the fly").select_option("")
    lap.fill("")
    page.get_by_role("button", name="Save").click()
    expect(lap).to_have_count(0)
    assert text_of(shop_folder).startswith(before)
    assert (tables_of(shop_folder)["choice"], tables_of(shop_folder)["lap"]) == ({}, {})


def test_a_printer_is_measured_step_by_step(shop_folder: Served, opened: Opened) -> None:
    before = text_of(shop_folder)
    page = opened(shop_folder, "/shop")
    page.get_by_label("Sides").select_option("long-edge")
    link = page.get_by_role("link", name="Open the page to print").get_attribute("href")
    answer = page.context.request.get(f"{shop_folder.origin}{link}")
    assert answer.body().startswith(b"%PDF")
    page.get_by_label("rule_x").fill("96 mm")
    page.get_by_label("front_x").fill("-0.4 mm")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_label("rule_x")).to_have_attribute("aria-invalid", "true")
    assert text_of(shop_folder) == before
    page.get_by_label("rule_x").fill("99.6")  # mm, as the steps on the page have it
    saved(page)
    assert tables_of(shop_folder)["printer"] == {"rule_x": "99.6 mm", "front_x": "-0.4 mm"}
    assert text_of(shop_folder).startswith(before)


def test_a_knot_tied_once_teaches_its_lap(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, "/shop")
    learning = page.locator("#learn")
    learning.get_by_role("combobox").select_option("blood")
    learning.get_by_label("Length before tying").fill("20 in")
    learning.get_by_label("Length of the other piece").fill("20 in")
    learning.get_by_label("What is left").fill("41 in")
    page.get_by_role("button", name="Work it out").click()
    expect(learning.get_by_label("What is left")).to_have_attribute("aria-invalid", "true")
    learning.get_by_label("What is left").fill("33 1/2 in")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#sum")).to_contain_text("6 1/2 in")  # 20 + 20 - 33 1/2
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator("#laps").get_by_label("blood")).to_have_value("6 1/2 in")
    assert tables_of(shop_folder)["lap"] == {"blood": "6 1/2 in"}


def test_two_windows_lose_nothing_of_each_other(shop_folder: Served, opened: Opened) -> None:
    first, second = opened(shop_folder, "/shop"), opened(shop_folder, "/shop")
    first.get_by_label("Address").fill("9 Wrack Lane")
    saved(first)
    second.get_by_label("A line of text").fill("Tied at night")
    second.get_by_role("button", name="Save").click()
    second.get_by_role("button", name="Put mine into it").click()
    expect(second.locator("#status")).to_have_text("Saved.")
    found = tables_of(shop_folder)
    assert (found["address"], found["line"]) == ("9 Wrack Lane", "Tied at night")


def test_a_file_that_is_wrong_is_mended_on_its_page(shop_folder: Served, opened: Opened) -> None:
    path = shop_folder.folder / "shop.toml"
    path.write_text('# ours\nname = "Bench"\nunits = "feet"\n', encoding="utf-8")
    page = opened(shop_folder, "/shop")
    expect(page.locator("#faults")).to_contain_text("units")
    page.get_by_label("Units").select_option("in")
    saved(page)
    assert path.read_text("utf-8") == '# ours\nname = "Bench"\nunits = "in"\n'


def test_a_slip_in_the_file_is_told_by_its_line_and_nothing_written(
    shop_folder: Served, opened: Opened
) -> None:
    path = shop_folder.folder / "shop.toml"
    path.write_text('name = "Bench"\nunits = in\n', encoding="utf-8")
    page = opened(shop_folder, "/shop")
    expect(page.locator("#faults")).to_contain_text("line 2")
    page.get_by_label("Units").select_option("in")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#status")).to_contain_text("Not saved")
    assert path.read_text("utf-8") == 'name = "Bench"\nunits = in\n'


def test_a_lap_of_two_sides_can_be_given_up(shop_folder: Served, opened: Opened) -> None:
    path = shop_folder.folder / "shop.toml"
    before = '# ours\n[lap]\n"triple surgeon\'s" = "7 in"\n'
    sides = 'albright = { above = "4 in", below = "6 in" }\n'
    path.write_text(before + sides, encoding="utf-8")
    page = opened(shop_folder, "/shop")
    lap = page.locator("#laps").get_by_role("combobox")
    expect(lap).to_contain_text("4 in + 6 in")
    lap.select_option("worked out")
    page.get_by_role("button", name="Save").click()
    expect(lap).to_have_count(0)
    assert path.read_text("utf-8") == before


@pytest.mark.parametrize(
    "said",
    [
        {"keys": {"font": "/etc/hosts"}},
        {"keys": {"logo": "../out.png"}},
        {"lap": {"no such knot": "3 in"}},
        {"printer": {"colour": "3 mm"}},
        {"choice": {"fly": "blood"}},
    ],
)
def test_what_no_page_sends_is_refused(tmp_path: Path, said: Mapping[str, Any]) -> None:
    (tmp_path / "bench").mkdir()
    (tmp_path / "out.png").write_bytes((SAMPLES / "wrack-line.png").read_bytes())
    with pytest.raises(Refused):
        save(Desk(tmp_path / "bench"), {**said, "over": True})
    assert [*(tmp_path / "bench").iterdir()] == []
