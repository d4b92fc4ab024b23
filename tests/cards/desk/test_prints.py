"""What is chosen on the page is what comes on paper, counted and shown before."""

import io
from collections.abc import Callable
from pathlib import Path

import pypdf
import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.prints import plan
from tagend.cards.disk.seal import sealed
from tagend.cards.faces.label_lines import PLAIN
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tests.cards.desk.conftest import SAMPLES, Served
from tests.written import PRACTICE

Opened = Callable[..., Page]

WAIT = 20_000  # milliseconds, for a print of several cards on a machine that is busy


def ready(page: Page) -> None:
    expect(page.get_by_role("button", name="Download")).to_be_enabled(timeout=WAIT)


def downloaded(page: Page, button: str = "Download") -> bytes:
    with page.expect_download() as download:
        page.locator("button, a").filter(has_text=button).click()
    return Path(download.value.path()).read_bytes()


def test_labels_begin_at_the_label_that_was_picked_on_the_sheet(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/print?kind=labels")
    page.get_by_role("checkbox", name="Sandbar eight", exact=True).check()
    page.get_by_label("How many of each").fill("3")
    page.get_by_role("button", name="label 5, row 2, column 2").press("Enter")
    expect(page.get_by_label("First free label")).to_have_value("5")
    expect(page.get_by_role("button", name="label 5, row 2, column 2")).to_be_focused()
    expect(page.locator("#told")).to_have_text("1 page, 3 labels")
    ready(page)

    desk = Desk(shop_folder.folder)
    job, kept = desk.job(), desk.leader("sandbar-eight.toml")
    assert kept is not None
    assert kept.recipe is not None
    wishes = LabelWishes(notes=((PLAIN,) * 3,), start=5)
    assert downloaded(page) == sealed(
        labels_pdf(job, [worksheet(kept.recipe, job.practice)], wishes)
    )


def test_a_print_of_its_own_language_and_units_holds_what_was_told_before(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/print?leader=sandbar-eight.toml")
    page.get_by_label("Each with its variants").check()
    page.get_by_label("How many of each").fill("2")
    page.get_by_label("Language").select_option("es")
    page.get_by_label("Units").select_option("cm")
    page.get_by_label("Backs of the cards").select_option("long-edge")
    page.get_by_label("Size of the card").select_option("A6")
    expect(page.locator("#told")).to_contain_text("6 cards", timeout=WAIT)
    ready(page)
    told = page.locator("#told").text_content() or ""
    found = pypdf.PdfReader(io.BytesIO(downloaded(page)))
    assert told.startswith(f"{len(found.pages)} pages on ")
    assert f"{2 * len(found.attachments)} cards" in told
    assert str(found.root_object["/Lang"]) == "es"
    for recipe in found.attachments.values():
        assert read_recipe(recipe[0], PRACTICE).sections
    assert len(page.locator("#pages img").all()) == len(found.pages)

    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Print", exact=True).click()
    opening.value.wait_for_url("**/prints/**.pdf")
    expect(page.locator("#status")).to_contain_text("100 %")


def test_a_leader_with_an_error_is_printed_only_anyway(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, "/print?leader=hasty-seven.toml&kind=counter")
    expect(page.locator("#heed")).to_contain_text("Hasty seven: error")
    expect(page.get_by_role("button", name="Download")).to_be_disabled()
    page.get_by_label("Print it anyway").check()
    ready(page)
    assert downloaded(page).startswith(b"%PDF")


def test_what_cannot_be_is_told_beside_its_field_and_stays_as_typed(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/print?leader=sandbar-eight.toml&kind=labels", width=320)
    start = page.get_by_label("First free label")
    start.fill("99")
    expect(page.locator("label").filter(has=start)).to_contain_text("write 1 to 30")
    expect(start).to_have_attribute("aria-invalid", "true")
    expect(start).to_have_value("99")
    start.fill("")
    ready(page)
    page.get_by_label("Label sheet").select_option("another size …")
    page.get_by_role("textbox", name="Its size").fill("12 x 9 mm")
    expect(page.locator("#faults")).to_contain_text("Sandbar eight")
    assert "--" not in page.locator("#faults").inner_text()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_many_leaders_are_counted_when_asked(served: Served, opened: Opened) -> None:
    recipe = (SAMPLES / "gravel-five.toml").read_text("utf-8")
    for number in range(31):
        name = f"<script>{number}</script>"
        (served.folder / f"a{number}.toml").write_text(recipe.replace("Gravel five", name), "utf-8")
    page = opened(served, "/print?kind=labels")
    page.get_by_role("checkbox").first.check()  # whose answer comes when more are chosen
    page.get_by_role("button", name="Tick all shown").click()
    expect(page.locator("#told")).to_contain_text("31 leaders")
    page.get_by_role("button", name="Count the pages").click()
    expect(page.locator("#told")).to_have_text("2 pages, 31 labels")
    assert "<script>30</script>" in page.locator("#chosen").inner_text()


def test_a_card_is_kept_as_a_picture(shop_folder: Served, opened: Opened) -> None:
    page = opened(shop_folder, "/print?leader=sandbar-eight.toml&variant=in hard wind")
    page.get_by_label("Size of the card").select_option("A7")
    ready(page)
    picture = Image.open(io.BytesIO(downloaded(page, "Keep as picture")))
    assert picture.format == "PNG"
    assert picture.width == pytest.approx(105 / 25.4 * 300, abs=picture.width / 4)


def test_what_the_page_asks_may_name_no_file_elsewhere(tmp_path: Path) -> None:
    (tmp_path / "bench").mkdir()
    (tmp_path / "out.toml").write_bytes((SAMPLES / "gravel-five.toml").read_bytes())
    desk = Desk(tmp_path / "bench")
    (tmp_path / "bench" / "in.toml").symlink_to(tmp_path / "out.toml")
    for name in ("../out.toml", "in.toml", str(tmp_path / "out.toml")):
        with pytest.raises(Refused):
            plan(desk, {"kind": "cards", "leaders": [[name, ""]], "typed": {}})


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("cards", "1 página, 2 tarjetas en 4 caras"),
        ("labels", "1 etiqueta"),
        ("bench", "página"),
        ("counter", "1 página"),
        ("knots", "tarjeta"),
    ],
)
def test_each_kind_is_told_in_the_language_of_the_shop(
    tmp_path: Path, kind: str, told: str
) -> None:
    (tmp_path / "gravel-five.toml").write_bytes((SAMPLES / "gravel-five.toml").read_bytes())
    (tmp_path / "shop.toml").write_text('language = "es"\n', encoding="utf-8")
    desk = Desk(tmp_path)
    made = plan(desk, {"kind": kind, "leaders": [["gravel-five.toml", ""]], "typed": {}})
    assert told in made["told"]
    found = pypdf.PdfReader(io.BytesIO(desk.prints[made["at"]]))
    assert len(found.pages) == len(made["pages"])
    assert [*found.attachments] == ["gravel-five.toml"]
