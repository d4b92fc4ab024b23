"""The screen Bring in, as a person uses it: files picked, columns said, leaders chosen and kept."""

import re
from collections.abc import Callable

from playwright.sync_api import FilePayload, Locator, Page, Route, expect

from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import SAMPLES, Served
from tests.cards.desk.test_bring import CORPUS, NO_UNITS, code, sample
from tests.pictures import beside, code_picture, file_of
from tests.written import PRACTICE

Opened = Callable[..., Page]


def file(name: str, data: bytes) -> FilePayload:
    return {"name": name, "mimeType": "", "buffer": data}


def test_a_table_is_brought_in_once_its_columns_are_said(served: Served, opened: Opened) -> None:
    page = opened(served, "/bring")
    page.get_by_label("pick them").set_input_files(
        [file("june.csv", NO_UNITS), file("broken.xlsx", b"PK\x03\x04")]
    )
    june, broken = page.get_by_role("article").all()
    expect(broken.get_by_role("listitem")).to_contain_text("damaged")
    expect(june).to_contain_text("In doubt: no unit is given")
    june.get_by_role("combobox", name="Unit of column B").select_option("cm")
    june.get_by_role("button", name="All of these are right").click()
    june.get_by_label("name no material").select_option("nylon")
    expect(june.locator("img")).to_have_attribute("src", re.compile("^blob:"))
    assert list(served.folder.iterdir()) == []
    june.get_by_role("button", name="Keep 1").click()
    expect(june.get_by_role("link", name="culvert-six.toml")).to_be_focused()
    recipe = read_recipe((served.folder / "culvert-six.toml").read_bytes(), PRACTICE)
    assert str(recipe.sections[0].length) == "54 cm"


def test_only_the_chosen_of_several_leaders_are_kept(served: Served, opened: Opened) -> None:
    page = opened(served, "/bring", width=320)
    codes = [code(sample(name)) for name in ("sandbar-eight", "gravel-five")]
    photo = file_of(beside(*map(code_picture, codes)))
    page.get_by_label("pick them").set_input_files(file("photo.png", photo))
    page.get_by_label("Gravel five").uncheck()
    page.get_by_role("button", name="Keep 1").click()
    expect(page.get_by_role("status")).to_have_text("1 kept.")
    assert [path.name for path in served.folder.iterdir()] == ["sandbar-eight.toml"]


def test_a_slip_in_a_pasted_text_is_told_and_the_text_stays(served: Served, opened: Opened) -> None:
    page = opened(served, "/bring")
    text = code(sample("sandbar-eight"))
    field = page.get_by_label("paste a label's text")
    field.fill(text.replace("8", "9", 1))
    page.get_by_role("button", name="Look at it").click()
    expect(page.get_by_role("article")).to_contain_text("may be")
    expect(field).to_have_value(text.replace("8", "9", 1))
    field.fill(text)
    page.get_by_role("button", name="Look at it").click()
    expect(page.get_by_role("article")).to_have_count(1)
    expect(page.get_by_role("button", name="Keep 1")).to_be_visible()


def test_a_dropped_file_and_a_wrong_cell(served: Served, opened: Opened) -> None:
    page = opened(served, "/bring", dark=True)
    text = (CORPUS / "wrong-cells.csv").read_text()
    page.evaluate(
        """text => {
          const dataTransfer = new DataTransfer();
          dataTransfer.items.add(new File([text], "<b>wrong</b>.csv"));
          document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true }));
        }""",
        text,
    )
    expect(page.get_by_role("heading", name="<b>wrong</b>.csv")).to_be_visible()
    expect(page.get_by_role("cell", name="16 is out of range")).to_be_visible()
    expect(page.get_by_label("Good six")).to_be_checked()


def test_a_file_that_is_too_large_is_not_even_sent(served: Served, opened: Opened) -> None:
    page = opened(served, "/bring")
    page.evaluate("document.querySelector('#files').dataset.largest = 500")
    page.get_by_label("pick them").set_input_files([CORPUS / "no-units.csv", SAMPLES / "list.csv"])
    small, large = page.get_by_role("article").all()
    expect(large.get_by_role("listitem")).to_contain_text("too large")
    expect(small.get_by_role("row")).to_have_count(3)


def test_nothing_moves_when_a_picture_comes(served: Served, opened: Opened) -> None:
    """Else the button is gone from under a finger that is on its way to it."""
    page = opened(served, "/bring", width=320)
    awaited: list[Route] = []
    page.route("**/bring/card", lambda route: awaited.append(route))
    leader = file("a.toml", (SAMPLES / "gravel-five.toml").read_bytes())
    page.get_by_label("pick them").set_input_files(leader)
    button = page.get_by_role("button", name="Keep 1")
    expect(button).to_be_enabled()
    before = top(button)
    awaited[0].continue_()
    expect(page.locator(".leaders img")).to_have_attribute("src", re.compile("^blob:"))
    page.wait_for_function("document.querySelector('.leaders img').complete")
    assert abs(top(button) - before) < 1  # CSS pixel


def top(shown: Locator) -> float:
    box = shown.bounding_box()
    assert box
    return box["y"]
