"""What a person calls things of the book in; the lots, spools or numbers that are meant out."""

import re
import unicodedata
from collections.abc import Iterable, Sequence

from tagend.layouts.base.faults import refused
from tagend.layouts.base.near_names import suggestion

_NUMBERS_MOST = 1_000_000
_RANGE = re.compile(r"(\d{1,9})(?:[-–](\d{1,9}))?")


def plain(name: str) -> str:
    """Return a name as the book compares it: `b-022` is `B 22`; case and signs don't count."""
    letters = unicodedata.normalize("NFKC", name).casefold()
    return re.sub(r"(?<!\d)0+(?=\d)", "", re.sub(r"[\W_]+", "", letters))


def meant(what: str, asked: str, known: Iterable[str]) -> str:
    """Return the one name that is meant: an exact one, or else the only one that is alike.

    Raises `Refused` where several are alike, which are listed, and with near ones where none is.
    """
    names = list(dict.fromkeys(known))
    if asked.strip() in names:
        return asked.strip()
    alike = [name for name in names if plain(name) == plain(asked)]
    if len(alike) == 1:
        return alike[0]
    if alike:
        listed = ", ".join(map(repr, alike))
        raise refused(f"{asked!r} may be {listed}", "write it just as one of them", what)
    instead = suggestion(plain(asked), {plain(name): name for name in names}) if names else ""
    raise refused(f"the book has no {what} {asked[:40]!r}", instead)


def numbers(words: Sequence[str]) -> tuple[int, ...]:
    """Return the numbers of leaders, in order: `12-15`, `0017`, `3,5`. Raises `Refused`."""
    found: set[int] = set()
    for word in filter(None, re.split(r"(?i:[,\s]|\bno\.)+", " ".join(words))):
        match = _RANGE.fullmatch(word)
        first, last = (int(match[1]), int(match[2] or match[1])) if match else (1, 0)
        if not 0 < first <= last or last - first > _NUMBERS_MOST:
            raise refused(f"{word[:40]!r} is no number", "write numbers such as 12-15 or 3,5")
        found.update(range(first, last + 1))
    return tuple(sorted(found))


def ranges(of: Iterable[int]) -> str:
    """Return numbers in few words: `12-15, 17`."""
    runs: list[list[int]] = []
    for number in sorted(of):
        if runs and number == runs[-1][-1] + 1:
            runs[-1][-1:] = [runs[-1][-1], number] if len(runs[-1]) == 1 else [number]
        else:
            runs.append([number])
    return ", ".join("-".join(map(str, run)) for run in runs)


def batch_number(word: str) -> int:
    """Return the number of a batch: `3`, `03`, `batch 3`. Raises `Refused`."""
    digits = re.sub(r"(?i)^\s*batch\s*", "", word).strip()
    if not re.fullmatch(r"(?a:\d{1,9})", digits):
        raise refused(f"{word[:40]!r} is no batch", "write its number, such as 3")
    return int(digits)
