"""What a person has looked at is told from what was changed since."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tagend.cards.book.changes import Change
from tagend.cards.book.correcting import Used, correct_use, measure
from tagend.cards.book.file import opened
from tagend.cards.book.history import check_unchanged, last_entry
from tagend.cards.book.leaders import mark
from tagend.cards.book.spools import spools
from tagend.layouts.base.faults import Refused
from tests.bookkeeping import TODAY, change_of, new_book, tied


@pytest.fixture
def file(tmp_path: Path) -> Path:
    file = new_book(tmp_path / "book.db")
    tied(file, Short=2)
    return file


def ids(file: Path) -> dict[str, int]:
    with opened(str(file)) as db:
        return {spool.label: spool.id for spool in spools(db)}


def changed(file: Path, table: str, row: int, since: int) -> bool:
    with opened(str(file)) as db:
        try:
            check_unchanged(db, table, [row], since)
        except Refused:
            return True
        return False


def measured(change: Change) -> None:
    thin = next(spool for spool in spools(change.db) if spool.label == "Thin B")
    measure(change, thin, thin.left_mm - 1)


def recut(change: Change) -> None:
    """Say that a piece was of another spool than the batch was cut of: both have other rests."""
    correct_use(change, [1], Used(section=1, spool="Thick A"))


@pytest.mark.parametrize(
    ("act", "spools_of_it"),
    [
        (measured, {"Thin B"}),
        (
            lambda change: correct_use(change, [1], Used(section=1, spool="Thick A")),
            {"Thick A", "Thick C"},
        ),
        (lambda change: mark(change, [1], "fished", TODAY, None), set()),
    ],
)
def test_a_spool_is_changed_by_what_is_drawn_of_it_or_put_back(
    file: Path, act: Callable[[Change], None], spools_of_it: set[str]
) -> None:
    with opened(str(file)) as db:
        since = last_entry(db)
        before = {spool.label: spool.left_mm for spool in spools(db)}
    with change_of(file) as change:
        act(change)
        change.tell("done")
    with opened(str(file)) as db:
        after = {spool.label: spool.left_mm for spool in spools(db)}
    found = {label for label, row in ids(file).items() if changed(file, "spool", row, since)}
    assert found == spools_of_it
    assert {label for label in before if before[label] != after[label]} == spools_of_it


def test_only_the_leader_that_was_marked_is_changed(file: Path) -> None:
    with opened(str(file)) as db:
        since = last_entry(db)
    with change_of(file) as change:
        mark(change, [2], "given", TODAY, None)
    assert [changed(file, "leader", number, since) for number in (1, 2)] == [False, True]
    assert not changed(file, "leader", 2, since + 1)
