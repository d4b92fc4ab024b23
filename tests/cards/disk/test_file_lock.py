import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from tagend.cards.disk.file_lock import alone
from tagend.layouts.base.faults import Refused
from tests.tree import ROOT

COUNT_UP = """
import sys
from pathlib import Path
from tagend.cards.disk.file_lock import alone
file = Path(sys.argv[1])
for _ in range(40):
    with alone(str(file)):
        file.write_text(str(int(file.read_text()) + 1))
"""


def start(script: str, *arguments: str | Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", script, *map(str, arguments)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        text=True,
    )


def test_processes_that_count_in_one_file_lose_no_count(tmp_path: Path) -> None:
    file = tmp_path / "count"
    file.write_text("0")
    runs = [start(COUNT_UP, file) for _ in range(5)]
    assert [run.communicate() and run.returncode for run in runs] == [0] * 5
    assert file.read_text() == "200"
    assert [path.name for path in tmp_path.iterdir()] == ["count"]


def test_patience_ends(tmp_path: Path) -> None:
    name = str(tmp_path / "rack.toml")
    with alone(name), pytest.raises(Refused) as refusal, alone(name, patience=0.1):
        pass
    assert str(refusal.value) == f"{name}: another run is still at work on this file; try again"
    with alone(name, patience=0.1):
        pass


def test_a_link_and_its_file_are_one(tmp_path: Path) -> None:
    link = tmp_path / "link.csv"
    link.symlink_to(tmp_path / "register.csv")
    with alone(str(link)), pytest.raises(Refused), alone(str(tmp_path / "register.csv"), 0.1):
        pass


def test_a_run_that_died_holds_nothing(tmp_path: Path) -> None:
    name = tmp_path / "register.csv"
    script = (
        "import os, sys\nfrom tagend.cards.disk.file_lock import alone\n"
        "with alone(sys.argv[1]):\n    os._exit(7)"
    )
    run = start(script, name)
    run.communicate()
    assert run.returncode == 7
    assert (tmp_path / ".register.csv.lock").exists()
    with alone(str(name), patience=0.1):
        pass
    assert list(tmp_path.iterdir()) == []


def test_whoever_waited_holds_a_lock_of_its_own(tmp_path: Path) -> None:
    lock = tmp_path / ".register.csv.lock"
    found: list[bool] = []

    def wait() -> None:
        with alone(str(tmp_path / "register.csv")):
            found.append(lock.exists())  # and not only the one that was taken away

    with alone(str(tmp_path / "register.csv")):
        waiting = threading.Thread(target=wait)
        waiting.start()
        waiting.join(0.2)
        assert found == []
    waiting.join()
    assert found == [True]


def test_what_goes_wrong_inside_lets_go(tmp_path: Path) -> None:
    name = str(tmp_path / "register.csv")
    with pytest.raises(KeyError), alone(name):
        raise KeyError
    with alone(name, patience=0.1):
        pass


def test_threads_take_turns_too(tmp_path: Path) -> None:
    name, inside, most = str(tmp_path / "register.csv"), [0], [0]

    def work() -> None:
        for _ in range(20):
            with alone(name):
                inside[0] += 1
                most[0] = max(most[0], inside[0])
                inside[0] -= 1

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert most == [1]


@pytest.mark.skipif(os.name == "nt", reason="Windows says it in other words")
def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    name = str(tmp_path / "none" / "register.csv")
    with pytest.raises(Refused) as refusal, alone(name):
        pass
    assert str(refusal.value) == (
        f"{name}: cannot be written: No such file or directory; "
        "name a file in a folder you may write to"
    )
