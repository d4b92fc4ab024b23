"""What a person meets most of refusals has words in Spanish, and they are those of a refusal."""

import re

import pytest

from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import languages
from tagend.cards.words.refusal_words import refusal_words, told_in, words_in
from tagend.layouts.base.faults import Fault, Refused
from tests.cards.recipe.test_recipe_file import MESSAGES
from tests.refusal_texts import refusal_texts
from tests.tree import BROKEN, ROOT
from tests.written import PRACTICE

COUNTED = r"\{counted\([^{}]*, '(\w+)'\)\}"  # of which there may be one or more

# Where one of a few words stands, whose words in a language are not always alike.
KINDS = {
    "kind": "length, diameter, strength, paper, card size, label sheet, stock",
    "self.word": "knot, material",
    "key": "card, labels",
    "what": "lot, spool, recipe, batch",
    "self.way": "across, down",
    "self.edge": "left, top",
}

OTHERS = [language for language in languages() if language != "en"]

# Of the broken recipes: what is told in English in a Spanish shop, since TOML's own reader says it.
ENGLISH_YET = {"expected '=' after a key in a key/value pair"}


# Words of nearly every English refusal, and of none in Spanish.
ENGLISH_WORDS = {
    *(
        "the",
        "this",
        "its",
        "is",
        "are",
        "of",
        "or",
        "and",
        "with",
        "for",
        "from",
        "write",
        "buy",
        "section",
    )
}

# What stays in English, since a person is told of it in other words.
NEVER_TOLD = {
    "no material",  # which `read_recipes` gathers into one fault
    "no length is called Zzz9",  # but a paper, a card or a label sheet
    *(
        f"its code of Zzz9 modules and its {what} does not fit a label of Zzz9"
        for what in ("Zzz9", "words")
    ),  # which are two
}


def faults(broken: str) -> tuple[Fault, ...]:
    with pytest.raises(Refused) as refusal:
        read_recipe((BROKEN / f"{broken}.toml").read_bytes(), PRACTICE)
    return refusal.value.faults


@pytest.mark.parametrize("broken", MESSAGES)
def test_a_broken_recipe_is_refused_in_spanish(broken: str) -> None:
    for fault in faults(broken):
        here = told_in("es", fault)
        assert {fault.found, fault.instead} & {here.found, here.instead} <= ENGLISH_YET


def told(found: str, instead: str = "", where: str = "") -> str:
    return str(told_in("es", Fault(where, found, instead)))


def test_what_a_person_wrote_stands_in_the_words() -> None:
    hint = 'write a strength with its unit, such as "25 lb" or "11.3 kg"'
    assert told("'25' has no unit", hint, "section 2, strength") == (
        "section 2, strength: '25' no lleva unidad; "
        'escribir una resistencia con su unidad, como "25 lb" o "11.3 kg"'
    )
    assert told("no knot is called 'a {b} or c'", "did you mean a, b or c?") == (
        "ningún nudo se llama 'a {b} or c'; ¿se quería decir a, b o c?"
    )


def test_a_line_is_told_and_a_key_stays() -> None:
    assert told("a colon behind name", "write name = instead", "mine.toml: line 3") == (
        "mine.toml: línea 3: dos puntos tras name; escribir en su lugar name ="
    )


def test_what_a_book_says_of_a_change_is_told_with_what_it_took_back() -> None:
    assert told("undid 3: tied batch 2: 2 Reed (no. 4-5), 1 Sand (no. 6)") == (
        "deshecho 3: atada la tanda 2: 2 Reed (n.º 4-5), 1 Sand (n.º 6)"
    )


def test_every_refusal_of_the_program_has_words_in_spanish() -> None:
    assert {
        text for text in refusal_texts() if is_english(text, words_in("es", text))
    } == NEVER_TOLD


def is_english(text: str, words: str) -> bool:
    """Whether English is left in a text's words, but for quotes, options and commands."""
    bare = re.sub(r"\".*?\"|'.*?'|`.*?`|\[\w+|--\w+|\d in\b", "", words)
    return words == text or not ENGLISH_WORDS.isdisjoint(re.findall(r"\w+", bare))


def test_what_has_no_words_stays_as_it_is() -> None:
    rare = Fault("printer", "the moon is full", "wait a week")
    assert told_in("es", rare) == told_in("en", rare) == rare


@pytest.mark.parametrize("language", OTHERS)
def test_the_same_is_put_into_a_refusal(language: str) -> None:
    for english, words in refusal_words(language)["refusals"].items():
        assert blanks(english) == blanks(words)


@pytest.mark.parametrize("language", OTHERS)
def test_every_refusal_that_has_words_is_one_of_the_program(language: str) -> None:
    program, strange = "\n".join((literals(), *refusal_texts())), []
    for english in refusal_words(language)["refusals"]:
        longest = max(re.split(r"\{\w+\}", english), key=len).strip(" \"':,()")
        if longest not in program:
            strange.append(english)
    assert strange == []


def blanks(text: str) -> list[str]:
    return sorted(re.findall(r"\{(\w+)\}", text))


def literals() -> str:
    """Return the sources, with texts that go on in the next line put together."""
    rooms = (ROOT / room for room in ("cards", "layouts", "fonts"))
    source = "\n".join(path.read_text() for room in rooms for path in room.rglob("*.py"))
    whole = re.sub(r"[\"']\s*\n\s*f?[\"']", "", source).replace("!r}", "}")
    whole = "".join(re.sub(COUNTED, rf"\1{many}", whole) for many in ("", "s"))
    kinds = ((place, word) for place, words in KINDS.items() for word in words.split(", "))
    lines = whole.splitlines()
    of_kinds = (
        line.replace(f"{{{place}}}", word)
        for place, word in kinds
        for line in lines
        if place in line
    )
    return "\n".join((whole, *of_kinds))
