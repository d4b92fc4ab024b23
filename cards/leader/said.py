"""What is said of a leader in any language: a key and exact values in, both as one value out."""

from typing import NamedTuple


class Said(NamedTuple):
    """A key of the language files, and what stands in its words: quantities, names, or more said.

    A value that is None is said with no words.
    """

    key: str
    values: tuple[tuple[str, object], ...] = ()


def said(key: str, **values: object) -> Said:
    """Return what is said by a key, with its values by their names."""
    return Said(key, tuple(values.items()))
