"""What is printed, in one language: a key and what stands in it in, the words for paper out.

English stands in `languages/en.toml`, but for the names, steps and cautions that have a data file
of their own. Every other language is one file beside it, which has those too; what it lacks is said
in English.
"""

import os
import re
from collections.abc import Iterable, Mapping
from functools import cache
from typing import Literal, TypeAlias, TypedDict, cast

from msgspec import Struct

from tagend.cards.base.toml_file import read_toml
from tagend.cards.practice.shop_file import Shop
from tagend.layouts.base.faults import refused

_FOLDER = os.path.join(os.path.dirname(__file__), "languages")
_POINT = re.compile(r"(?<=\d)\.(?=\d)")

# Words, or their forms where a number stands in them: `one` for 1 and `other` for the rest.
Words: TypeAlias = str | Mapping[str, str]

Table: TypeAlias = Literal["words", "said"]


class KnotTable(TypedDict, total=False):
    """What a language file says of one knot."""

    name: str
    title: str  # over its steps, where the name is too short for that
    roles: list[str]
    steps: list[str]
    seat: str
    caution: str


class CautionTable(TypedDict, total=False):
    """What a language file says of one caution."""

    short: str
    long: str


class LanguageFile(TypedDict):
    """A language file; of these parts the English one has the first four only."""

    decimal: str
    words: Mapping[str, Words]
    said: Mapping[str, Words]  # of a leader; see `Said`
    steps: Mapping[str, list[str]]
    knots: Mapping[str, KnotTable]
    materials: Mapping[str, str]
    terms: Mapping[str, str]
    cautions: Mapping[str, CautionTable]


class Wording(Struct, frozen=True):
    """The words and the number style of what is printed."""

    language: str
    decimal: str

    def say(self, key: str, **values: object) -> str:
        """Return the words of a key with the values in their places, in the form for `count`."""
        return self.form("words", key, values).format(**values)

    def form(self, table: Table, key: str, values: Mapping[str, object]) -> str:
        """Return the words of a key with the places for these values, in the form for `count`."""
        words = language_file(self.language)[table][key]
        if isinstance(words, str):
            return words
        other = words["other"]
        return words.get("one", other) if values.get("count") == 1 else other

    def steps(self, key: str) -> tuple[str, ...]:
        """Return what is to be done on a page, step by step."""
        return tuple(language_file(self.language)["steps"][key])

    def number(self, text: str) -> str:
        """Return a number, alone or within words, with this style's decimal sign."""
        return text if self.decimal == "." else _POINT.sub(self.decimal, text)

    def listed(self, numbers: Iterable[str]) -> str:
        """Return numbers one after the other, so that none is taken for the other's decimals."""
        return self.series(map(self.number, numbers))

    def series(self, spelled: Iterable[str]) -> str:
        """Return numbers that have this style's decimal sign one after the other."""
        return (", " if self.decimal == "." else "; ").join(spelled)

    def knot(self, name: str) -> str:
        """Return what a knot is called; a person's own keeps its name."""
        return self._table(name).get("name", name)

    def knot_title(self, name: str) -> str:
        """Return what heads a knot's steps."""
        return self._table(name).get("title", self.knot(name))

    def material(self, name: str) -> str:
        """Return what a material is called; a person's own keeps its name."""
        return language_file(self.language)["materials"].get(name, name)

    def term(self, name: str) -> str:
        """Return a word of the trade, or of the audit, which in English is said as it is keyed."""
        return language_file(self.language)["terms"].get(name, name)

    def _table(self, knot: str) -> KnotTable:
        return language_file(self.language)["knots"].get(knot, KnotTable())


ENGLISH = Wording("en", ".")


def wording_of(shop: Shop) -> Wording:
    """Return the words and the number style of what a shop prints; raises `Refused`."""
    return wording_in(shop.language or ENGLISH.language, shop.decimal)


def wording_in(language: str, decimal: str | None) -> Wording:
    """Return the wording of one of our languages, with its own decimal sign or another.

    Raises `Refused` for a language that there is no file of.
    """
    if language not in (known := languages()):
        found = f"no language is called {language[:40]!r}"
        raise refused(found, f"write one of: {', '.join(known)}", "language")
    return Wording(language, decimal or language_file(language)["decimal"])


def languages() -> list[str]:
    """Return the languages that there are files of."""
    return sorted(
        name.removesuffix(".toml") for name in os.listdir(_FOLDER) if name.endswith(".toml")
    )


@cache
def language_file(language: str) -> LanguageFile:
    """Return what a language file says, and in English those words and steps that it lacks."""
    ours = read_language(ENGLISH.language)
    there = ours if language == ENGLISH.language else read_language(language)
    return {
        **there,
        "decimal": there.get("decimal", ours["decimal"]),
        "words": {**ours["words"], **there["words"]},
        "said": {**ours["said"], **there["said"]},
        "steps": {**ours["steps"], **there["steps"]},
    }


def read_language(language: str) -> LanguageFile:
    """Return what a language file says, and nothing else."""
    with open(os.path.join(_FOLDER, f"{language}.toml"), "rb") as file:
        tables = read_toml(file.read())
    parts = set(LanguageFile.__annotations__) - {"decimal"}
    empty: dict[str, object] = {part: {} for part in parts}
    return cast(LanguageFile, {**empty, **tables})
