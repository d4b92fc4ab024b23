"""Lengths and days as they stand in the file of a book: values in, its numbers and texts out."""

import sqlite3
from datetime import date

from cfractions import Fraction

NM = 10**6  # in a millimetre


def nanometres(mm: Fraction) -> int:
    """Return a length as the file holds it: rounded down, so that no spool gives what it lacks."""
    return int(mm * NM // 1)


def millimetres(nm: int) -> Fraction:
    """Return a length of the file."""
    return Fraction(nm, NM)


def day(written: str | None) -> date | None:
    """Return a day of the file, where there is one."""
    return None if written is None else read_day(written)


def read_day(written: str) -> date:
    """Return a day of the file. Raises an error of the file for what is none."""
    try:
        return date.fromisoformat(written)
    except (TypeError, ValueError):
        raise sqlite3.DatabaseError(f"{written!r} is no day") from None
