"""`tagend desk` from its first line to its end."""

import http.client
import shlex
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

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


def answer(address: str) -> http.client.HTTPResponse:
    parts = urlsplit(address)
    connection = http.client.HTTPConnection(str(parts.hostname), parts.port, timeout=20)
    connection.request("GET", f"{parts.path}?{parts.query}")
    return connection.getresponse()


def test_its_first_line_is_an_address_that_lets_in_whoever_has_it(demo: Path) -> None:
    with running(demo, "--no-open") as (_, address):
        assert urlsplit(address).hostname == "127.0.0.1"
        entered = answer(address)
        assert entered.status == 303
        assert "HttpOnly" in str(entered.getheader("set-cookie"))
        assert answer(address.partition("?")[0]).status == 403


@pytest.mark.skipif(sys.platform == "win32", reason="signals are of POSIX")
def test_ctrl_c_ends_it_without_a_word(demo: Path) -> None:
    with running(demo, "--no-open") as (desk, address):
        answer(address)
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
        assert answer(address).status == 303


def test_it_is_loaded_by_no_other_command() -> None:
    code = "import sys, tagend.cards.cli.check, tagend.cards.cli.cards; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert not {"starlette", "uvicorn", "jinja2", "tagend.cards.desk"} & set(done.stdout.split())
