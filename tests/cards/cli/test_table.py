from pathlib import Path

import pytest

from tagend.cards.tables.columns import COLUMNS
from tagend.cards.tables.write_recipes import csv_table
from tests.cards.cli.conftest import Tagend
from tests.plausible import plausible_recipes

HEADER = "name,length,diameter,material\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    folder = tmp_path / "recipes"
    folder.mkdir()
    return folder


def names(folder: Path) -> list[str]:
    return sorted(file.name for file in folder.iterdir())


def test_the_sample_table_becomes_sound_recipe_files(
    tagend: Tagend, demo: Path, folder: Path
) -> None:
    run = tagend("table", demo / "list.csv", "-o", folder)
    assert (run.status, run.out, run.err) == (0, "", f"wrote 3 recipes into {folder}\n")
    assert names(folder) == ["groyne-nine.toml", "tarn-four.toml", "weir-five.toml"]
    assert tagend("check", *folder.iterdir()).status == 0


def test_recipes_come_back_from_their_table(tagend: Tagend, demo: Path, folder: Path) -> None:
    files = [demo / name for name in ("hasty-seven.toml", "reedbed-six.toml")]
    table = folder.parent / "all.CSV"
    run = tagend("table", *files, "-o", table)
    assert (run.status, run.out, run.err) == (0, "", f"wrote {table}\n")
    tagend("table", table, "-o", folder)
    for file in files:
        again = folder / file.name
        assert tagend("cuts", again).out == tagend("cuts", file).out


def test_wrong_cells_are_told_at_once_and_nothing_is_written(tagend: Tagend, folder: Path) -> None:
    table = folder.parent / "list.csv"
    table.write_text(f"{HEADER}Good,9 ft,4X,nylon\nBad,9,4X,nylo\nBetter,8 ft,4X,nylon\n")
    run = tagend("table", table, "-o", folder)
    assert (run.status, run.out) == (2, "")
    assert [line.partition(";")[0] for line in run.err.splitlines()] == [
        f"{table}: B3, length: '9' has no unit",
        f"{table}: D3, material: no material is called 'nylo'",
        "no recipe is written",
    ]
    assert names(folder) == []


def test_leaders_without_a_wrong_cell_can_be_written(tagend: Tagend, folder: Path) -> None:
    table = folder.parent / "list.csv"
    table.write_text(f"{HEADER}Good,9 ft,4X,nylon\nBad,9,4X,nylon\nBetter,8 ft,4X,nylon\n")
    run = tagend("table", table, "-o", folder, "--skip-wrong")
    assert (run.status, names(folder)) == (0, ["better.toml", "good.toml"])
    assert f"{table}: B3, length" in run.err


def test_one_table_that_is_none_does_not_hold_up_another(tagend: Tagend, folder: Path) -> None:
    table, none = folder.parent / "list.csv", folder.parent / "none.csv"
    table.write_text(f"{HEADER}Good,9 ft,4X,nylon\n")
    run = tagend("table", none, table, "-o", folder, "--skip-wrong")
    assert f"{none}: there is no such file" in run.err
    assert names(folder) == ["good.toml"]


def test_recipes_of_one_name_are_numbered(tagend: Tagend, folder: Path) -> None:
    text = "name,section,length,diameter,material\nLow,1,9 ft,4X,nylon\nLow,1,8 ft,4X,nylon\n"
    run = tagend("table", "-", "-o", folder, stdin=text.encode())
    assert run.status == 0
    assert names(folder) == ["low-2.toml", "low.toml"]


def test_a_table_leaves_out_variants_and_says_so(tagend: Tagend, demo: Path, folder: Path) -> None:
    recipe, table = demo / "sandbar-eight.toml", folder / "out.csv"
    run = tagend("table", recipe, "-o", table)
    assert (run.status, run.out) == (0, "")
    assert run.err.splitlines() == [
        f"wrote {table}",
        f"{recipe}: its 2 variants are not in the table; `tagend vary` makes recipes of them",
    ]


def test_a_table_is_not_begun_with_a_faulty_recipe(
    tagend: Tagend, demo: Path, folder: Path
) -> None:
    run = tagend("table", demo / "reedbed-six.toml", demo / "rack.toml", "-o", folder / "out.csv")
    assert run.status == 2
    assert names(folder) == []


def test_what_is_missing_is_told(tagend: Tagend) -> None:
    run = tagend("table")
    assert run.status == 2
    assert run.faults == ["tagend table: Missing argument 'SOURCE...'. See 'tagend table --help'."]


def test_without_a_folder_nothing_is_written(tagend: Tagend, demo: Path) -> None:
    before = names(demo)
    run = tagend("table", demo / "list.csv")
    assert (run.status, names(demo)) == (0, before)
    assert "3 leaders can be read" in run.err


def test_a_folder_that_is_not_there_is_made(tagend: Tagend, demo: Path, tmp_path: Path) -> None:
    missing = tmp_path / "not" / "there"
    assert tagend("table", demo / "list.csv", "-o", missing).status == 0
    assert len(names(missing)) == 3


def test_the_columns_are_described(tagend: Tagend) -> None:
    run = tagend("table", "--columns")
    assert run.status == 0
    assert "butt length (in)" in run.err
    assert [line.split()[0] for line in run.out.splitlines()] == list(COLUMNS)
    assert run.out.count("(needed)") == 4


def test_a_shops_list_of_200_recipes_comes_in_as_one_file(tagend: Tagend, folder: Path) -> None:
    table = folder.parent / "list.csv"
    table.write_bytes(csv_table(plausible_recipes(200)))
    run = tagend("table", table, "-o", folder)
    assert (run.status, run.err) == (0, f"wrote 200 recipes into {folder}\n")
    assert len(names(folder)) == 200


def test_files_that_would_be_lost_are_all_named_and_none_is_written(
    tagend: Tagend, demo: Path, folder: Path
) -> None:
    theirs = [folder / name for name in ("groyne-nine.toml", "weir-five.toml")]
    for file in theirs:
        file.write_text("# mine\n")
    run = tagend("table", demo / "list.csv", "-o", folder)
    assert run.status == 2
    assert [fault.split(": ")[0] for fault in sorted(run.faults)] == list(map(str, theirs))
    assert names(folder) == [file.name for file in theirs]
    assert {file.read_text() for file in theirs} == {"# mine\n"}
    assert tagend("table", demo / "list.csv", "-o", folder, "--replace").status == 0
    assert tagend("table", demo / "list.csv", "-o", folder).status == 0
    assert tagend("check", *folder.iterdir()).status == 0


def test_what_is_wrong_in_a_table_is_told_beside_what_would_be_lost(
    tagend: Tagend, demo: Path, folder: Path
) -> None:
    table = demo / "list.csv"
    table.write_text(table.read_text() + "Bad one,1 in,x,nylon\n")
    (folder / "weir-five.toml").write_text("# mine\n")
    run = tagend("table", table, "-o", folder, "--skip-wrong")
    assert run.status == 2
    assert any("C16, line_weight" in fault for fault in run.faults)
    assert any("weir-five.toml" in fault for fault in run.faults)
    assert names(folder) == ["weir-five.toml"]
