"""Ctrl-C at any moment: no traceback, no half of a file, and nothing said that is not true."""

import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from time import monotonic, sleep

import pytest

from tagend.cards.disk import disk
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="signals are of POSIX")

# Ctrl-C comes as a module is loaded, or as a function is called, as one may see in the process.
STOPPED = """
import os, signal, sys
from importlib import abc
where = sys.argv.pop(1)
class Stopper(abc.MetaPathFinder):
    def find_spec(self, name, path, target=None):
        if name == where:
            os.kill(os.getpid(), signal.SIGINT)
sys.meta_path.insert(0, Stopper())
from tagend.cards.start import main
main()
"""


@pytest.mark.parametrize(
    "module",
    ["tagend.cards.cli", "click", "tagend.cards.cli.cards", "reportlab", "reportlab.lib.rl_accel"],
)
def test_it_may_come_while_a_module_is_loaded(demo: Path, module: str) -> None:
    command = ["cards", str(demo / "reedbed-six.toml"), "-o", str(demo / "out.pdf")]
    done = subprocess.run(
        [sys.executable, "-c", STOPPED, module, *command],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == -signal.SIGINT
    assert done.stderr == ""
    assert not (demo / "out.pdf").exists()


def test_whoever_asked_not_to_be_stopped_is_not(demo: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", STOPPED, "click", "check", str(demo / "reedbed-six.toml")],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_IGN),
    )
    assert (done.returncode, done.stderr) == (0, "")


class Strange(Exception):
    """What a library makes of any exception that it meets."""


@pytest.mark.parametrize("of_a_library", [True, False])
@pytest.mark.parametrize("written", [True, False])
def test_it_is_told_in_one_true_line(
    tagend: Tagend,
    demo: Path,
    monkeypatch: pytest.MonkeyPatch,
    of_a_library: bool,
    written: bool,
) -> None:
    def stopped(name: str, data: bytes) -> None:
        if written:
            disk.note_written(name)
        try:
            os.kill(os.getpid(), signal.SIGINT)
        except KeyboardInterrupt as error:
            raise (Strange if of_a_library else error)  # noqa: B904

    monkeypatch.setattr(disk, "_written", [])
    monkeypatch.setattr("tagend.cards.cli.output.write_whole", stopped)
    run = tagend("vary", demo / "reedbed-six.toml", "--total", "9 ft", "-o", demo / "out.toml")
    assert run.status == 2
    assert run.faults[-1].startswith("tagend: stopped")
    assert ("nothing was written" in run.faults[-1]) != written
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_what_was_written_before_is_not_denied(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "_written", [])
    assert tagend("vary", demo / "reedbed-six.toml", "--total", "9 ft", "-o", demo / "o.toml")
    assert disk.anything_written()


def test_it_is_heeded_where_a_library_drops_the_exception() -> None:
    dropped = """
import os, signal
from tagend.cards import cli
class Dropping:
    def __del__(self):
        os.kill(os.getpid(), signal.SIGINT)
with cli._stoppable():
    Dropping()
    print("went on")
"""
    done = subprocess.run(
        [sys.executable, "-c", dropped], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout, done.stderr) == (-signal.SIGINT, "", "")


def test_a_reader_of_strangers_files_is_ended_too(demo: Path) -> None:
    """The child outlives nobody: not a person's Ctrl-C, nor the end of its parent."""
    code = (
        "import os, signal, threading\n"
        "from tagend.layouts.strangers.apart import apart\n"
        "from tests.layouts.strangers import readers\n"
        "threading.Timer(1, os.kill, [os.getpid(), signal.SIGINT]).start()\n"
        "apart(readers.hangs, b'', 30)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        stdout=subprocess.PIPE,  # which the child would hold open
        stderr=subprocess.DEVNULL,
        timeout=15,
        check=False,
    )
    assert done.returncode == -signal.SIGINT


@pytest.mark.skipif(sys.platform != "linux", reason="processes are copied on Linux alone")
@pytest.mark.parametrize(("end", "whole_group"), [(signal.SIGINT, True), (signal.SIGKILL, False)])
def test_no_copy_of_the_process_is_left(demo: Path, end: signal.Signals, whole_group: bool) -> None:
    """Of many cards a copy makes half: Ctrl-C goes to it too, and without us it ends in the end."""
    names = [str(demo / "reedbed-six.toml")] * 100
    run = subprocess.Popen(
        [sys.executable, "-c", TWO_CORES, "cards", *names, "-o", str(demo / "out.pdf")],
        cwd=ROOT,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    children = Path(f"/proc/{run.pid}/task/{run.pid}/children")
    wait_until(lambda: children.read_text() != "")
    (os.killpg if whole_group else os.kill)(run.pid, end)
    _, told = run.communicate(timeout=60)
    assert run.returncode != 0
    assert told in ("", "\ntagend: stopped; nothing was written\n")
    wait_until(lambda: not is_group(run.pid))
    assert not (demo / "out.pdf").exists()


TWO_CORES = """
from tagend.layouts.base import cores
cores._cores = lambda: 2
from tagend.cards.start import main
main()
"""


def is_group(group: int) -> bool:
    try:
        os.killpg(group, 0)
    except ProcessLookupError:
        return False
    return True


def wait_until(holds: Callable[[], bool]) -> None:
    end = monotonic() + 60
    while not holds():
        assert monotonic() < end
        sleep(0.01)
