"""Readers of single values in a file's tables: what a person wrote in, the value or a fault out."""

from collections.abc import Callable
from typing import TypeVar

from tagend.cards.base.file_schema import Schema, parsed, plain_text
from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion

T = TypeVar("T")


def by(read: Callable[[object], object]) -> Schema:
    """Return the schema of what `read` reads, refusing with `Refused`."""
    return parsed(read, "", [])


def text_line(most: int) -> Callable[[object], str]:
    """Return a reader of one line of 1 to `most` characters."""

    def read(value: object) -> str:
        # Our own files are nearly all such text, and are read each time the program starts.
        if (
            isinstance(value, str)
            and value.isascii()
            and value.isprintable()
            and 0 < len(value.strip()) == len(value) <= most
        ):
            return value
        return plain_text(value, most)

    return read


def one_of(*words: str) -> Callable[[object], str]:
    """Return a reader of one of these words."""

    def read(value: object) -> str:
        if value not in words:
            raise refused(f"{str(value)[:40]!r} is not known", suggestion(str(value), words))
        return str(value)

    return read


def list_of(
    read: Callable[[object], T], word: str, least: int, most: int
) -> Callable[[object], tuple[T, ...]]:
    """Return a reader of a list; its faults say the `word` for an item and count from 1."""

    def read_all(values: object) -> tuple[T, ...]:
        if not isinstance(values, list) or not least <= len(values) <= most:
            few = str(least) if least == most else f"{least} to {most}"
            raise refused(f"this is not a list of {few} {word}s", "write them in brackets: [ , ]")
        items: list[T] = []
        faults: list[Fault] = []
        for place, value in enumerate(values, start=1):
            with noting(faults), under(f"{word} {place}"):
                items.append(read(value))
        refuse_any(faults)
        return tuple(items)

    return read_all
