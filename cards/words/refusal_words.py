"""What is refused, in another language: faults in English in; the same, as far as known, out.

A language file has the words under [refusals] by the English ones, both with places for what a
person wrote. What it lacks stays English. The history of a tying book, which is kept in English, is
told in the same way.
"""

import re
from collections.abc import Iterator
from functools import cache

from tagend.cards.words.language import language_file
from tagend.layouts.base.faults import Fault

_BREAK = re.compile(r"(, |: )")  # between the places of a fault


def told_in(language: str, fault: Fault) -> Fault:
    """Return a fault in a language; places, what was found and what to write each on their own."""
    where = "".join(words_in(language, part) for part in _BREAK.split(fault.where))
    return Fault(where, words_in(language, fault.found), words_in(language, fault.instead))


def words_in(language: str, english: str) -> str:
    """Return such words in a language; what stands at a place called `told` is told so too."""
    for pattern, words in _patterns(language):
        if match := pattern.fullmatch(english):
            places = match.groupdict()
            if "told" in places:
                places["told"] = words_in(language, places["told"])
            return words.format(**places)
    return english


@cache
def _patterns(language: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple(
        (re.compile("".join(_as_pattern(english)), re.DOTALL), words)
        for english, words in language_file(language)["refusals"].items()
    )


def _as_pattern(english: str) -> Iterator[str]:
    """Yield the parts of some words, each place as whatever may stand there."""
    for number, part in enumerate(re.split(r"\{(\w+)\}", english)):
        yield f"(?P<{part}>.+?)" if number % 2 else re.escape(part)
