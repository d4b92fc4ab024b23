from pathlib import Path

from tests.cards.cli.conftest import Tagend


def test_a_book_begins_with_a_rack(tagend: Tagend, demo: Path) -> None:
    file = demo / "b.db"
    run = tagend("book", "start", "--rack", demo / "rack.toml", "--book", file)
    assert (run.status, run.out) == (0, "10 spools added\n")
    assert "Clear 8, lot F 7" in tagend("book", "show", "--book", file).out


def test_a_book_may_begin_empty(tagend: Tagend, demo: Path) -> None:
    assert tagend("book", "start", "--book", demo / "b.db").status == 0
    assert tagend("book", "add", demo / "rack.toml", "--book", demo / "b.db").status == 0


def test_a_book_is_not_begun_twice(tagend: Tagend, demo: Path) -> None:
    file = demo / "b.db"
    tagend("book", "start", "--rack", demo / "rack.toml", "--book", file)
    before = file.read_bytes()
    run = tagend("book", "start", "--rack", demo / "rack.toml", "--book", file)
    assert run.status == 2
    assert "book add" in run.err
    assert file.read_bytes() == before


def test_a_wrong_rack_begins_nothing(tagend: Tagend, demo: Path) -> None:
    (demo / "wrong.toml").write_text("[[spool]]\nlabel = 'x'\n")
    run = tagend("book", "start", "--rack", demo / "wrong.toml", "--book", demo / "b.db")
    assert run.status == 2
    assert not (demo / "b.db").exists()


def test_the_book_must_be_named_and_be_there(tagend: Tagend, demo: Path) -> None:
    assert "--book" in tagend("book", "show").err
    run = tagend("book", "show", "--book", demo / "none.db")
    assert run.status == 2
    assert "book start" in run.err
    assert not (demo / "none.db").exists()
