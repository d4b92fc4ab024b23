"""The words of the desk's page in one language: tables of keys and words, by screen.

They stand in a file of their own beside the rest, which every command reads.
"""

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from tagend.cards.base.toml_file import read_toml
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.refusal_words import told_in
from tagend.layouts.base.faults import Refused

_FOLDER = Path(__file__).parent / "languages" / "desk"

DeskWords = Mapping[str, Mapping[str, str]]


@cache
def desk_words(language: str) -> DeskWords:
    """Return the page's words by screen; in English what a language lacks."""
    ours, there = _words(ENGLISH.language), _words(language)
    return {table: {**words, **there.get(table, {})} for table, words in ours.items()}


def without_options(text: str, language: str) -> str:
    """Return what is told of a print with the page's names in place of a command's options."""
    names = desk_words(language)["options"]
    return re.sub(r"--[a-z]+(?:-[a-z]+)*|`tagend \w+`", lambda it: names.get(it[0], it[0]), text)


def refusal_lines(refusal: Refused, language: str) -> list[str]:
    """Return a line for each thing that was refused, as the page tells it."""
    return [without_options(str(told_in(language, fault)), language) for fault in refusal.faults]


def _words(language: str) -> DeskWords:
    path = _FOLDER / f"{language}.toml"
    tables: DeskWords = read_toml(path.read_bytes()) if path.is_file() else {}  # type: ignore[assignment]
    return tables
