"""What is printed, in one language: a key and what stands in it in, the words for paper out.

English stands in `languages/en.toml`, but for the names, steps and cautions that have a data file
of their own. Every other language is one file beside it, which has those too.
"""

import os
import re
from collections.abc import Iterable, Mapping
from functools import cache
from typing import Literal, NamedTuple, NotRequired, TypedDict, cast

from tagend.cards.base.named_table import read_our_file

_FOLDER = "languages"
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


class KnotWords(TypedDict):
    """What a language file says of one knot."""

    name: str
    title: NotRequired[str]  # over its steps, where the name is too short for that
    steps: list[str]
    seat: str
    caution: NotRequired[str]


class CautionWords(TypedDict):
    """What a language file says of one caution."""

    short: str
    long: str


class LanguageFile(TypedDict):
    """A language file; the English one has words and a decimal sign only."""

    decimal: Literal[".", ","]
    words: Mapping[str, str]
    steps: Mapping[str, list[str]]
    knots: Mapping[str, KnotWords]
    materials: Mapping[str, str]
    cautions: Mapping[str, CautionWords]


class Wording(NamedTuple):
    """The words and the number style of what is printed."""

    language: str
    decimal: str

    def say(self, key: str, **values: object) -> str:
        """Return the words of a key with the values in their places."""
        return language_file(self.language)["words"][key].format(**values)

    def steps(self, key: str) -> tuple[str, ...]:
        """Return what is to be done on a page, step by step."""
        return tuple(language_file(self.language)["steps"][key])

    def number(self, text: str) -> str:
        """Return a number, alone or within words, with this style's decimal sign."""
        return text if self.decimal == "." else _POINT.sub(self.decimal, text)

    def listed(self, numbers: Iterable[str]) -> str:
        """Return numbers one after the other, so that none is taken for the other's decimals."""
        between = ", " if self.decimal == "." else "; "
        return between.join(map(self.number, numbers))

    def knot(self, name: str) -> str:
        """Return what a knot is called; a person's own keeps its name."""
        knots = language_file(self.language)["knots"]
        return knots[name]["name"] if name in knots else name

    def knot_title(self, name: str) -> str:
        """Return what heads a knot's steps."""
        knots = language_file(self.language)["knots"]
        return knots[name].get("title", knots[name]["name"]) if name in knots else name

    def material(self, name: str) -> str:
        """Return what a material is called; a person's own keeps its name."""
        return language_file(self.language)["materials"].get(name, name)


ENGLISH = Wording("en", ".")


def wording_in(language: str, decimal: str | None) -> Wording:
    """Return the wording of one of our languages, with its own decimal sign or another."""
    return Wording(language, decimal or language_file(language)["decimal"])


def languages() -> list[str]:
    """Return the languages that there are files of."""
    files = os.listdir(os.path.join(os.path.dirname(__file__), _FOLDER))
    return sorted(name.removesuffix(".toml") for name in files if name.endswith(".toml"))


@cache
def language_file(language: str) -> LanguageFile:
    """Return what a language file says."""
    tables = read_our_file(f"words/{_FOLDER}/{language}.toml")
    return cast(LanguageFile, {"knots": {}, "materials": {}, "cautions": {}, **tables})
