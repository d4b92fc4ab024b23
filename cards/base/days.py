"""A day as people write it in: the date out, or what it may mean and how to write it."""

import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from datetime import date
from functools import cache
from typing import TypedDict, cast

from tagend.cards.base.named_table import read_our_file
from tagend.layouts.base.faults import refused


class _Calendar(TypedDict):
    day_first: bool
    months: Sequence[str]


_PARTS = re.compile(r"\d+|[^\W\d_]+")
_FILLERS = {"de", "del", "of", "st", "nd", "rd", "th"}


def read_day(written: str, *, day_first: bool = False) -> date:
    """Return the day of `2026-05-31`, `31 May 2026`, `31 de mayo de 2026` or `31/5/2026`.

    Of numbers that could be two days, the day comes first where that is so in the person's
    language, and where points stand between them: `3.4.2026`. Raises `Refused`.
    """
    text = written.strip()[:40]
    parts = [part for part in _PARTS.findall(text.casefold()) if part not in _FILLERS]
    days = list(dict.fromkeys(_days(parts)))
    if not days:
        raise refused(f"{text!r} is not a date", "write it as 2026-05-31 or 31 May 2026")
    if len(days) > 1 and not (day_first or "." in text):
        told = " or ".join(f"{day.day} {_english(day)}" for day in days)
        raise refused(f"{text!r} may be {told}", f"write {days[0]} or {days[1]}")
    return days[0]


def _days(parts: Sequence[str]) -> Iterator[date]:
    """Yield the days that three parts of a date can mean, with the day before the month first."""
    if len(parts) != 3:
        return
    if len(parts[0]) == 4 and parts[0].isdecimal():
        orders = [parts]
    else:
        day, month, year = parts
        orders = [(year, month, day), (year, day, month)]
    for year, month, day in orders:
        number = int(month) if month.isdecimal() else _months().get(month, 0)
        if len(year) == 4 and year.isdecimal() and day.isdecimal():
            with suppress(ValueError):
                yield date(int(year), number, int(day))


def day_first_in(language: str | None) -> bool:
    """Return whether the day comes first in a date of numbers, in a language that is known."""
    return language in _calendars() and _calendars()[language]["day_first"]


def _english(day: date) -> str:
    return _calendars()["en"]["months"][day.month - 1].title()


@cache
def _months() -> Mapping[str, int]:
    """Return the number of a month by its name, or the first three letters of it."""
    return {
        name[:length]: number
        for calendar in _calendars().values()
        for number, name in enumerate(calendar["months"], start=1)
        for length in (3, len(name))
    }


def _calendars() -> Mapping[str | None, _Calendar]:
    return cast(Mapping[str | None, _Calendar], read_our_file("base/calendars.toml"))


def months_before(day: date, months: int) -> date:
    """Return the same day of the month so many months earlier, or the last day of that month."""
    from calendar import monthrange  # it loads the locales of all the world

    year, month = divmod(12 * day.year + day.month - 1 - months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
