"""Whatever is done to a book, in whatever order, it says what a plain account of it says.

The account below is dicts and sums, and knows nothing of SQL.
"""

from copy import deepcopy
from datetime import date, timedelta
from pathlib import Path
from shutil import rmtree
from tempfile import mkdtemp
from typing import Any

import pytest
from cfractions import Fraction
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from msgspec import Struct, field

from tagend.cards.base.units import parse_length
from tagend.cards.book.changes import changing
from tagend.cards.book.correcting import (
    SPOOL_STATES,
    SpoolState,
    Used,
    correct_day,
    correct_spool,
    correct_use,
    mark_spool,
    spool_called,
    untie,
)
from tagend.cards.book.file import copied, opened
from tagend.cards.book.history import history, undo
from tagend.cards.book.leaders import STATES, Sought, State, left, mark, recall
from tagend.cards.book.spools import add, spools
from tagend.cards.book.tying import tie
from tagend.cards.practice.rack_file import Rack, read_left
from tagend.layouts.base.faults import Refused
from tests.bookkeeping import (
    NOW,
    RECIPES,
    SPOOLS,
    TODAY,
    check_book,
    contents,
    everything,
    new_book,
    order,
    spool,
)

NM_IN = 25_400_000
_NM = {"in": NM_IN, "ft": 12 * NM_IN, "yd": 36 * NM_IN, "m": 10**9}


class Account(Struct):
    """What is in the book, by a second bookkeeper."""

    bought: dict[str, int] = field(default_factory=dict)  # nm by label
    lots: dict[str, str | None] = field(default_factory=dict)
    closed: dict[str, set[str]] = field(default_factory=dict)  # bad, empty
    draws: list[tuple[str, int, int | None, int | None, str]] = field(default_factory=list)
    leaders: dict[int, dict[str, Any]] = field(default_factory=dict)

    def left(self, label: str) -> int:
        return self.bought[label] - sum(nm for of, nm, *_ in self.draws if of == label)

    def called(self, asked: str | None) -> str | None:
        """Return the label that is meant, in which case makes no difference."""
        return next((of for of in self.bought if asked and of.casefold() == asked.casefold()), None)

    def holding(self, labels: set[str]) -> set[int]:
        return {
            number
            for of, _, number, _, kind in self.draws
            if of in labels and kind == "tied" and number is not None
        }


def nm(words: str) -> int:
    """Return a length in whole nm, by another way than the book's."""
    number, unit = words.split()
    return int(
        Fraction(number) * {"in": NM_IN, "m": 10**9, "yd": 914_400_000, "ft": 304_800_000}[unit]
    )


def cut_nm(recipe: str, part: int) -> int:
    whole = sum(Fraction(word) for word in RECIPES[recipe][part - 1].removesuffix(" in").split())
    return int(whole * NM_IN)


days = st.integers(0, 9).map(lambda n: TODAY - timedelta(n))
lengths = st.sampled_from(["0 m", "1/7 in", "3 m", "100 in", "20 m"])
labels = st.sampled_from([each.label for each in SPOOLS] + ["Late 1", "Late 2"])


