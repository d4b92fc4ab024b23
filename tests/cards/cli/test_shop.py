"""`tagend shop`: answers in, a shop file out that prints; in one that is there the rest stays."""

from collections.abc import Callable, Sequence
from pathlib import Path
from unittest.mock import patch

from click.testing import CliRunner, Result

from tagend.cards.cli import shop
from tagend.cards.cli.dialogue import Dialogue, hold
from tagend.cards.cli.shop import command
from tagend.cards.practice.shop_file import read_shop
from tagend.layouts.base.faults import Refused
from tests.tree import ROOT

LOGO = ROOT / "samples" / "wrack-line.png"
ANSWERS = (
    *("The Low Tide", "Tied by hand", "-", str(LOGO), "es"),
    *("cm and in", "A4", "A7", "a4-3x8-70x37", "5 mm"),
)


def answered(answers: Sequence[str], path: Path) -> Result:
    return CliRunner().invoke(command, [str(path)], input="".join(f"{a}\n" for a in answers))


def test_the_answers_become_a_shop_file_with_comments(tmp_path: Path) -> None:
    run = answered(ANSWERS, tmp_path / "mine")
    assert run.exit_code == 0, run.output
    text = (tmp_path / "mine.toml").read_text("utf-8")
    found = read_shop(text.encode())
    assert (found.name, found.line, found.address) == ("The Low Tide", "Tied by hand", None)
    assert (found.language, found.units, found.paper) == ("es", "cm and in", "A4")
    assert str(found.tape) == "5 mm"
    assert found.lap is None  # an example is a comment, and nobody's own figure
    assert '# address = "' in text
    assert "# blood = " in text
    assert str(tmp_path / "mine.toml") in run.stderr.rpartition("next: ")[2]


def test_without_any_answer_nothing_is_written(tmp_path: Path) -> None:
    run = answered([], tmp_path / "mine.toml")
    assert isinstance(run.exception, Refused)
    assert "nothing was answered" in str(run.exception)
    assert list(tmp_path.iterdir()) == []


def test_what_cannot_be_is_told_and_asked_for_again(tmp_path: Path) -> None:
    wrong = ["a" * 61, *ANSWERS[:3], "none.png", str(LOGO), "fr", "en", "feet", "in", "Leter"]
    wrong += ["Letter", "A7", "letter-3x10", "letter-3x10-66.7x25.4", "1/4", "1/4 in"]
    run = answered(wrong, tmp_path / "mine.toml")
    assert run.exit_code == 0, run.output
    for told in ("at most 60", "no such file", "en, es", "did you mean Letter", "has no unit"):
        assert told in run.stderr, told
    assert read_shop((tmp_path / "mine.toml").read_bytes()).labels == "letter-3x10-66.7x25.4"


def test_of_a_file_that_is_there_only_what_is_answered_changes(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    before = '\ufeff# ours\r\nname = "Old"  # a name\r\nline = "x"\r\n[lap]\r\nblood = "8 in"\r\n'
    path.write_bytes(before.encode())
    run = answered(["New", "-", "", "", "", "", "A4"], path)
    assert run.exit_code == 0, run.output
    after = path.read_bytes().decode()
    assert after == before.replace('"Old"', '"New"').replace('line = "x"\r\n', "").replace(
        "# ours", 'paper = "A4"\r\n# ours'
    )


def test_a_file_that_changes_meanwhile_is_left(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text('name = "Old"\n')

    def meanwhile(begin: Callable[[], Dialogue[object]]) -> object:
        answers = hold(begin)
        path.write_text('name = "Another"\n')
        return answers

    with patch.object(shop, "hold", meanwhile):
        run = answered(["New"], path)
    assert "changed meanwhile" in str(run.exception)
    assert path.read_text() == 'name = "Another"\n'
