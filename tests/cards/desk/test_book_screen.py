"""The tying book on the page, held against the book's file."""

import re
import sqlite3
from collections.abc import Callable
from contextlib import closing
from io import BytesIO

import pytest
from click.testing import CliRunner
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tagend.cards.book.file import opened as book_opened
from tagend.cards.book.spools import spools
from tagend.cards.book.stored import nanometres
from tagend.cards.cli import commands
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.shop_file import practice_of, read_shop
from tagend.cards.recipe.recipe_file import read_recipe
from tests.bookkeeping import check_book
from tests.cards.desk.conftest import Served

Opened = Callable[..., Page]


@pytest.fixture
def with_book(shop_folder: Served) -> Served:
    """A desk over the samples and a book with the spools of their rack."""
    command(shop_folder, "start", "--rack", str(shop_folder.folder / "rack.toml"))
    return shop_folder


def command(served: Served, name: str, *words: str) -> str:
    """Run a command of the book as a person does beside the page."""
    here = {"TAGEND_BOOK": "book.db", "TAGEND_SHOP": "shop.toml"}
    environment = {key: str(served.folder / file) for key, file in here.items()}
    run = CliRunner(env=environment).invoke(commands, ["book", name, *words])
    assert run.exit_code == 0, run.output
    return run.output


def rows(served: Served, words: str) -> list[tuple[object, ...]]:
    """Return what the book's file answers."""
    with closing(sqlite3.connect(served.folder / "book.db")) as db:
        return list(map(tuple, db.execute(words)))


def left(served: Served) -> dict[str, str]:
    with book_opened(str(served.folder / "book.db")) as db:
        return {spool.label: spool.left.plain for spool in spools(db)}


def text_of(page: Page, address: str) -> str:
    """Return the text of a PDF that the page links to."""
    answer = page.request.get(address)
    assert answer.headers["content-type"] == "application/pdf", answer.text()
    return " ".join(each.extract_text() for each in PdfReader(BytesIO(answer.body())).pages)


def printed(page: Page, button: str, name: str) -> str:
    """Press what prints, and return the text of the PDF of a name that its window asks for."""
    with page.context.expect_event("request", lambda request: name in request.url) as asked:
        page.get_by_role("button", name=button).click()
    return text_of(page, asked.value.url)


def test_a_book_is_started_with_the_rack_and_gets_spools_typed_and_of_a_table(
    shop_folder: Served, opened: Opened
) -> None:
    page = opened(shop_folder, "/book/spools")  # where there is no book, that one can be started
    page.get_by_label("Who ties").fill("Ada")
    page.get_by_role("button", name="Start a tying book").click()
    expect(page.locator("#done")).to_contain_text("10 spools added")
    form = page.locator("form", has=page.get_by_label("Name on its label"))
    for label, text in (
        ("Name on its label", "<b>Fine</b>"),
        ("Material", "nylon"),
        ("Diameter", "thin"),
        ("Length left on it", "50 m"),
    ):
        form.get_by_label(label).fill(text)
    form.get_by_role("button", name="Add").click()
    diameter = form.get_by_label("Diameter")
    expect(diameter).to_have_attribute("aria-invalid", "true")
    expect(diameter).to_have_value("thin")
    diameter.fill("0.15 mm")
    form.get_by_role("button", name="Add").click()
    expect(page.locator(".spools b", has_text="<b>Fine</b>")).to_be_visible()
    table = b"label,material,diameter,left,lot\nLate,nylon,0.20 mm,30 m,Q 1\n"
    page.locator("input[type=file]").set_input_files(
        {"name": "more.csv", "mimeType": "text/csv", "buffer": table}
    )
    page.get_by_role("button", name="Add").last.click()
    expect(page.locator(".spools b", has_text="Late")).to_be_visible()
    assert rows(shop_folder, "SELECT label, lot FROM spool WHERE id > 10") == [
        ("<b>Fine</b>", None),
        ("Late", "Q 1"),
    ]
    assert {who for (who,) in rows(shop_folder, "SELECT who FROM entry")} == {"Ada"}


def test_a_batch_is_planned_tied_and_printed_with_the_line_drawn_exactly(
    with_book: Served, opened: Opened
) -> None:
    page = opened(with_book, "/book")
    page.get_by_label("Who ties").fill("Ada")
    page.get_by_label("Sandbar eight").fill("40")
    expect(page.locator("#plan")).to_contain_text("To buy first")
    tie = page.get_by_role("button", name="Tie these")
    expect(tie).to_be_disabled()
    page.get_by_label("Sandbar eight").fill("3")
    expect(page.locator("#plan")).to_contain_text("Stiff 25")
    expect(tie).to_be_enabled()
    assert rows(with_book, "SELECT count(*) FROM draw") == [(0,)]
    tie.click()
    expect(page.locator("#done")).to_contain_text("tied batch 1: 3 Sandbar eight (no. 1-3)")
    practice = practice_of(read_shop((with_book.folder / "shop.toml").read_bytes()))
    leader = work_out(
        read_recipe((with_book.folder / "sandbar-eight.toml").read_bytes(), practice), practice
    )
    drawn = rows(with_book, "SELECT section, sum(nm) FROM draw GROUP BY section ORDER BY section")
    assert drawn == [(piece.place, 3 * nanometres(piece.cut_mm)) for piece in leader.pieces]
    assert rows(with_book, "SELECT who FROM batch") == [("Ada",)]
    check_book(with_book.folder / "book.db")
    sheets = printed(page, "Print (PDF)", "batch/1.pdf")
    assert "Bench sheet" in sheets
    assert {f"no. {number}" for number in (1, 2, 3)} <= set(re.findall(r"no\. \d+", sheets))
    page.get_by_label("no. 2").check()
    again = printed(page, "Labels again (PDF)", "labels.pdf")
    assert set(re.findall(r"no\. \d+", again)) == {"no. 2"}
    page.get_by_role("link", name="Tie", exact=True).click()
    expect(page.locator(".choice li", has_text="Sandbar")).to_contain_text("3 in the wallets")


