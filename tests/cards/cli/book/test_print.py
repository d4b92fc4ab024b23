from pathlib import Path

import pytest

from tests.cards.cli.book.conftest import Book, shown
from tests.cards.cli.conftest import Tagend


@pytest.fixture
def tied(book: Book, demo: Path) -> Book:
    book("tie", f"{demo}/sandbar-eight.toml=2", "--tied", "2026-02-01")
    book(
        "tie",
        f"{demo}/sandbar-eight.toml=3",
        f"{demo}/breakwater-ten.toml=2",
        "--tied",
        "2026-03-01",
    )
    return book


def test_labels_bear_the_books_numbers_days_and_lots(tied: Book, output: Path) -> None:
    assert tied("print", "2", "--labels", "-o", output).status == 0
    text = shown(output)
    assert [
        number for number in range(1, 9) if f"no. {number}\u00b7" in text.replace(" ·", "\u00b7")
    ] == [3, 4, 5, 6, 7]
    assert "2026-03-01" in text
    assert "2026-02-01" not in text
    assert "K 114, F 7" in text


def test_a_plan_tells_what_all_would_take_and_writes_nothing(tied: Book) -> None:
    run = tied("print", "2", "--labels", "--bench", "--plan")
    # Five leaders of batch 2; two pages of bench sheet at least, and one of labels.
    assert run.out.endswith("pages, 5 labels\n")
    assert tied("print", "2", "--labels").status == 2


def test_lost_labels_are_printed_again_with_their_numbers(tied: Book, output: Path) -> None:
    tied("print", "2", "--labels", "--numbers", "4,6", "-o", output)
    text = shown(output)
    assert ("no. 4" in text, "no. 6" in text) == (True, True)
    assert "no. 3" not in text
    assert tied("print", "2", "--labels", "--numbers", "99", "-o", output).status == 2


def test_a_bench_sheet_bears_numbers_batch_and_lots(tied: Book, output: Path) -> None:
    assert tied("print", "batch 2", "--bench", "-o", output).status == 0
    text = shown(output)
    assert "K 114" in text
    assert "Breakwater ten" in text


def test_all_of_a_batch_is_one_pdf_that_reads_back(
    tagend: Tagend, tied: Book, demo: Path, output: Path
) -> None:
    assert tied("print", "2", "--bench", "--labels", "--cards", "-o", output).status == 0
    run = tagend("read", output, "--check", "--book", demo / "season.db")
    assert "Sandbar eight: batch 2, no. 3-5" in run.err
    assert "Breakwater ten: batch 2, no. 6-7" in run.err


def test_a_corrected_leader_is_printed_as_it_is(tied: Book, output: Path) -> None:
    tied("correct", "4", "--tied", "2026-03-05")
    tied("print", "2", "--labels", "--numbers", "4", "-o", output)
    assert "2026-03-05" in shown(output)


def test_what_was_cut_otherwise_is_not_printed_as_if(tied: Book, demo: Path, output: Path) -> None:
    shop = demo / "own.toml"
    shop.write_text('[lap]\nblood = "14 in"\n')
    run = tied("print", "2", "--bench", "--shop", shop, "-o", output)
    assert run.status == 2
    assert "--shop" in run.err
    assert tied("print", "2", "--labels", "--shop", shop, "-o", output).status == 0


def test_a_batch_that_is_not_there_is_told(tied: Book, output: Path) -> None:
    run = tied("print", "9", "--bench", "-o", output)
    assert run.status == 2
    assert "there is no batch 9" in run.err
    tied("undo")
    assert "batch 2 was undone" in tied("print", "2", "--bench", "-o", output).err
    assert tied("print", "1", "-o", output).status == 2
    assert not output.exists()
