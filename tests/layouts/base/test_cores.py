import os
import signal
import sys
from collections.abc import Callable
from threading import Thread

import pytest

from tagend.layouts.base import cores
from tagend.layouts.base.cores import made_of
from tagend.layouts.base.faults import Refused, refused

MANY = range(40)

copied = pytest.mark.skipif(sys.platform != "linux", reason="processes are copied on Linux alone")


@pytest.fixture(params=[1, 2, 3, 64])
def of_cores(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> int:
    number: int = request.param
    monkeypatch.setattr(cores, "_cores", lambda: number)
    return number


@copied
@pytest.mark.parametrize("items", [MANY, [], [7], range(9), range(10), range(11), range(19)])
def test_all_is_made_once_and_in_order(of_cores: int, items: list[int]) -> None:
    assert made_of(items, lambda item: item * item, 5) == [item * item for item in items]


@copied
def test_each_core_has_its_share(of_cores: int) -> None:
    processes = made_of(MANY, lambda _: os.getpid(), 10)
    assert len(set(processes)) == min(of_cores, 4)
    assert processes[0] == os.getpid()
    assert sorted(set(processes), key=processes.index) == list(dict.fromkeys(processes))


def test_few_are_made_by_one() -> None:
    assert set(made_of(range(19), lambda _: os.getpid(), 10)) == {os.getpid()}


def test_a_thread_copies_nothing() -> None:
    found: list[int] = []
    thread = Thread(target=lambda: found.extend(made_of(MANY, lambda _: os.getpid(), 1)))
    thread.start()
    thread.join()
    assert set(found) == {os.getpid()}


@copied
@pytest.mark.parametrize("bad", [0, 15, 39])
def test_what_a_copy_refuses_is_refused_here(of_cores: int, bad: int) -> None:
    def make(item: int) -> int:
        if item >= bad:
            raise refused(f"{item} is bad", "give another")
        return item

    with pytest.raises(Refused) as caught:
        made_of(MANY, make, 10)
    assert str(caught.value) == f"{bad} is bad; give another"


@copied
@pytest.mark.parametrize("end", [signal.SIGKILL, signal.SIGINT, signal.SIGTERM])
def test_the_share_of_a_copy_that_is_ended_is_made_here(of_cores: int, end: signal.Signals) -> None:
    here = os.getpid()

    def make(item: int) -> int:
        if os.getpid() != here:
            os.kill(os.getpid(), end)
        return item

    assert made_of(MANY, make, 10) == list(MANY)


@copied
def test_what_cannot_be_sent_is_made_here(of_cores: int) -> None:
    def make(item: int) -> Callable[[], int]:
        return lambda: item

    assert [made() for made in made_of(MANY, make, 10)] == list(MANY)


@copied
def test_where_there_is_no_room_for_a_copy_all_is_made_here(
    of_cores: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fork() -> int:
        raise BlockingIOError

    monkeypatch.setattr(os, "fork", fork)
    assert set(made_of(MANY, lambda _: os.getpid(), 10)) == {os.getpid()}


@copied
def test_no_copy_outlives_its_work(of_cores: int, monkeypatch: pytest.MonkeyPatch) -> None:
    here, fork, copies = os.getpid(), os.fork, set[int]()

    def noted() -> int:
        copies.add(copy := fork())
        return copy

    def make(_: int) -> None:
        if os.getpid() == here:
            raise KeyboardInterrupt
        signal.pause()

    monkeypatch.setattr(os, "fork", noted)
    with pytest.raises(KeyboardInterrupt):
        made_of(MANY, make, 10)
    assert len(copies) == min(of_cores, 4) - 1
    for copy in copies:
        with pytest.raises(ChildProcessError):
            os.waitpid(copy, os.WNOHANG)


@copied
def test_a_copy_ends_nothing_and_says_nothing_of_ours(
    of_cores: int, capfd: pytest.CaptureFixture[str]
) -> None:
    sys.stdout.write("begun ")
    made_of(MANY, lambda item: item, 10)
    sys.stdout.flush()
    assert capfd.readouterr().out == "begun "
