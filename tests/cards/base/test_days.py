"""Days as people write them, in English and Spanish; what may be two days is asked about."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.days import _calendars, day_first_in, read_day
from tagend.cards.words.language import languages
from tagend.layouts.base.faults import Refused

MAY = date(2026, 5, 31)


@pytest.mark.parametrize(
    "written",
    ["2026-05-31", "2026/5/31", "31 May 2026", "31st of may, 2026", "May 31, 2026", "31-may-2026",
     "31 de mayo de 2026", "31/5/2026", "5/31/2026", "31.05.2026", " 31 MAYO 2026 "],
)  # fmt: skip
def test_a_day_is_read_as_people_write_it(written: str) -> None:
    assert read_day(written) == MAY


def test_numbers_that_may_be_two_days_are_one_only_where_the_day_comes_first() -> None:
    with pytest.raises(Refused, match="may be 3 April or 4 March; write 2026-04-03 or 2026-03-04"):
        read_day("3/4/2026")
    assert read_day("3/4/2026", day_first=True) == date(2026, 4, 3)
    assert read_day("3.4.2026") == date(2026, 4, 3)
    assert read_day("4/4/2026") == date(2026, 4, 4)


@pytest.mark.parametrize(
    "written", ["", "yesterday", "31/5/26", "30 February 2026", "2026-13-01", "31 Foo 2026", "May"]
)
def test_what_is_no_day_is_told_how_to_be_written(written: str) -> None:
    with pytest.raises(Refused, match="write it as 2026-05-31"):
        read_day(written)


def test_the_months_are_known_in_every_language() -> None:
    assert set(languages()) <= set(_calendars())
    assert all(len(calendar["months"]) == 12 for calendar in _calendars().values())
    assert (day_first_in("es"), day_first_in("en"), day_first_in(None)) == (True, False, False)


@given(st.dates(min_value=date(1000, 1, 1)), st.sampled_from(languages()))
def test_every_day_is_read_in_every_language(day: date, language: str) -> None:
    name = _calendars()[language]["months"][day.month - 1]
    for written in (
        day.isoformat(),
        f"{day.day} {name} {day.year}",
        f"{day.day} {name[:3]} {day.year}",
    ):
        assert read_day(written) == day
    assert read_day(f"{day.day}/{day.month}/{day.year}", day_first=True) == day
