"""One leader on the page, as a person has it before them."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import Served

Opened = Callable[..., Page]
PRACTICE: Practice = practice_of(Shop())


def test_what_is_typed_is_drawn_and_saved_with_the_comments_kept(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/leader/sandbar-eight.toml")
    row = page.locator("#rows > .row").first
    before = row.locator("output").text_content()
    row.locator("[data-field=length]").fill("50 in")
    expect(row.locator("output")).not_to_have_text(str(before))
    page.keyboard.press("Control+s")
    expect(page.locator("#status")).to_have_text("Saved.")
    data = (shop_folder.folder / "sandbar-eight.toml").read_bytes()
    assert b"# The same leader for another day" in data
    assert str(read_recipe(data, PRACTICE).sections[0].length) == "50 in"
