"""What a name stands for is looked at before it is read: nothing waits, nothing fills memory."""

import os
import sys
import threading
from pathlib import Path

import pytest

from tagend.cards.disk import disk
from tests.cards.cli.conftest import Outcome, Tagend

HUGE = 10 << 30  # bytes, of which none are on the disk

READING = {
    "recipe": ("check", "NAME"),
    "rack": ("cuts", "reedbed-six.toml", "--rack", "NAME"),
    "shop": ("check", "reedbed-six.toml", "--shop", "NAME"),
    "table": ("table", "NAME"),
    "source": ("read", "NAME"),
    "spools": ("book", "add", "NAME", "--book", "season.db"),
    "book": ("book", "show", "--book", "NAME"),
    "new book": ("book", "start", "--book", "NAME"),
    "logo": ("cards", "reedbed-six.toml", "--shop", "logo.toml", "-o", "out.pdf"),
    "font": ("cards", "reedbed-six.toml", "--shop", "font.toml", "-o", "out.pdf"),
}


@pytest.fixture
def here(demo: Path, tagend: Tagend, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(demo)
    assert tagend("book", "start", "--book", "season.db").status == 0
    return demo


def read(tagend: Tagend, here: Path, command: str, name: str) -> Outcome:
    for key in ("logo", "font"):
        (here / f"{key}.toml").write_text(f'{key} = "{name}"\n')
    return tagend(*(name if word == "NAME" else word for word in READING[command]))


def refused(outcome: Outcome, name: str) -> None:
    assert outcome.status == 2
    (line,) = outcome.faults
    assert f"{name}: " in line


@pytest.mark.skipif(sys.platform == "win32", reason="no pipe has a name there")
@pytest.mark.parametrize("command", READING)
def test_a_pipe_that_nothing_writes_into_is_refused(
    tagend: Tagend, here: Path, command: str
) -> None:
    os.mkfifo(here / "pipe")  # to open it would wait for ever
    refused(read(tagend, here, command, "pipe"), "pipe")


@pytest.mark.parametrize("command", READING)
def test_a_file_larger_than_memory_is_refused(tagend: Tagend, here: Path, command: str) -> None:
    with (here / "huge").open("wb") as file:
        file.truncate(HUGE)
    refused(read(tagend, here, command, "huge"), "huge")


@pytest.mark.skipif(not os.path.exists("/dev/zero"), reason="no such device")
@pytest.mark.parametrize("command", READING)
def test_a_file_without_end_is_refused(
    tagend: Tagend, here: Path, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    monkeypatch.setattr(disk, "LARGEST", 1 << 20)
    refused(read(tagend, here, command, "/dev/zero"), "/dev/zero")


@pytest.mark.parametrize("command", READING)
def test_a_folder_is_refused(tagend: Tagend, here: Path, command: str) -> None:
    (here / "folder").mkdir()
    refused(read(tagend, here, command, "folder"), "folder")


def test_standard_input_without_end_is_refused(
    tagend: Tagend, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "LARGEST", 1000)
    (line,) = tagend("check", "-", stdin=b"#" * 1001).faults
    assert "too large" in line


@pytest.mark.skipif(sys.platform == "win32", reason="no pipe has a name there")
def test_a_pipe_is_read_to_the_end_of_what_its_writer_says(tagend: Tagend, here: Path) -> None:
    os.mkfifo(here / "pipe")
    recipe = (here / "reedbed-six.toml").read_bytes()

    def write() -> None:
        with (here / "pipe").open("wb", buffering=0) as pipe:
            for start in range(0, len(recipe), 100):
                pipe.write(recipe[start : start + 100])

    keeper = os.open(here / "pipe", os.O_RDWR)  # as a shell holds the pipes that it gives names
    writer = threading.Thread(target=write)
    writer.start()
    threading.Timer(0.5, os.close, [keeper]).start()
    assert tagend("check", "pipe").out == tagend("check", "reedbed-six.toml").out
    writer.join()


def test_a_huge_file_is_replaced_by_nothing(tagend: Tagend, here: Path) -> None:
    with (here / "huge.pdf").open("wb") as file:
        file.truncate(HUGE)
    refused(tagend("cards", "reedbed-six.toml", "-o", "huge.pdf"), "huge.pdf")
    assert (here / "huge.pdf").stat().st_size == HUGE
