"""Whatever the standard streams are, a command ends with a true status and without a traceback."""

import os
import subprocess
import sys
from itertools import product
from pathlib import Path

import pytest

from tagend.cards.cli.streams import unobeyed
from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT

REFUSED, UNHEARD = 2, 3

pytestmark = pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no such device")

SAYING = {  # on standard output
    "check": "check reedbed-six.toml",
    "cuts": "cuts reedbed-six.toml --json",
    "plan": "cards reedbed-six.toml --plan",
    "show": "book show --book season.db",
    "tie": "book tie sandbar-eight.toml=1 --book season.db",
    "version": "--version",
}
WRITING = {"vary": "vary reedbed-six.toml --total 9ft -o out.toml --replace"}
ASKING = {"new": "new -o out.toml", "check": "check -", "read": "read -", "table": "table -"}


@pytest.fixture
def here(demo: Path, tagend: Tagend) -> Path:
    assert (
        tagend(
            *("book", "start", "--rack", demo / "rack.toml", "--book", demo / "season.db")
        ).status
        == 0
    )
    return demo


def run(here: Path, words: str, redirected: str, **environment: str) -> tuple[int, str]:
    """Return the status and the words of a command with its streams as a shell would have them."""
    shell = f'"$0" -m tagend.cards {words} {redirected}'
    done = subprocess.run(
        ["sh", "-c", shell, sys.executable],
        cwd=here,
        env={**os.environ, "PYTHONPATH": os.environ.get("PYTHONPATH", str(ROOT)), **environment},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
    )
    assert "Traceback" not in done.stderr
    assert "ignored" not in done.stderr
    return done.returncode, done.stderr


@pytest.mark.parametrize("command", SAYING)
@pytest.mark.parametrize("to", [">&-", ">/dev/full", "<&- >&-", ">&- 2>&-", ">/dev/full 2>&1"])
def test_what_cannot_be_said_has_a_status_of_its_own(here: Path, command: str, to: str) -> None:
    before = (here / "season.db").read_bytes()
    status, said = run(here, SAYING[command], to)
    assert status == UNHEARD
    assert said.count("\n") <= 1
    assert (here / "season.db").read_bytes() == before


@pytest.mark.parametrize("command", [*SAYING.values(), *WRITING.values()])
@pytest.mark.parametrize("to", ["<&-", "2>&-", "<&- 2>&-"])
def test_whoever_closes_what_is_not_needed_gets_what_was_asked(
    here: Path, command: str, to: str
) -> None:
    assert run(here, command, to)[0] == 0


@pytest.mark.parametrize("to", [">&-", "<&- >&- 2>&-", ">/dev/full"])
def test_a_file_is_written_whole_where_nothing_is_said_of_it(here: Path, to: str) -> None:
    assert run(here, WRITING["vary"], to)[0] == 0
    assert b"tagend-sum" in (here / "out.toml").read_bytes()


@pytest.mark.parametrize(
    ("command", "out", "err"),
    list(product(ASKING.values(), ["", ">&-"], ["", "2>&-", "2>/dev/full"])),
)
def test_no_answers_come_from_a_closed_input(here: Path, command: str, out: str, err: str) -> None:
    status, said = run(here, command, f"<&- {out} {err}")
    assert status == (UNHEARD if "full" in err else REFUSED)
    assert bool(said) == (err == "")
    assert not (here / "out.toml").exists()


@pytest.mark.parametrize("encoding", ["cp1252", "ascii", "utf-16"])
def test_what_a_program_reads_is_utf_8(here: Path, encoding: str, tagend: Tagend) -> None:
    named = (here / "reedbed-six.toml").read_text("utf-8").replace("Reedbed six", "Łosoś № 6 ″")
    (here / "named.toml").write_text(named, "utf-8")
    assert tagend("labels", here / "named.toml", "-o", here / "labels.pdf").status == 0
    strange = {"PYTHONIOENCODING": encoding, "PYTHONUTF8": "0", "LC_ALL": "C"}
    assert run(here, "read labels.pdf", ">again.toml", **strange)[0] == 0
    assert "Łosoś № 6 ″" in (here / "again.toml").read_text("utf-8")
    as_json = [tagend("cuts", here / name, "--json").out for name in ("named.toml", "again.toml")]
    assert as_json[0] == as_json[1]
    assert run(here, "cuts named.toml --json", ">cuts.json", **strange)[0] == 0
    assert (here / "cuts.json").read_text("utf-8") == as_json[0]


OBEYED = "\x1b\x07\x9b\u202e\u2066\u200f\r\x08"


@pytest.mark.parametrize("command", ["check", "read", "table", "cards", "book show --book", "none"])
def test_what_a_terminal_would_obey_never_reaches_it(
    tagend: Tagend, demo: Path, command: str
) -> None:
    for name in (f"{OBEYED}none", f"{OBEYED}.toml"):
        (demo / f"{OBEYED}.toml").write_text('"\\u001b[2J\\u202e" = "\\u001b[2J\\u202e"\n')
        run = tagend(*command.split(), demo / name, *(("-o", "x") if command == "cards" else ()))
        assert run.status == REFUSED
        assert not set(OBEYED) & set(run.err)


def test_an_option_and_a_variable_are_shown_harmlessly(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TAGEND_SHOP", OBEYED)
    for words in (("check",), ("check", f"--{OBEYED}"), (OBEYED,), ("cuts", "--count", OBEYED)):
        run = tagend(*words, demo / "reedbed-six.toml")
        assert run.status == REFUSED
        assert run.faults
        assert not set(OBEYED) & set(run.err)


def test_a_name_over_two_lines_is_told_on_one(tagend: Tagend) -> None:
    (line,) = tagend("check", "none\nsuch").faults
    assert "none\\nsuch" in line


@pytest.mark.skipif(sys.platform == "win32", reason="has no such terminal")
def test_a_terminal_shows_what_a_file_says_and_obeys_none_of_it(demo: Path) -> None:
    import pexpect

    wild = OBEYED[3:6]
    table = f"name,length,diameter,material,{wild}\nA,30 in,0.021 in,nylon,{wild}\n"
    (demo / "wild.csv").write_bytes(table.encode())
    talk = pexpect.spawn(
        sys.executable,
        ["-m", "tagend.cards", "table", str(demo / "wild.csv")],
        cwd=ROOT,
        encoding="utf-8",
        timeout=30,
    )
    talk.expect(pexpect.EOF)
    assert talk.before
    assert "taken as" in talk.before
    assert not set(OBEYED) - {"\r"} & set(talk.before)


def test_writing_of_all_kinds_is_unobeyed() -> None:
    text = "Łosoś, Лосось, 鮭, é, №, ½ ″\n\tsoft\u00adhyphen, narrow\u202fspace\n"
    assert unobeyed(text) == text
    assert unobeyed(unobeyed(OBEYED)) == unobeyed(OBEYED)
