"""One leader on the page, as a person has it before them."""

from collections.abc import Callable

import zxingcpp
from PIL import Image
from playwright.sync_api import Locator, Page, expect

from tagend.cards.code.notation import read_notation
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import Served

Opened = Callable[..., Page]
PRACTICE = practice_of(Shop())
SANDBAR = "/leader/sandbar-eight.toml"


def rows(page: Page) -> Locator:
    return page.locator("#rows > .row")


def typed(page: Page, row: int, called: str) -> Locator:
    return rows(page).nth(row).get_by_label(called, exact=True)


def lengths(page: Page) -> list[str]:
    return [typed(page, row, "Length").input_value() for row in range(rows(page).count())]


def drawn(page: Page) -> None:
    """Wait until the desk has drawn what stands in the fields, code and all."""
    page.wait_for_load_state("networkidle")
    page.wait_for_timeout(450)
    page.wait_for_load_state("networkidle")


def saved(served: Served, page: Page, name: str = "sandbar-eight.toml") -> Recipe:
    with page.expect_response("**/save") as response:
        page.keyboard.press("Control+s")
    assert response.value.ok
    expect(page.locator("#status")).to_have_text("Saved.")
    return read_recipe((served.folder / name).read_bytes(), PRACTICE)


def test_what_is_typed_is_worked_out_drawn_and_saved_with_the_comments_kept(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    cut = rows(page).first.locator("output")
    expect(cut).to_have_text("57 1/4 in")
    drawn(page)
    before = page.locator("#sides > div").first.get_attribute("data-id")
    typed(page, 0, "Length").fill("50")
    expect(cut).to_have_text("61 1/4 in")
    expect(page.locator("#sides > div").first).not_to_have_attribute("data-id", str(before))
    recipe = saved(shop_folder, page)
    assert str(recipe.sections[0].length) == "50 in"
    assert b"# The same leader" in (shop_folder.folder / "sandbar-eight.toml").read_bytes()


def test_rows_are_typed_as_on_paper(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, SANDBAR)
    typed(page, 5, "Length").press("Enter")
    assert rows(page).count() == 7
    expect(typed(page, 6, "Length")).to_be_focused()
    page.keyboard.type("12in")
    typed(page, 6, "Diameter").fill("4X")
    typed(page, 6, "Material").fill("fluoro")
    typed(page, 6, "Strength").fill("6#")
    last = saved(shop_folder, page).sections[-1]
    assert (str(last.diameter), last.material, str(last.strength)) == ("4X", "fluorocarbon", "6 lb")


def test_rows_are_moved_by_keys_by_buttons_and_by_the_mouse(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    was = lengths(page)
    typed(page, 0, "Length").press("Alt+ArrowDown")
    expect(typed(page, 1, "Length")).to_be_focused()
    assert lengths(page)[:2] == [was[1], was[0]]
    rows(page).nth(1).get_by_role("button", name="More of this section").click()
    rows(page).nth(1).get_by_role("button", name="Move up").click()
    assert lengths(page) == was
    drawn(page)  # while a page is still moving, nothing can be taken hold of
    rows(page).nth(2).locator(".place").hover()
    page.mouse.down()
    for _ in range(2):  # the first only begins to drag
        rows(page).nth(0).locator(".place").hover()
    page.mouse.up()
    expect(typed(page, 0, "Length")).to_have_value(was[2])
    rows(page).nth(0).get_by_role("button", name="More of this section").click()
    rows(page).nth(0).get_by_role("button", name="Take out").click()
    assert lengths(page) == [was[0], was[1], *was[3:]]


def test_every_step_is_undone_and_done_again(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, SANDBAR)
    undo = page.get_by_role("button", name="Undo")
    expect(undo).to_be_disabled()
    states = [lengths(page)]
    for number in range(12):
        typed(page, number % 6, "Length").fill(f"{20 + number} in")
        states.append(lengths(page))
    typed(page, 2, "Length").press("Alt+ArrowUp")
    states.append(lengths(page))
    for state in reversed(states[:-1]):
        page.keyboard.press("Control+z")
        assert lengths(page) == state
    expect(undo).to_be_disabled()
    for state in states[1:]:
        page.get_by_role("button", name="Redo").click()
        assert lengths(page) == state


def test_what_is_undone_after_it_was_saved_leaves_the_file_as_it_was(
    shop_folder: Served, opened: Opened
) -> None:
    path = shop_folder.folder / "sandbar-eight.toml"
    noted = path.read_bytes().replace(b'length = "46 in"', b'length = "46 in"  # the stiff spool')
    path.write_bytes(noted)
    page = opened(shop_folder, SANDBAR)
    typed(page, 0, "Length").press("Alt+ArrowDown")
    saved(shop_folder, page)
    assert path.read_bytes().index(b"24 in") < path.read_bytes().index(b"the stiff spool")
    page.get_by_role("button", name="Undo").click()
    saved(shop_folder, page)
    assert path.read_bytes() == noted


def test_a_wrong_entry_stays_as_typed_with_what_to_write_beside_it(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    field = typed(page, 1, "Diameter")
    field.fill("thick")
    expect(field).to_have_attribute("aria-invalid", "true")
    message = rows(page).nth(1).locator(".diameter .message")
    expect(message).to_contain_text("thick")
    expect(message).to_contain_text("write")
    expect(field).to_have_value("thick")
    page.keyboard.press("Control+s")
    expect(page.locator("#status")).to_contain_text("section 2, diameter")
    field.fill("0.020 in")
    expect(field).not_to_have_attribute("aria-invalid", "true")
    expect(message).to_be_hidden()


def test_a_knot_is_changed_among_those_that_fit_and_left_to_the_rule_again(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    joint = rows(page).nth(4).locator(".joint")
    expect(joint.locator(".why")).to_contain_text("nylon meets fluorocarbon")
    knot = joint.get_by_label("Knot")
    assert "haywire" not in str(knot.text_content())  # which is for wire alone
    knot.select_option(index=2)
    named = saved(shop_folder, page).sections[4].knot
    assert named is not None
    knot.select_option("")
    assert saved(shop_folder, page).sections[4].knot is None


def test_a_finding_stands_at_its_section_with_its_reason_and_standing(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    found = rows(page).nth(4).locator(".found li")
    expect(found).to_contain_text("weaker than the tippet")
    expect(found).to_contain_text("[common practice]")
    typed(page, 3, "Diameter").fill("0.011 in")
    expect(rows(page).nth(4).locator(".found")).to_contain_text("thicker")


def test_variants_are_tabs_that_can_be_changed_and_become_leaders(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    page.get_by_role("tab", name="in hard wind").click()
    expect(page.locator("#of_variant")).to_contain_text("6 ft")
    page.get_by_label("Length of the butt").fill("5 ft")
    expect(page.locator("#of_variant")).to_contain_text("5 ft")
    assert str(saved(shop_folder, page).variants[0].butt) == "5 ft"
    page.get_by_text("Other line for single sections").click()
    page.locator("#replace").get_by_label("Section 3").fill("0.016 in nylon 12 lb")
    other = saved(shop_folder, page).variants[0].replace
    assert other is not None
    assert other[3].material == "nylon"
    page.get_by_role("button", name="Make it a leader").click()
    page.wait_for_url("**/sandbar-eight-in-hard-wind.toml")
    path = shop_folder.folder / "sandbar-eight-in-hard-wind.toml"
    assert str(read_recipe(path.read_bytes(), PRACTICE).sections[0].length) == "5 ft"


def test_what_was_changed_elsewhere_is_never_overwritten_in_silence(
    shop_folder: Served, opened: Opened
) -> None:
    first, second = opened(shop_folder, SANDBAR), opened(shop_folder, SANDBAR)
    typed(first, 0, "Length").fill("44 in")
    saved(shop_folder, first)
    typed(second, 1, "Length").fill("33 in")
    second.keyboard.press("Control+s")
    asked = second.get_by_role("dialog")
    expect(asked).to_be_visible()
    path = shop_folder.folder / "sandbar-eight.toml"
    assert str(read_recipe(path.read_bytes(), PRACTICE).sections[0].length) == "44 in"
    asked.get_by_role("button", name="Keep mine as another").click()
    second.wait_for_url("**/sandbar-eight-2.toml")
    mine = read_recipe((shop_folder.folder / "sandbar-eight-2.toml").read_bytes(), PRACTICE)
    assert [str(section.length) for section in mine.sections[:2]] == ["46 in", "33 in"]
    assert str(read_recipe(path.read_bytes(), PRACTICE).sections[0].length) == "44 in"


def test_what_is_not_saved_survives_a_page_that_is_loaded_again(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    typed(page, 0, "Length").fill("51 in")
    page.on("dialog", lambda dialog: dialog.accept())
    page.reload()
    expect(typed(page, 0, "Length")).to_have_value("51 in")


def test_a_card_is_kept_as_a_picture_whose_code_holds_the_leader(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, SANDBAR)
    page.get_by_role("tab", name="in hard wind").click()
    with page.expect_download() as download:
        page.get_by_role("link", name="Keep as picture").click()
    (code,) = zxingcpp.read_barcodes(Image.open(download.value.path()))
    recipe = read_notation(code.text, PRACTICE.knots, PRACTICE.materials)
    assert (recipe.name, str(recipe.sections[0].length)) == ("Sandbar eight, in hard wind", "6 ft")


def test_a_name_of_signs_is_shown_as_such(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, SANDBAR)
    page.get_by_text("The leader", exact=True).click()
    hostile = "<script>alert(1)</script>"
    page.get_by_label("Name", exact=True).fill(hostile)
    expect(page.locator("#title")).to_have_text(hostile)
    saved(shop_folder, page)
    page.goto(shop_folder.origin)
    expect(page.locator("#shelf")).to_contain_text(hostile)
