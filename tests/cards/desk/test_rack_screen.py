"""The rack on the page: what it makes, its file, and tapers that follow the sliders."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.batches.whole_leaders import whole_leaders
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack, read_rack
from tagend.cards.practice.shop_file import practice_of, read_shop
from tagend.cards.propose.asking import AskedTaper, wish_of
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.wish import Shares
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import Served

Opened = Callable[..., Page]


def practice(folder: Path) -> Practice:
    return practice_of(read_shop((folder / "shop.toml").read_bytes()))


def rack(folder: Path) -> Rack:
    return read_rack((folder / "rack.toml").read_bytes(), practice(folder))


def recipe(folder: Path, name: str) -> Recipe:
    return read_recipe((folder / name).read_bytes(), practice(folder))


def test_it_tells_how_many_the_rack_makes_and_what_is_to_buy_for_more(
    shop_folder: Served, opened: Opened
) -> None:
    folder = shop_folder.folder
    leader = work_out(recipe(folder, "sandbar-eight.toml"), practice(folder))
    (made,) = whole_leaders([leader], rack(folder))
    assert made is not None
    page = opened(shop_folder, "/rack")
    row = page.locator(".choice li", has_text="Sandbar eight")
    expect(row.locator(".whole")).to_have_text(str(made.number))
    row.get_by_role("textbox").fill(str(made.number))
    plan = page.locator("#plan")
    expect(plan).to_contain_text("Stiff 25")
    expect(plan).not_to_contain_text("To buy first")
    row.get_by_role("textbox").fill(str(made.number + 1))
    expect(plan).to_contain_text("To buy first")
    expect(plan).to_contain_text(f"the spools make {made.number}")
    row.get_by_role("textbox").fill("many")
    expect(row.get_by_role("textbox")).to_have_attribute("aria-invalid", "true")


def test_a_taper_follows_the_sliders_by_keys_and_is_kept_as_it_was_shown(
    shop_folder: Served, opened: Opened
) -> None:
    folder = shop_folder.folder
    page = opened(shop_folder, "/rack/taper")
    length = page.get_by_role("slider", name="Length")
    for _ in range(5):
        length.press("ArrowRight")
    expect(page.get_by_label("Length", exact=True)).to_have_value("10 ft 3 in")
    page.get_by_role("slider", name="Butt, % of it").press("ArrowLeft")
    shares = [page.locator(f"[name={part}_share]") for part in ("butt", "taper", "tippet")]
    butt, taper, tippet = (int(each.input_value()) for each in shares)
    assert butt == 59
    assert butt + taper + tippet == 100
    expect(page.locator("#proposals")).not_to_have_class("stale")
    second = page.locator(".tapers > section").nth(1)
    expect(second.get_by_role("heading")).to_contain_text("10 ft 3 in")
    drawn = second.locator("img.paper")
    expect(drawn).to_have_js_property("complete", True)
    assert drawn.evaluate("image => image.naturalWidth") > 100
    asked = AskedTaper(
        total=parse_length("10 ft 3 in"),
        butt=parse_diameter(page.get_by_label("Butt", exact=True).input_value()),
        tippet=page.get_by_label("Tippet", exact=True).input_value(),
        shares=Shares(butt, taper, tippet),
    )
    proposals = propose(*wish_of(asked, rack(folder), practice(folder)), practice(folder), "Taper")
    for strand in proposals[1].strands:
        expect(second).to_contain_text(f"from {strand.label}")
    second.get_by_label("Name").fill("Evening & <dusk>")
    second.get_by_role("button", name="Keep this one").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Evening & <dusk>")
    kept = recipe(folder, "evening-dusk.toml")
    assert kept.sections == proposals[1].recipe.sections


def test_a_wrong_wish_is_told_beside_its_field_and_stays(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/rack/taper")
    butt = page.locator("[name=butt]")
    butt.fill("stout")
    expect(butt).to_have_attribute("aria-invalid", "true")
    expect(butt).to_have_value("stout")
    butt.fill("0.008 in")
    expect(page.locator("#taper .faults")).to_contain_text("no thicker than the tippet")
    butt.fill("0.024 in")
    expect(page.locator(".tapers > section")).to_have_count(3)
    expect(page.locator("#taper .faults")).to_be_empty()


def test_spools_are_changed_in_their_file_with_its_comments_kept(
    shop_folder: Served, opened: Opened
) -> None:
    folder = shop_folder.folder
    file = folder / "rack.toml"
    file.write_text(file.read_text().replace('left = "12 yd"', 'left = "12 yd"  # by the scales'))
    page = opened(shop_folder, "/rack/spools")
    before = rack(folder).spools
    rows = page.locator(".spool")
    rows.nth(4).get_by_label("Left on it").fill("much")
    page.get_by_role("button", name="Save").click()
    wrong = rows.nth(4).get_by_label("Left on it")
    expect(wrong).to_have_attribute("aria-invalid", "true")
    wrong.fill("3 yd")
    rows.nth(0).get_by_role("button").click()
    page.get_by_role("button", name="Add a spool").click()
    for label, text in (
        ("Label", "Fine 6"),
        ("Material", "nylon"),
        ("Diameter", "0.008 in"),
        ("Left on it", "20 yd"),
    ):
        rows.last.get_by_label(label).fill(text)
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#done")).to_have_text("Saved.")
    after = rack(folder).spools
    assert [spool.label for spool in after] == [
        *(spool.label for spool in before[1:]),
        "Fine 6",
    ]
    assert after[3].left.plain == "3 yd"
    text = file.read_text()
    assert text.startswith("# The spools on the bench")
    assert "# by the scales" in text
    file.write_text(text + "\n# changed elsewhere\n")
    page.locator(".spool").last.get_by_label("Lot").fill("Q 9")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#spools .faults")).to_contain_text("changed meanwhile")
    expect(page.locator(".spool").last.get_by_label("Lot")).to_have_value("Q 9")
    assert file.read_text().endswith("# changed elsewhere\n")


@pytest.mark.parametrize("there", [True, False])
def test_spools_of_a_table_come_into_the_rack(
    there: bool, shop_folder: Served, opened: Opened
) -> None:
    folder = shop_folder.folder
    before = [spool.label for spool in rack(folder).spools] if there else []
    if not there:
        (folder / "rack.toml").unlink()
    page = opened(shop_folder, "/rack/spools")
    table = b"label,material,diameter,left\nLate,nylon,0.20 mm,30 m\nClear 8,nylon,4X,9 m\n"
    page.locator("input[type=file]").set_input_files(
        {"name": "more.csv", "mimeType": "text/csv", "buffer": table}
    )
    page.get_by_role("button", name="Add its spools").click()
    expect(page.locator("#done")).to_contain_text(f"{1 if there else 2} of 2")
    new = ["Late"] if there else ["Late", "Clear 8"]
    assert [spool.label for spool in rack(folder).spools] == [*before, *new]


def test_without_a_rack_a_taper_is_made_of_sizes_that_can_be_had(
    shop_folder: Served, opened: Opened
) -> None:
    (shop_folder.folder / "rack.toml").unlink()
    page = opened(shop_folder, "/rack/taper")
    expect(page.locator("#taper details")).to_have_attribute("open", "")
    page.get_by_label("sizes to be had").fill("0.022 in, 0.017 in, 0.013 in, 0.010 in")
    expect(page.locator(".tapers > section").first).to_contain_text("tippet")
