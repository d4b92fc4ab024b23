"""What is refused, in another language: faults in English in; the same, as far as known, out.

The words stand in a file of their own beside a language's other ones, which every command reads: by
the English ones, both with places for what a person wrote. What it lacks stays English. The history
of a tying book, which is kept in English, is told in the same way.
"""

import os
import re
from collections.abc import Mapping
from contextlib import suppress
from functools import cache

from tagend.cards.base.toml_file import read_toml
from tagend.cards.words.language import language_file
from tagend.layouts.base.faults import Fault

_FOLDER = os.path.join(os.path.dirname(__file__), "languages", "refusals")
_BREAK = re.compile(r"(, |: )")  # between the places of a fault
_LISTED = re.compile(r"(, | and | or )")
_PLACE = re.compile(r"\{(\w+)\}")  # a brace that holds more stands for itself


def told_in(language: str, fault: Fault) -> Fault:
    """Return a fault in a language; places, what was found and what to write each on their own."""
    where = "".join(words_in(language, part) for part in _BREAK.split(fault.where))
    return Fault(where, words_in(language, fault.found), words_in(language, fault.instead))


def words_in(language: str, english: str) -> str:
    """Return such words in a language; its file tells how what stands at a place is told."""
    for first, last, pattern, words in _patterns(language):
        if not english.startswith(first) or not english.endswith(last):
            continue
        if match := _compiled(pattern).fullmatch(english):
            places = {name: _at(name, text, language) for name, text in match.groupdict().items()}
            return "".join(places.get(part, part) for part in _PLACE.split(words))
    return english


@cache
def refusal_words(language: str) -> Mapping[str, Mapping[str, str]]:
    """Return the tables of a language's file, `refusals` and `parts`."""
    tables: dict[str, object] = {}
    with suppress(FileNotFoundError), open(os.path.join(_FOLDER, f"{language}.toml"), "rb") as file:
        tables = read_toml(file.read())
    return {"refusals": {}, "parts": {}, **tables}  # type: ignore[dict-item]


@cache
def _patterns(language: str) -> tuple[tuple[str, str, str, str], ...]:
    """Return how each of the English words begins and ends, itself, and those of the language.

    The more exact come first: what begins with a word before what begins with a place, and then
    what has more letters of its own. Few are compiled, since few begin and end so.
    """
    refusals = refusal_words(language)["refusals"]
    apart = [(_PLACE.split(english), english, words) for english, words in refusals.items()]
    apart.sort(key=lambda each: (not each[0][0], -len("".join(each[0][::2]))))
    return tuple((parts[0], parts[-1], english, words) for parts, english, words in apart)


@cache
def _compiled(english: str) -> re.Pattern[str]:
    """Return a pattern of some words, with each place as whatever may stand there."""
    parts = enumerate(_PLACE.split(english))
    return re.compile(
        "".join(f"(?P<{part}>.+?)" if number % 2 else re.escape(part) for number, part in parts),
        re.DOTALL,
    )


def _at(place: str, written: str, language: str) -> str:
    """Return in a language what stands at a place; a number tells one of its kind from another."""
    match place.partition("_")[0]:
        case "told":
            return words_in(language, written)
        case "part":
            words = refusal_words(language)["parts"]
            parts = [written] if written in words else _LISTED.split(written)
            return "".join(words.get(part) or _strand(part, language) for part in parts)
        case "strand":
            return _strand(written, language)
    return written


def _strand(written: str, language: str) -> str:
    """Return a strand, as `0.011 in nylon (Clear 8)`, with its material called as on a card."""
    names = language_file(language)["materials"]
    pattern = rf"([^(]*?)\b({'|'.join(names)})\b"
    return re.sub(f"^{pattern}", lambda at: at[1] + names.get(at[2], at[2]), written)
