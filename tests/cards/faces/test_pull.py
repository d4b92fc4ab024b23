"""Pull sheets as text positions: every leader stands on a page, in the part that it belongs to."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.book.leaders import STATES, State
from tagend.cards.faces.page import NARROW_MARGIN
from tagend.cards.faces.pull import FoundLeader, PullSheet, pull_sheet
from tagend.cards.words.language import ENGLISH, Wording, wording_in
from tagend.fonts import OURS
from tagend.layouts.paper.face import Face
from tagend.layouts.stock.stock import paper
from tests.seen import faults, paths, runs, words

DAY = date(2026, 11, 27)


def found(number: int, state: State = "tied", remark: str | None = None) -> FoundLeader:
    return FoundLeader(
        number=number,
        recipe="Sandbar eight",
        tied=date(2026, 5, 31),
        holds="Stiff 25, lot B 22",
        state=state,
        remark=remark,
    )


def pages(
    *rows: FoundLeader, sheet: str = "Letter", wording: Wording = ENGLISH
) -> tuple[Face, ...]:
    return pull_sheet(PullSheet("lot B 22", DAY, rows), paper(sheet), wording, OURS)


def text(*rows: FoundLeader) -> str:
    return " ".join(words(page) for page in pages(*rows))


def test_those_in_a_wallet_come_first_by_number_then_the_given_and_the_discarded() -> None:
    of = (found(4, "discarded"), found(3, "given"), found(2, "fished"), found(1))
    (page,) = pages(*of)
    numbers = [run.text for run in runs(page) if run.size == 18]
    assert numbers == ["1", "2", "3", "4"]
    shown = words(page)
    heads = ("Pull from the wallets: 2", "Given away: 1", "Already discarded: 1")
    places = [shown.index(head) for head in heads]
    assert places == sorted(places)


def test_there_is_no_heading_over_nothing() -> None:
    assert "discarded" not in text(found(1))
    assert "wallets" not in text(found(1, "given"))


def test_a_row_says_all_that_is_known_on_one_line() -> None:
    (page,) = pages(found(141, "given", "to Ana"))
    (number,) = [run for run in runs(page) if run.text == "141"]
    row = [run.text for run in runs(page) if abs(run.y - number.y) < 0.1]
    assert row == ["141", "Sandbar eight", "2026-05-31", "Stiff 25, lot B 22", "given away"]
    assert "to Ana" in words(page)


def test_there_is_a_box_to_tick_left_of_each_number() -> None:
    (page,) = pages(*map(found, range(1, 8)))
    closed = [path for path in paths(page) if path.steps[-1] == ("close",)]
    assert len(closed) == 7


def test_type_is_large() -> None:
    (page,) = pages(found(141))
    sizes = {run.text: run.size for run in runs(page)}
    assert sizes["141"] == 18
    assert sizes["Sandbar eight"] == pytest.approx(13)


def test_hundreds_go_over_pages_each_with_its_head_and_none_is_lost() -> None:
    of = pages(*map(found, range(101, 401)))
    for number, page in enumerate(of, start=1):
        for said in ("lot B 22", "2026-11-27", f"page {number} of {len(of)}"):
            assert said in words(page)
        assert "no." in [run.text for run in runs(page)]
    numbers = [int(run.text) for page in of for run in runs(page) if run.size == 18]
    assert numbers == list(range(101, 401))


names = st.sampled_from(["Sandbar eight", "Millrace three, for low water and a long day " * 2])


@given(
    st.lists(st.tuples(names, st.sampled_from(STATES), st.none() | names), max_size=60),
    st.sampled_from(["Letter", "A4", "A5"]),
    st.sampled_from([ENGLISH, wording_in("es", None)]),
)
@settings(max_examples=15, deadline=None)
def test_every_page_is_readable(
    of: list[tuple[str, State, str | None]], sheet: str, wording: Wording
) -> None:
    rows = [
        FoundLeader(number=n, recipe=name, tied=DAY, holds=name, state=state, remark=remark)
        for n, (name, state, remark) in enumerate(of, start=998)
    ]
    for page in pages(*rows, sheet=sheet, wording=wording):
        assert faults(page, NARROW_MARGIN) == []
