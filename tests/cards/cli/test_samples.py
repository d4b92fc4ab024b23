from pathlib import Path

from tagend.cards.disk.seal import sealed
from tests.cards.cli.conftest import Tagend
from tests.tree import SAMPLES

SHIPPED = {
    file.name: sealed(file.read_bytes())
    for file in sorted(SAMPLES.iterdir())
    if file.name.endswith((".toml", ".csv", ".png"))
}


def contents(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in folder.iterdir()}


def test_samples_are_written_ready_to_run(tagend: Tagend, tmp_path: Path) -> None:
    folder = tmp_path / "new" / "demo"
    run = tagend("samples", folder)
    assert (run.status, run.out) == (0, "")
    assert run.err == f"wrote {len(SHIPPED)} files into {folder}\n"
    assert contents(folder) == SHIPPED
    others = {
        "rack.toml",
        "shop.toml",
        "hands.toml",
        "taller.toml",
        "list.csv",
        "formulas.csv",
        "wrack-line.png",
    }
    for name in SHIPPED.keys() - others:
        assert tagend("check", folder / name).status in (0, 1)


def test_samples_may_be_written_again_over_themselves(tagend: Tagend, demo: Path) -> None:
    (demo / "sandbar-eight.toml").unlink()
    assert tagend("samples", demo).status == 0
    assert contents(demo) == SHIPPED


def test_a_persons_own_files_are_all_named_and_none_is_written(
    tagend: Tagend, tmp_path: Path
) -> None:
    for name in ("sandbar-eight.toml", "list.csv"):
        (tmp_path / name).write_text("# mine\n")
    before = contents(tmp_path)
    run = tagend("samples", tmp_path)
    assert run.status == 2
    assert sorted(fault.split(";")[0] for fault in run.faults) == [
        f"{tmp_path / name}: nothing in this file says that tagend made it"
        for name in ("list.csv", "sandbar-eight.toml")
    ]
    assert contents(tmp_path) == before
    assert tagend("samples", tmp_path, "--replace").status == 0
    assert contents(tmp_path) == SHIPPED


def test_a_folder_of_a_samples_name_is_left_alone(tagend: Tagend, tmp_path: Path) -> None:
    (tmp_path / "rack.toml").mkdir()
    run = tagend("samples", tmp_path)
    assert (run.status, len(run.faults)) == (2, 1)
    assert [file.name for file in tmp_path.iterdir()] == ["rack.toml"]


def test_a_folder_that_cannot_be_made_is_told(tagend: Tagend, tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.touch()
    for folder in (file, file / "demo", tmp_path / ("a" * 300)):
        run = tagend("samples", folder)
        assert (run.status, len(run.faults)) == (2, 1)
        assert run.err.startswith(f"{folder}: cannot be made: ")
