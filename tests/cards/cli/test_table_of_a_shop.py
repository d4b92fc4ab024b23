"""A shop's own spreadsheet: what it is taken as is shown and asked once, and kept beside it."""

import tomllib
from collections.abc import Callable
from io import TextIOWrapper
from pathlib import Path
from typing import Any

import pytest
from xlsxwriter import Workbook

from tests.cards.cli.conftest import Outcome, Tagend

NAMES = (
    "Mole",
    "Spit",
    "Bar",
    "Reef",
    "Cove",
    "Bay",
    "Strand",
    "Quay",
    "Pier",
    "Ebb",
    "Neap",
    "Tide",
)
Answered = Callable[..., Outcome]


class Terminal(TextIOWrapper):
    """Somebody who answers."""

    def isatty(self) -> bool:
        return True


@pytest.fixture
def answered(tagend: Tagend) -> Answered:
    def run(*arguments: str | Path, answers: tuple[str, ...]) -> Outcome:
        typed = "".join(f"{answer}\n" for answer in answers).encode()
        return tagend(*arguments, stdin=typed, reader=Terminal)

    return run


def fill(book: Any) -> None:
    """Write a list of twelve leaders: a title, headings in two rows, a sum below."""
    sheet = book.add_worksheet()
    sheet.merge_range("A1:K1", "Counter list, hard nylon")
    for column, part in ((2, "Butt"), (5, "Mid"), (8, "Tippet")):
        sheet.merge_range(2, column, 2, column + 2, part)
        sheet.write_row(3, column, ("length", "dia", "lb"))
    sheet.write_row(2, 0, ("Leader", "Wt"))
    sheet.write(2, 11, "Price")
    for row, name in enumerate(NAMES, start=4):
        sheet.write_row(
            row, 0, (f"{name} eight", 8, 48, 0.023, 25, 24, 0.02, 18, 24, 0.015, 10, 9.5)
        )
    sheet.write_row(16, 0, ("Total", None, 576))


@pytest.fixture
def table(tmp_path: Path) -> Path:
    book = Workbook(tmp_path / "list.xlsx")
    fill(book)
    book.close()
    return tmp_path / "list.xlsx"