def test_a_plan_that_is_stale_is_told_anew_and_nothing_is_tied(
    with_book: Served, opened: Opened
) -> None:
    first, second = opened(with_book, "/book"), opened(with_book, "/book")
    for page in (first, second):
        page.get_by_label("Sandbar eight").fill("2")
        expect(page.get_by_role("button", name="Tie these")).to_be_enabled()
    second.get_by_role("button", name="Tie these").click()
    expect(second.locator("#done")).to_contain_text("no. 1-2")
    command(with_book, "correct", "--spool", "Stiff 13", "--left", "3 yd")
    first.get_by_role("button", name="Tie these").click()
    expect(first.get_by_role("alert")).to_contain_text("Nothing was tied")
    expect(first.get_by_label("Sandbar eight")).to_have_value("2")
    assert rows(with_book, "SELECT count(*) FROM leader") == [(2,)]
    first.get_by_role("button", name="Tie these").click()
    expect(first.locator("#done")).to_contain_text("no. 3-4")
    check_book(with_book.folder / "book.db")


def test_a_leader_with_an_error_is_tied_only_by_who_insists(
    with_book: Served, opened: Opened
) -> None:
    file = with_book.folder / "sandbar-eight.toml"
    file.write_text(file.read_text().replace('total = "11 ft"', 'total = "14 ft"'))
    page = opened(with_book, "/book")
    page.get_by_label("Sandbar eight").fill("1")
    expect(page.locator(".heeded .error")).to_be_visible()
    tie = page.get_by_role("button", name="Tie these")
    expect(tie).to_be_disabled()
    page.get_by_label("Tie them even so").check()
    tie.click()
    expect(page.locator("#done")).to_contain_text("tied batch 1")


def test_leaders_are_recalled_by_a_spool_and_marked_unless_they_changed_meanwhile(
    with_book: Served, opened: Opened
) -> None:
    folder = with_book.folder
    command(with_book, "tie", f"{folder}/sandbar-eight.toml=3", f"{folder}/breakwater-ten.toml=2")
    page = opened(with_book, "/book/spools")
    spool = page.locator(".spools li", has_text="Clear 8")
    spool.get_by_role("link", name="Which leaders hold it").click()
    expect(page.locator("#found")).to_have_text("3 of 5 leaders: no. 1-3")
    page.get_by_label("no. 1").check()
    page.get_by_label("no. 3").check()
    page.get_by_label("It is now").select_option("given")
    page.get_by_label("Remark").fill("to the <boat>")
    page.get_by_role("button", name="Mark").click()
    expect(page.locator("#done")).to_have_text("marked no. 1, 3 given: to the <boat>")
    assert "to the <boat>" in text_of(page, f"{with_book.origin}/book/pull.pdf?spool=Clear+8")
    command(with_book, "mark", "2", "fished")
    page.get_by_label("no. 2").check()
    page.get_by_label("It is now").select_option("discarded")
    page.get_by_role("button", name="Mark").click()
    expect(page.locator("#do .faults")).to_contain_text("marked no. 2 fished")
    states = [("given",), ("fished",), ("given",), ("tied",), ("tied",)]
    assert rows(with_book, "SELECT state FROM leader ORDER BY id") == states


def test_a_spool_is_put_right_and_that_is_undone(with_book: Served, opened: Opened) -> None:
    page = opened(with_book, "/book/spools")
    was = left(with_book)
    spool = page.locator(".spools li", has_text="Stiff 13")
    spool.get_by_text("Put right").first.click()
    spool.get_by_label("Really left on it").fill("5 1/2 yd")
    spool.get_by_role("button", name="Put right").click()
    expect(page.locator("#done")).to_have_text("Stiff 13: 5 1/2 yd left")
    assert left(with_book) == {**was, "Stiff 13": "5.5 yd"}
    page.get_by_role("link", name="What was done").click()
    page.get_by_role("button", name="Undo 2").click()
    expect(page.locator("#done")).to_contain_text("undid 2")
    assert left(with_book) == was
    page.get_by_role("button", name="Undo 3").click()
    expect(page.locator("#done")).to_contain_text("undid 3")
    assert left(with_book)["Stiff 13"] == "5.5 yd"


def test_what_was_really_cut_is_put_right(with_book: Served, opened: Opened) -> None:
    command(with_book, "tie", f"{with_book.folder}/sandbar-eight.toml=2")
    page = opened(with_book, "/book/leaders?batch=1")
    page.get_by_label("no. 2").check()
    page.get_by_text("Put right").first.click()
    page.get_by_label("Section").fill("6")
    page.get_by_label("a piece was spoiled").check()
    page.get_by_role("button", name="Put right").first.click()
    expect(page.locator("#done")).to_contain_text("no. 2, section 6: a piece spoiled")
    assert rows(with_book, "SELECT leader, section FROM draw WHERE kind = 'spoiled'") == [(2, 6)]
    check_book(with_book.folder / "book.db")
