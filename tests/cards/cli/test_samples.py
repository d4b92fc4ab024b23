from pathlib import Path

from tests.cards.cli.conftest import Tagend
from tests.tree import SAMPLES

SHIPPED = {
    file.name: file.read_bytes()
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
    others = {"rack.toml", "shop.toml", "taller.toml", "list.csv", "wrack-line.png"}
    for name in SHIPPED.keys() - others:
        assert tagend("check", folder / name).status in (0, 1)


def test_samples_may_be_written_again_over_themselves(tagend: Tagend, demo: Path) -> None:
    (demo / "sandbar-eight.toml").unlink()
    assert tagend("samples", demo).status == 0
    assert contents(demo) == SHIPPED


def test_a_persons_own_file_is_never_replaced(tagend: Tagend, tmp_path: Path) -> None:
    own = tmp_path / "sandbar-eight.toml"
    own.write_text("# mine\n")
    run = tagend("samples", tmp_path)
    assert run.status == 2
    assert run.faults == [
        f"{own}: this file is there already, and is yours; name another folder, or move it away"
    ]
    assert contents(tmp_path) == {"sandbar-eight.toml": b"# mine\n"}


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
