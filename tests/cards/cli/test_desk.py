"""`tagend desk` from its first line to its end."""

import shlex
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import httpx
import pytest

from tagend.cards.cli.lazy import examples
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT


@contextmanager
def running(folder: Path, *options: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """Yield a desk and the address that it has printed."""
    command = [sys.executable, "-m", "tagend.cards", "desk", *options]
    with subprocess.Popen(
        command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as desk:
        try:
            assert desk.stdout is not None
            yield desk, desk.stdout.readline().strip()
        finally:
            desk.kill()


def test_its_first_line_is_an_address_that_lets_in_whoever_has_it(demo: Path) -> None:
    with running(demo, "--no-open") as (_, address):
        assert urlsplit(address).hostname == "127.0.0.1"
        entered = httpx.get(address)
        assert entered.status_code == 303
        assert "HttpOnly" in entered.headers["set-cookie"]
        assert httpx.get(address.partition("?")[0]).status_code == 403


@pytest.mark.skipif(sys.platform == "win32", reason="signals are of POSIX")
def test_ctrl_c_ends_it_without_a_word(demo: Path) -> None:
    with running(demo, "--no-open") as (desk, address):
        httpx.get(address)
        desk.send_signal(signal.SIGINT)
        out, err = desk.communicate(timeout=20)
    assert (desk.returncode, out, err) == (0, "", "")


def test_a_port_that_is_taken_is_refused(demo: Path, tagend: Tagend) -> None:
    with running(demo, "--no-open") as (_, address):
        outcome = tagend("desk", str(demo), "--no-open", "--port", str(urlsplit(address).port))
    assert outcome.status == 2
    assert "--port" in outcome.err


def test_a_folder_that_is_none_is_refused(demo: Path, tagend: Tagend) -> None:
    outcome = tagend("desk", str(demo / "nowhere"), "--no-open")
    assert outcome.status == 2
    assert "no such folder" in outcome.err


@pytest.mark.parametrize("line", examples()["desk"])
def test_the_examples_of_its_help_serve_a_folder(demo: Path, line: str) -> None:
    options = shlex.split(line)[2:]
    with running(demo, *options, *([] if "--no-open" in options else ["--no-open"])) as (
        _,
        address,
    ):
        assert httpx.get(address).status_code == 303


def test_it_is_loaded_by_no_other_command() -> None:
    code = "import sys, tagend.cards.cli.check, tagend.cards.cli.cards; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert not {"starlette", "uvicorn", "jinja2", "tagend.cards.desk"} & set(done.stdout.split())
