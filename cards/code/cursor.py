"""A place in a text that is being read: patterns in, what matches or a pointed fault out."""

import re
from collections.abc import Sequence

from msgspec import Struct

from tagend.layouts.base.faults import Refused, refused

COMPARE = "compare it with the label"


class Cursor(Struct):
    """Reads `text` from the left; `places` says where in the person's own text each character is.

    `places` counts from 1 and has one place more, for the end.
    """

    text: str
    places: Sequence[int]
    what: str = ""
    at: int = 0

    def __bool__(self) -> bool:
        """Whether anything is left."""
        return self.at < len(self.text)

    @property
    def rest(self) -> str:
        return self.text[self.at :]

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """Return what matches here, and go on behind it."""
        match = pattern.match(self.text, self.at)
        if match:
            self.at = match.end()
        return match

    def takes(self, sign: str) -> bool:
        """Go on behind `sign` if it stands here, and say whether it did."""
        here = self.text.startswith(sign, self.at)
        if here:
            self.at += len(sign)
        return here

    def split(self, sign: str) -> list["Cursor"]:
        """Return a cursor for what stands between the signs, without the spaces around it."""
        pieces: list[Cursor] = []
        start = 0
        for piece in self.text.split(sign):
            first = start + len(piece) - len(piece.lstrip(" "))
            pieces.append(self.part(first, max(start + len(piece.rstrip(" ")), first)))
            start += len(piece) + len(sign)
        return pieces

    def only(self, kept: re.Pattern[str]) -> "Cursor":
        """Return a cursor for what matches `kept`, without the characters in between."""
        spans = [match.span() for match in kept.finditer(self.text)]
        text = "".join(self.text[start:end] for start, end in spans)
        places = [place for start, end in spans for place in self.places[start:end]]
        return Cursor(text, [*places, self.places[-1]], self.what)

    def part(self, start: int, end: int) -> "Cursor":
        """Return a cursor for the characters from `start` to before `end`."""
        return Cursor(self.text[start:end], self.places[start : end + 1], self.what)

    def end(self) -> None:
        """Raise `Refused` if anything is left."""
        if self:
            raise self.fault(f"{self.rest[:8]!r} has no place here", COMPARE)

    def where(self, at: int) -> str:
        """Return in words where the character at `at` is."""
        return f"{self.what}, character {self.places[at]}".removeprefix(", ")

    def fault(self, found: str, instead: str, at: int | None = None) -> Refused:
        """Return the refusal of what stands at `at`, or here."""
        return refused(found, instead, self.where(self.at if at is None else at))
