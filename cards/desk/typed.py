"""What was typed into the fields of a form in; what it means, or a fault of that field, out."""

from collections.abc import Sequence
from typing import Any, TypeVar

from msgspec import Struct

from tagend.cards.desk.page import Json
from tagend.layouts.base.faults import refused, under
from tagend.layouts.paper.lengths import parse_length

T = TypeVar("T")

_LONGEST = 200  # characters


class Typed(Struct, frozen=True):
    """What was typed, by the names of the fields; what is empty is not there."""

    fields: Json

    def text(self, name: str) -> str | None:
        """Return a text; None for an empty field."""
        return str(self.fields.get(name) or "").strip()[:_LONGEST] or None

    def flag(self, name: str) -> bool:
        """Return whether a box is ticked."""
        return bool(self.fields.get(name))

    def count(self, name: str, most: int) -> int | None:
        """Return a whole number from 1. Raises `Refused`."""
        text = self.text(name)
        if text is None:
            return None
        if not (text.isascii() and text.isdecimal() and 1 <= int(text) <= most):
            raise refused(f"found {text!r}", f"write a whole number from 1 to {most}", name)
        return int(text)

    def counts(self, name: str, most: int) -> tuple[int, ...]:
        """Return whole numbers from 1, with commas or blanks between. Raises `Refused`."""
        parts = (self.text(name) or "").replace(",", " ").replace(";", " ").split()
        read = (Typed({name: part}).count(name, most) for part in parts)
        return tuple(number for number in read if number is not None)

    def points(self, name: str, usual: float) -> float:
        """Return a length on paper in points. Raises `Refused`."""
        text = self.text(name)
        with under(name):
            return usual if text is None else parse_length(text)

    def one_of(self, name: str, choices: Sequence[T]) -> T:
        """Return the choice that was taken, or the first of them. Raises `Refused`."""
        text: Any = self.text(name)
        if text is not None and text not in choices:
            raise refused(f"found {text!r}", f"take one of: {', '.join(map(str, choices))}", name)
        return choices[0] if text is None else choices[choices.index(text)]
