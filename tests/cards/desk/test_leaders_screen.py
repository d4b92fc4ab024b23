"""The shelf of leaders, as a person looks for one."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import Served

Opened = Callable[..., Page]
PRACTICE = practice_of(Shop())


def names(page: Page) -> list[str]:
    shelf = page.locator("#shelf li:visible a b")
    return [str(name) for name in shelf.all_text_contents()]


def test_leaders_are_found_and_sorted(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder)
    assert names(page) == sorted(names(page))
    page.get_by_label("Sort by").select_option("line weight")
    assert names(page)[0] == "Breakwater ten"
    page.get_by_label("Sort by").select_option("length")
    assert names(page)[0] == "Reedbed six"
    page.get_by_label("Sort by").select_option("tippet")
    assert names(page)[0] == "Breakwater ten"
    page.get_by_label("Find").fill("crabs sand")
    assert names(page) == ["Sandbar eight"]
    page.get_by_role("link", name="Sandbar eight").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sandbar eight")


def test_the_pictures_are_the_cards_and_come_into_view(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder)
    picture = page.locator("#shelf img").first
    picture.scroll_into_view_if_needed()
    page.wait_for_function("document.querySelector('#shelf img').naturalWidth > 0")
    answer = page.request.get(shop_folder.origin + str(picture.get_attribute("src")))
    assert "<desc>Breakwater ten" in answer.text()


def test_one_begins_copies_and_finds_an_empty_folder_helpful(
    served: Served, opened: Opened
) -> None:
    page = opened(served)
    expect(page.locator(".empty")).to_be_visible()
    page.get_by_label("What it is called").fill("Mudflat nine")
    page.get_by_role("button", name="Begin").click()
    page.wait_for_url("**/mudflat-nine.toml")
    path = served.folder / "mudflat-nine.toml"
    path.write_bytes(b"# my own\n" + path.read_bytes())
    assert read_recipe(path.read_bytes(), PRACTICE).name == "Mudflat nine"
    page.goto(served.origin)
    page.get_by_role("button", name="Copy").click()
    page.wait_for_url("**/mudflat-nine-copy.toml")
    copy = (served.folder / "mudflat-nine-copy.toml").read_bytes()
    copied = read_recipe(copy, PRACTICE)
    assert copy.startswith(b"# my own\n")
    assert copied.name == "Mudflat nine, copy"
    assert copied.sections == read_recipe(path.read_bytes(), PRACTICE).sections


def test_the_samples_come_with_a_button(served: Served, opened: Opened) -> None:
    page = opened(served)
    page.get_by_role("button", name="samples").click()
    expect(page.get_by_role("link", name="Sandbar eight")).to_be_visible()
    assert (served.folder / "shop.toml").is_file()


def test_a_file_that_cannot_be_read_is_shown_with_what_is_wrong(
    shop_folder: Served, opened: Opened
) -> None:
    (shop_folder.folder / "bad.toml").write_text('[[section]]\nlength = "long"\n')
    page = opened(shop_folder)
    item = page.locator("#shelf li", has_text="bad.toml")
    expect(item).to_contain_text("cannot be read")
    item.get_by_role("link").click()
    expect(page.locator(".length .message").first).to_contain_text("long")


def test_the_button_ends_the_desk(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder)
    page.get_by_role("button", name="Close the desk").click()
    expect(page.locator("main")).to_contain_text("closed")