class Season(RuleBasedStateMachine):
    """Everything that a person may do, and every refusal."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(mkdtemp())
        self.file = self.folder / "book.db"
        self.account = Account()
        self.given: list[int] = []  # numbers, as they were given
        self.batches: list[int] = []
        self.stack: list[tuple[int, Account, dict[str, Any]]] = []  # entry, what was before it
        self.redo: tuple[int, Account, dict[str, Any]] | None = None

    def teardown(self) -> None:
        rmtree(self.folder)

    @initialize()
    def start(self) -> None:
        new_book(self.file)
        with opened(str(self.file)) as db:
            self.note_spools(SPOOLS)
            # An empty book is before it.
            self.stack = [(1, Account(), {table: [] for table in contents(db)})]

    def note_spools(self, those: Any) -> None:
        for one in those:
            self.account.bought[one.label] = nm(one.left.plain)
            self.account.lots[one.label] = one.lot
            self.account.closed[one.label] = set()

    def do(self, action: Any) -> bool:
        """Do something whole; where it is refused, hold the book to be as it was."""
        before = everything(self.file)
        with opened(str(self.file)) as db:
            was = contents(db)
            try:
                with changing(db, NOW) as change:
                    action(change)
                    change.tell(change.told or "done")
                    number, any_change = change.number, change.any
            except Refused:
                assert everything(self.file) == before
                return False
        if not any_change:  # which leaves no entry to take back
            assert everything(self.file) == before
            return True
        self.stack.append((number, deepcopy(self.account), was))
        self.redo = None
        return True

    @rule(
        label=st.sampled_from(["Late 1", "Late 2", "late 1"]),
        lot=st.sampled_from([None, "f 7", "Z"]),
    )
    def add_spool(self, label: str, lot: str | None) -> None:
        new = spool(label, "7 m", lot, "0.012 in")
        known = self.account.called(label)
        done = self.do(lambda change: add(change, Rack((new,))))
        assert done == (known is None or self.account.lots[known] == lot)
        if known is None:
            self.note_spools([new])

    @rule(
        counts=st.dictionaries(st.sampled_from(list(RECIPES)), st.integers(1, 12), min_size=1),
        day=days,
    )
    def tie_batch(self, counts: dict[str, int], day: date) -> None:
        made: list[Any] = []

        def action(change: Any) -> None:
            orders = [order(name, count) for name, count in counts.items()]
            done = tie(change, orders, day, "Ada")
            if done.batch.shortages:
                raise Refused
            made.append(done)

        if not self.do(action):
            return
        (done,) = made
        assert done.number not in self.batches
        self.batches.append(done.number)
        for name, of in zip(counts, done.batch.orders, strict=True):
            assert len(of.numbers) == counts[name]
            assert min(of.numbers) > max(self.given, default=0)
            self.given += of.numbers
            for number in of.numbers:
                self.account.leaders[number] = {
                    "recipe": name,
                    "batch": done.number,
                    "tied": day,
                    "state": "tied",
                    "remark": None,
                }
        for pull in done.batch.pulls:
            assert not self.account.closed[pull.spool.label]
            for cut in pull.cuts:
                recipe, part = cut.leader.recipe.name, cut.piece.place
                for number in cut.numbers:
                    assert self.account.leaders[number]["recipe"] == recipe
                    self.account.draws.append(
                        (pull.spool.label, cut_nm(recipe, part), number, part, "tied")
                    )

    def some(self, data: Any) -> list[int]:
        """Draw numbers: of the book, or once given, or never."""
        known = st.sampled_from(self.given or [1]) | st.integers(1, 60)
        return sorted(data.draw(st.sets(known, min_size=1, max_size=4)))

    @rule(data=st.data(), state=st.sampled_from(STATES), remark=st.none() | st.just("to the boat"))
    def mark_leaders(self, data: Any, state: State, remark: str | None) -> None:
        numbers = self.some(data)
        known = set(numbers) <= set(self.account.leaders)
        assert self.do(lambda change: mark(change, numbers, state, TODAY, remark)) == known
        for number in numbers if known else ():
            one = self.account.leaders[number]
            one.update(state=state, remark=remark or one["remark"])

    @rule(label=labels, state=st.sampled_from(SPOOL_STATES))
    def mark_a_spool(self, label: str, state: SpoolState) -> None:
        of = self.account.called(label)
        done = self.do(
            lambda change: mark_spool(change, spool_called(change, label), state, TODAY, None)
        )
        assert done == (of is not None)
        if of and state == "good":
            self.account.closed[of] = set()
        elif of and state != "opened":
            self.account.closed[of].add(state)
        if of and state == "empty":
            self.account.draws.append((of, self.account.left(of), None, None, "measured"))

    @rule(label=labels, length=lengths)
    def measure_a_spool(self, label: str, length: str) -> None:
        of = self.account.called(label)

        def action(change: Any) -> None:
            correct_spool(change, spool_called(change, label), read_left(length), {})

        assert self.do(action) == (of is not None)
        if of:
            off = self.account.left(of) - nm(length)
            self.account.draws.append((of, off, None, None, "measured"))
            assert self.account.left(of) == nm(length)

    @rule(label=labels, lot=st.sampled_from(["B 22", "b-22", "F 7", "New"]))
    def correct_lot(self, label: str, lot: str) -> None:
        of = self.account.called(label)

        def action(change: Any) -> None:
            correct_spool(change, spool_called(change, label), None, {"lot": lot})

        assert self.do(action) == (of is not None)
        if of:
            self.account.lots[of] = lot

    @rule(data=st.data(), label=st.none() | labels, spoiled=st.booleans(), part=st.integers(1, 3))
    def correct_section(self, data: Any, label: str | None, spoiled: bool, part: int) -> None:
        numbers = self.some(data)
        cut = {
            (number, at): (of, nm)
            for of, nm, number, at, kind in self.account.draws
            if kind == "tied"
        }
        possible = all((number, part) in cut for number in numbers)
        new = self.account.called(label)
        possible = possible and (label is None or new is not None)
        draws = list(self.account.draws)
        for number in numbers if possible else ():
            of, taken = cut[number, part]
            draws.remove((of, taken, number, part, "tied"))
            draws.append((new or of, taken, number, part, "tied"))
            if spoiled:
                draws.append((of, taken, number, part, "spoiled"))
        after = Account(bought=self.account.bought, draws=draws)
        possible = possible and all(after.left(one) >= 0 for one in after.bought)
        used = Used(section=part, spool=label, spoiled=spoiled)
        assert self.do(lambda change: correct_use(change, numbers, used)) == possible
        if possible:
            self.account.draws = draws

    @rule(data=st.data())
    def untie_leaders(self, data: Any) -> None:
        numbers = self.some(data)
        known = set(numbers) <= set(self.account.leaders)
        assert self.do(lambda change: untie(change, numbers)) == known
        for number in numbers if known else ():
            del self.account.leaders[number]
            self.account.draws = [draw for draw in self.account.draws if draw[2] != number]

    @rule(data=st.data(), day=days)
    def correct_days(self, data: Any, day: date) -> None:
        numbers = self.some(data)
        known = set(numbers) <= set(self.account.leaders)
        assert self.do(lambda change: correct_day(change, numbers, day)) == known
        for number in numbers if known else ():
            self.account.leaders[number]["tied"] = day

    @rule(named=st.booleans())
    def undo_the_last(self, named: bool) -> None:
        stack, account = list(self.stack), self.account
        last = stack[-1][0] if stack else 1
        with opened(str(self.file)) as db:
            now = contents(db)
        done = self.do(lambda change: undo(change, last if named else None))
        assert done == bool(stack)
        if not done:
            return
        entry = self.stack[-1][0]
        _, self.account, was = stack.pop()
        with opened(str(self.file)) as db:
            assert same(contents(db), was)
        self.stack, self.redo = stack, (entry, account, now)

    @precondition(lambda self: self.redo is not None)
    @rule()
    def regret_an_undoing(self) -> None:
        assert self.redo is not None
        entry, account, was = self.redo
        before, now = self.account, list(self.stack)
        assert self.do(lambda change: undo(change, entry))
        with opened(str(self.file)) as db:
            assert same(contents(db), was)
            standing = [one for one in history(db) if one.stands and not one.undoes]
        undone_by = self.stack[-1][0]
        self.account = account
        # What was undone stands again, so that it can be undone anew.
        self.stack = [*now, (standing[-1].number, before, self.stack[-1][2])]
        assert undone_by not in [one.number for one in standing]

    @rule(number=st.integers(1, 30))
    def undo_any(self, number: int) -> None:
        last = self.stack[-1][0] if self.stack else None
        with opened(str(self.file)) as db:
            may = {last, history(db)[-1].number}
        if number not in may:
            assert not self.do(lambda change: undo(change, number))

    @rule()
    def copy(self) -> None:
        name = self.folder / "copy.db"
        with opened(str(self.file)) as db:
            copied(db, str(name))
            with pytest.raises(Refused):
                copied(db, str(name))
        assert everything(name) == everything(self.file)
        name.unlink()

    @rule(
        label=st.none() | labels,
        lot=st.sampled_from([None, None, "B 22", "F 7"]),
        recipe=st.none() | st.sampled_from(list(RECIPES)),
        batch=st.none() | st.integers(1, 6),
        since=st.none() | days,
        before=st.none() | days,
        state=st.none() | st.sampled_from(STATES),
    )
    def recall_them(self, **asked: Any) -> None:
        account = self.account
        found = {
            number
            for number, one in account.leaders.items()
            if asked["recipe"] in (None, one["recipe"])
            and asked["batch"] in (None, one["batch"])
            and asked["state"] in (None, one["state"])
            and (asked["since"] is None or one["tied"] >= asked["since"])
            and (asked["before"] is None or one["tied"] < asked["before"])
        }
        if asked["label"] is not None or asked["lot"] is not None:
            found &= account.holding(
                {
                    label
                    for label in account.bought
                    if asked["label"] is None or label == account.called(asked["label"])
                    if asked["lot"] in (None, account.lots[label])
                }
            )
        sought = Sought(spool=asked.pop("label"), **asked)
        with opened(str(self.file)) as db:
            try:
                answer = recall(db, sought)
            except Refused:
                assert not found
            else:
                assert [one.number for one in answer.leaders] == sorted(found)
                assert answer.of == len(account.leaders)

    @invariant()
    def accounts_agree(self) -> None:
        if not self.file.exists():
            return
        check_book(self.file)
        with opened(str(self.file)) as db:
            for one in spools(db):
                drawn = self.account.bought[one.label] - self.account.left(one.label)
                assert int(one.left_mm * 10**6) == self.account.bought[one.label] - drawn >= 0
                assert one.lot == self.account.lots[one.label]
                assert {each for each in ("bad", "empty") if getattr(one, each)} == (
                    self.account.closed[one.label]
                )
            found = {one.number: one for one in recall(db, Sought()).leaders}
            assert set(found) == set(self.account.leaders)
            for number, kept in self.account.leaders.items():
                assert {key: getattr(found[number], key) for key in kept} == kept
                drawn_of = {
                    (part, of)
                    for of, _, at, part, kind in self.account.draws
                    if at == number and kind == "tied"
                }
                assert {(of.section, of.spool) for of in found[number].drawn} == drawn_of
            for recipe, states, oldest in left(db):
                of = [one for one in self.account.leaders.values() if one["recipe"] == recipe]
                assert {s: n for s, n in states.items() if n} == {
                    s: n for s in STATES if (n := sum(one["state"] == s for one in of))
                }
                here = [one["tied"] for one in of if one["state"] in ("tied", "fished")]
                assert oldest == min(here, default=None)


def same(now: dict[str, list[Any]], was: dict[str, list[Any]]) -> bool:
    return {table: sorted(rows) for table, rows in now.items()} == {
        table: sorted(rows) for table, rows in was.items()
    }


TestSeason = Season.TestCase
TestSeason.settings = settings(deadline=None, max_examples=25, stateful_step_count=25)


def test_lengths_of_the_account_are_those_of_the_readers() -> None:
    for words in ("1/7 in", "3 m", "100 in", "20 m"):
        assert nm(words) == int(parse_length(words).mm * 10**6)
