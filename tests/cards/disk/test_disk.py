"""A file is replaced whole or left as it was."""

import os
import stat
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tagend.cards.disk.disk import write_whole
from tagend.layouts.base.faults import Refused


def listing(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_is_written(tmp_path: Path) -> None:
    write_whole(str(tmp_path / "card.pdf"), b"new")
    assert (tmp_path / "card.pdf").read_bytes() == b"new"
    assert listing(tmp_path) == ["card.pdf"]


def test_an_existing_file_is_replaced(tmp_path: Path) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"a much longer old file")
    write_whole(str(target), b"new")
    assert target.read_bytes() == b"new"


def test_whoever_reads_meanwhile_keeps_the_old_file_whole(tmp_path: Path) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"old")
    with target.open("rb") as reader:
        write_whole(str(target), b"new")
        assert reader.read() == b"old"


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o755])
def test_an_existing_files_permissions_stay(tmp_path: Path, mode: int) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"old")
    target.chmod(mode)
    write_whole(str(target), b"new")
    assert stat.S_IMODE(target.stat().st_mode) == mode


@pytest.mark.skipif(sys.platform == "win32" or os.geteuid() != 0, reason="only root may give")
def test_an_existing_files_owner_stays(tmp_path: Path) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"old")
    os.chown(target, 65534, 65534)
    write_whole(str(target), b"new")
    assert (target.stat().st_uid, target.stat().st_gid) == (65534, 65534)


@pytest.mark.parametrize(("mask", "mode"), [(0o022, 0o644), (0o077, 0o600)])
def test_a_new_files_permissions_are_the_users_default(
    tmp_path: Path, mask: int, mode: int
) -> None:
    before = os.umask(mask)
    try:
        write_whole(str(tmp_path / "card.pdf"), b"new")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "card.pdf").stat().st_mode) == mode


def test_a_link_stays_a_link_and_its_target_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    target = tmp_path / "real" / "card.pdf"
    target.write_bytes(b"old")
    link = tmp_path / "link.pdf"
    link.symlink_to(target)
    write_whole(str(link), b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"


def test_that_a_hard_link_keeps_the_old_file_is_told_in_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target, other = tmp_path / "shop.toml", tmp_path / "other.toml"
    target.write_bytes(b"old")
    other.hardlink_to(target)
    write_whole(str(target), b"new")
    assert (target.read_bytes(), other.read_bytes()) == (b"new", b"old")
    assert "other hard links" in capsys.readouterr().err
    write_whole(str(target), b"newer")  # which has one name by now
    assert capsys.readouterr().err == ""


def test_a_link_to_nothing_yet_makes_what_it_points_at(tmp_path: Path) -> None:
    link = tmp_path / "link.pdf"
    link.symlink_to(tmp_path / "card.pdf")
    write_whole(str(link), b"new")
    assert link.is_symlink()
    assert (tmp_path / "card.pdf").read_bytes() == b"new"


def test_a_circle_of_links_is_refused(tmp_path: Path) -> None:
    link = tmp_path / "link.pdf"
    link.symlink_to(link)
    with pytest.raises(Refused, match="symbolic links"):
        write_whole(str(link), b"new")
    assert link.is_symlink()


def test_a_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="this is a folder; name a file in it") as caught:
        write_whole(str(tmp_path), b"new")
    assert caught.value.faults[0].where == str(tmp_path)
    assert listing(tmp_path) == []


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(Refused, match=r"there is no folder .*absent"):
        write_whole(str(tmp_path / "absent" / "card.pdf"), b"new")
    assert listing(tmp_path) == []


def test_what_is_not_an_ordinary_file_is_refused(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(Refused, match="this is not an ordinary file"):
        write_whole(str(tmp_path / "pipe"), b"new")
    assert stat.S_ISFIFO((tmp_path / "pipe").stat().st_mode)


@pytest.mark.parametrize("call", ["fsync", "replace"])
def test_a_failure_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str
) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, call, full)
    with pytest.raises(Refused, match="No space left on device") as caught:
        write_whole(str(target), b"new")
    assert caught.value.faults[0].where == str(target)  # not the name of a temporary file
    assert target.read_bytes() == b"old"
    assert listing(tmp_path) == ["card.pdf"]


def test_an_interruption_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "card.pdf"
    target.write_bytes(b"old")

    def interrupted(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_whole(str(target), b"new")
    assert target.read_bytes() == b"old"
    assert listing(tmp_path) == ["card.pdf"]


@pytest.fixture
def shared() -> Iterator[Path]:
    """Make a folder that everyone may reach; pytest's own are closed to other users."""
    with TemporaryDirectory() as folder:
        os.chmod(folder, 0o777)
        yield Path(folder)
        os.chmod(folder, 0o777)


@pytest.mark.parametrize(("closed", "mode"), [("card.pdf", 0o444), (".", 0o555)])
def test_without_permission_the_old_file_stays(shared: Path, closed: str, mode: int) -> None:
    target = shared / "card.pdf"
    target.write_bytes(b"old")
    target.chmod(0o666)
    (shared / closed).chmod(mode)
    script = (
        "import os, sys; from pathlib import Path\n"
        "from tagend.cards.disk.disk import write_whole\n"
        "if os.geteuid() == 0: os.setegid(65534); os.seteuid(65534)\n"  # root may do anything
        "write_whole(sys.argv[1], b'new')"
    )
    done = subprocess.run([sys.executable, "-c", script, target], capture_output=True, text=True)
    assert f"Refused: {target}: cannot be written: Permission denied; " in done.stderr
    assert target.read_bytes() == b"old"
    assert listing(shared) == ["card.pdf"]
