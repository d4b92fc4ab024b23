"""Readers of single values in a file's tables: what a person wrote in, the value or a fault out."""

import unicodedata
from collections.abc import Callable
from contextlib import suppress
from typing import TypeVar

from tagend.layouts.base.faults import Fault, Refused, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion

T = TypeVar("T")


def plain_text(value: object, most: int) -> str:
    """Return the text composed (NFC) and trimmed.

    Raises `Refused` for what no card can show: control, direction and picture characters.
    """
    if not isinstance(value, str):
        raise refused("this is not a text in quotes", 'write a text such as "Sandbar eight"')
    # Our own files are nearly all such text, and are read each time the program starts.
    if value.isascii() and value.isprintable() and 0 < len(value.strip()) == len(value) <= most:
        return value
    composed = unicodedata.normalize("NFC", value).strip()
    if not composed:
        raise refused("this text is empty", f"write 1 to {most} characters")
    if len(composed) > most:
        raise refused(f"this text has {len(composed)} characters", f"write at most {most}")
    for char in composed:
        if not is_writing(char):
            raise refused(f"{called(char)} cannot be printed", "leave it out")
    return composed


def called(char: str) -> str:
    """Return a character in quotes, or what it is called: `U+00A0 (no-break space)`."""
    if char.isascii() and char.isprintable():
        return repr(char)
    name = unicodedata.name(char, "a control character").lower()
    return f"U+{ord(char):04X} ({name})"


def is_writing(char: str) -> bool:
    """Whether a character is writing: no control, format, private or picture character."""
    category = unicodedata.category(char)
    if category == "So":  # signs such as ° and № are writing, pictographs are not
        return ord(char) < 0x2300
    return category[0] != "C" and category not in ("Zl", "Zp")


def text_line(most: int) -> Callable[[object], str]:
    """Return a reader of one line of 1 to `most` characters."""
    return lambda value: plain_text(value, most)


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
        with suppress(Refused):  # most have no fault, and need no places
            return tuple(map(read, values))
        items: list[T] = []
        faults: list[Fault] = []
        for place, value in enumerate(values, start=1):
            with noting(faults), under(f"{word} {place}"):
                items.append(read(value))
        refuse_any(faults)
        return tuple(items)

    return read_all