def recipes(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.toml"))


def test_twelve_formulas_come_in_with_two_answers_and_next_month_with_none(
    answered: Answered, tagend: Tagend, table: Path
) -> None:
    folder = table.parent / "recipes"
    run = answered("table", table, "-o", folder, answers=("", ""))
    assert run.status == 0, run.err
    assert "Butt length" in run.out
    assert "left out" in run.out
    (first, *_) = written = recipes(folder)
    assert len(written) == 12
    section = tomllib.loads(first.read_text())["section"][0]
    assert section == {
        "length": "48 in",
        "diameter": "0.023 in",
        "material": "hard nylon",
        "strength": "25 lb",
        "part": "butt",
    }
    again = tagend("table", table, "-o", table.parent / "next")
    assert (again.status, len(recipes(table.parent / "next"))) == (0, 12)
    sheet = table.parent / "counter.pdf"
    assert tagend("counter", *written, "-o", sheet).status == 0
    assert sheet.exists()


def test_another_months_table_comes_in_by_the_file_of_this_one(
    answered: Answered, tagend: Tagend, table: Path
) -> None:
    answered("table", table, "-o", table.parent / "may", answers=("", ""))
    june = table.rename(table.parent / "june.xlsx")
    known = table.parent / "list.columns.toml"
    assert tagend("table", june, "--as", known, "-o", table.parent / "june").status == 0
    assert len(recipes(table.parent / "june")) == 12
    assert tagend("table", june, "-o", table.parent / "july").status == 0  # it has its own now


def test_without_a_terminal_the_missing_option_is_named(tagend: Tagend, table: Path) -> None:
    folder = table.parent / "recipes"
    run = tagend("table", table, "-o", folder)
    assert (run.status, "--units" in run.err, folder.exists()) == (2, True, False)
    run = tagend("table", table, "-o", folder, "--units", "in, in, lb")
    assert (run.status, "--material" in run.err, folder.exists()) == (2, True, False)
    run = tagend("table", table, "-o", folder, "--units", "in, in, lb", "--material", "nylon duro")
    assert (run.status, len(recipes(folder))) == (0, 12)


def test_a_doubtful_column_is_left_out_without_a_terminal(
    answered: Answered, tagend: Tagend, tmp_path: Path
) -> None:
    table = tmp_path / "list.csv"
    table.write_text(
        "Leader,Butt length (in),Butt dia,Tippet length (in),Tippet dia,material,Tipet strength\n"
        "Ebb six,50,.021,36,.011,nylon,8 lb\n"
    )
    assert tagend("table", table, "-o", tmp_path / "one").status == 0
    (one,) = recipes(tmp_path / "one")
    assert "strength" not in one.read_text()
    run = answered("table", table, "-o", tmp_path / "two", answers=("tippet strength",))
    assert run.status == 0, run.err
    (two,) = recipes(tmp_path / "two")
    assert 'strength = "8 lb"' in two.read_text()


def test_a_column_may_be_left_out_by_a_dash_and_a_slip_is_asked_again(
    answered: Answered, tmp_path: Path
) -> None:
    table = tmp_path / "list.csv"
    table.write_text("Leader,Length 1,Dia 1,material,Lenght 2\nEbb six,50,.021,nylon,9\n")
    run = answered("table", table, "-o", tmp_path / "out", answers=("-", "parsecs", "cm"))
    assert run.status == 0, run.err
    stored = tomllib.loads((tmp_path / "list.columns.toml").read_text())
    assert stored["columns"]["Lenght 2"] == ""
    assert "50 cm" in recipes(tmp_path / "out")[0].read_text()


def test_answers_that_a_person_has_changed_stay(answered: Answered, table: Path) -> None:
    kept = table.parent / "list.columns.toml"
    kept.write_text('# ours\n[missing]\nunits = "cm"\n[columns]\n"Price" = "note"\n')
    run = answered("table", table, "-o", table.parent / "out", answers=("",))
    assert run.status == 0, run.err
    assert kept.read_text().startswith("# ours\n")
    assert 'units = "cm"' in kept.read_text()
    assert 'material = "hard nylon"' in kept.read_text()


def test_pounds_alone_are_looked_up_on_the_rack(tagend: Tagend, demo: Path) -> None:
    table = demo / "pounds.csv"
    table.write_text(
        "Leader,Butt length (in),Butt lb,Tippet length (in),Tippet lb,material\n"
        "Neap eight,40,25,24,13,hard nylon\n"
    )
    run = tagend("table", table, "-o", demo / "out")
    assert run.status == 2
    assert "C2, diameter" in run.err
    assert "--rack" in run.err
    assert tagend("table", table, "-o", demo / "out", "--rack", demo / "rack.toml").status == 0
    assert 'diameter = "0.023 in"' in recipes(demo / "out")[0].read_text()


@pytest.mark.parametrize("kind", ["csv", "xlsx"])
def test_recipes_come_back_from_either_kind_without_a_question(
    answered: Answered, tagend: Tagend, demo: Path, kind: str
) -> None:
    files = [demo / name for name in ("hasty-seven.toml", "reedbed-six.toml")]
    table = demo / f"all.{kind}"
    assert tagend("table", *files, "-o", table).status == 0
    run = answered("table", table, "-o", demo / "out", answers=())
    assert (run.status, run.out) == (0, ""), run.err
    for file in files:
        again = tomllib.loads((demo / "out" / file.name).read_text())
        assert again == tomllib.loads(file.read_text())
    assert not (demo / "all.columns.toml").exists()


def test_the_note_of_a_program_that_has_the_table_open_is_told(
    tagend: Tagend, tmp_path: Path
) -> None:
    (tmp_path / "~$list.xlsx").write_bytes(b"x")
    run = tagend("table", tmp_path / "~$list.xlsx", "-o", tmp_path / "out")
    assert (run.status, "open elsewhere" in run.err) == (2, True)
