"""The words of tables: a text in, what it is called here out, from the lists of `headings.toml`."""

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from functools import cache, lru_cache
from typing import Literal, NamedTuple, cast

from tagend.cards.base.named_table import read_our_file
from tagend.cards.tables.columns import COLUMNS

Kind = Literal["field", "part", "section", "unit", "number", "filler", "other", "unknown"]

_LONGEST = 5  # words of a phrase
_WORDS = re.compile(r"\d+(?:\.\d+)?(?:ths)?|[^\W\d_]+(?:/[^\W\d_]+)?|[\"'#%]|[^\w\s]")
_SILENT = re.compile(r"[()\[\]{}:;,.*\-‐‑–—_/|+=&!¿?]")
_QUOTES = str.maketrans({"″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "Ø": "o", "ø": "o"})


class Word(NamedTuple):
    """One phrase of a heading, and what it means."""

    kind: Kind
    meaning: str  # the field, part or unit by its own name, the number; else the phrase itself


def words_of(heading: str) -> tuple[Word, ...]:
    """Return the phrases of a heading in turn, the longest first that is known."""
    return tuple(_phrases(_split(heading)))


def own_name(table: Literal["materials", "knots"], name: str) -> str:
    """Return what we call a material or a knot by another name; a name that no list has itself."""
    return _names(table).get(_joined(name), name)


@lru_cache(maxsize=1 << 15)  # each row's first cell is asked of for every column
def is_total(cell: str) -> bool:
    """Whether a row that begins with this cell sums up those above."""
    return _joined(cell) in _names("totals")


def is_empty(cell: str) -> bool:
    """Whether a cell says that there is nothing."""
    return not cell or cell.lower() in _lists()["words"]["empty"]


def unit_named(text: str) -> str:
    """Return our name of a unit, or nothing."""
    return _names("units").get(_joined(text), "")


def part_named(text: str) -> str:
    """Return our name of a part of a leader, or nothing."""
    words = words_of(text)
    return words[0].meaning if len(words) == 1 and words[0].kind == "part" else ""


def nearest(words: Iterable[Word]) -> Word | None:
    """Return the field or part that a misspelt word of a heading may mean."""
    from difflib import get_close_matches

    known = {phrase: word for phrase, word in _known().items() if word.kind in ("field", "part")}
    for word in words:
        if word.kind == "unknown" and len(word.meaning) > 3:
            for near in get_close_matches(word.meaning, known, n=1, cutoff=0.75):
                return known[near]
    return None


def _phrases(words: list[str]) -> Iterator[Word]:
    known = _known()
    while words:
        for count in range(min(_LONGEST, len(words)), 0, -1):
            phrase = " ".join(words[:count])
            if found := known.get(phrase):
                yield found
                break
        else:
            yield Word("number" if phrase.isdecimal() else "unknown", phrase)
        words = words[count:]


def _split(text: str) -> list[str]:
    plain = unicodedata.normalize("NFKD", text.translate(_QUOTES).casefold())
    letters = "".join(char for char in plain if not unicodedata.combining(char))
    return _WORDS.findall(_SILENT.sub(" ", letters))


def _joined(text: str) -> str:
    return " ".join(_split(text))


@cache
def _lists() -> Mapping[str, Mapping[str, list[str]]]:
    return cast(Mapping[str, Mapping[str, list[str]]], read_our_file("tables/headings.toml"))


@cache
def _names(table: str) -> Mapping[str, str]:
    """Return what each phrase of a table means; of a list of words, the phrases themselves."""
    if table in _lists()["words"]:
        return {_joined(phrase): phrase for phrase in _lists()["words"][table]}
    return {
        _joined(phrase): name for name, phrases in _lists()[table].items() for phrase in phrases
    }


@cache
def _known() -> Mapping[str, Word]:
    """Return every phrase of a heading that is known; a column's own name is itself."""

    def entries() -> Iterator[tuple[str, Word]]:
        yield from _entries("unit", _names("units").items())
        yield from _entries("section", _names("sections").items())
        yield from _entries("part", _names("parts").items())
        yield from _entries("field", _names("fields").items())
        yield from _entries("filler", _names("fillers").items())
        yield from _entries("other", _names("others").items())
        yield from _entries("field", ((_joined(own), _joined(own)) for own in COLUMNS))

    return dict(entries())


def _entries(kind: Kind, names: Iterable[tuple[str, str]]) -> Iterator[tuple[str, Word]]:
    return ((phrase, Word(kind, name)) for phrase, name in names)
