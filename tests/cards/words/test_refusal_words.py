"""What a person meets most of refusals has words in Spanish, and they are those of a refusal."""

import re
from string import Formatter

import pytest

from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import languages, read_language
from tagend.cards.words.refusal_words import told_in
from tagend.layouts.base.faults import Fault, Refused
from tests.cards.recipe.test_recipe_file import MESSAGES
from tests.tree import BROKEN, ROOT
from tests.written import PRACTICE

COUNTED = r"\{counted\([^{}]*, '(\w+)'\)\}"  # of which there may be one or more

OTHERS = [language for language in languages() if language != "en"]

# Of the broken recipes: what is told in English in a Spanish shop, since TOML's own reader says it.
ENGLISH_YET = {"expected '=' after a key in a key/value pair"}


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


def test_what_has_no_words_stays_as_it_is() -> None:
    rare = Fault("printer", "the moon is full", "wait a week")
    assert told_in("es", rare) == told_in("en", rare) == rare


@pytest.mark.parametrize("language", OTHERS)
def test_the_same_is_put_into_a_refusal(language: str) -> None:
    for english, words in read_language(language)["refusals"].items():
        assert blanks(english) == blanks(words)


@pytest.mark.parametrize("language", OTHERS)
def test_every_refusal_that_has_words_is_one_of_the_program(language: str) -> None:
    program, strange = literals(), []
    for english in read_language(language)["refusals"]:
        longest = max(re.split(r"\{\w+\}", english), key=len).strip(" \"':")
        if longest not in program:
            strange.append(english)
    assert strange == []


def blanks(text: str) -> list[str]:
    return sorted(name for _, name, _, _ in Formatter().parse(text) if name)


def literals() -> str:
    """Return the sources, with texts that go on in the next line put together."""
    rooms = (path for folder in ("cards", "layouts") for path in (ROOT / folder).rglob("*.py"))
    source = "\n".join(path.read_text() for path in rooms)
    whole = re.sub(r"[\"']\s*\n\s*f?[\"']", "", source)
    whole = "".join(re.sub(COUNTED, rf"\1{many}", whole) for many in ("", "s"))
    kinds = (("kind", "length"), ("kind", "diameter"), ("kind", "strength"))
    names = (*kinds, ("self.word", "knot"), ("self.word", "material"))
    return "\n".join(whole.replace(f"{{{name}}}", word) for name, word in names)
