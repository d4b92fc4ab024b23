"""The page's words: what it asks for is there and no more, and every language says all of it."""

import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

import pytest

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.page import SCREENS
from tagend.cards.words.desk_words import DeskWords
from tagend.cards.words.language import languages
from tests.tree import ROOT

DESK = ROOT / "cards" / "desk"
LANGUAGES = ROOT / "cards" / "words" / "languages" / "desk"
BY_CODE = {"options"}  # the tables that are asked for neither by templates nor by scripts

# How a template asks: for a whole key, or for one of which it has the beginning.
SAID = re.compile(r"""\bsay\("([\w.-]+)"( ~)?""")
# How a script does; what it picks between stands in quotes before the first comma.
CALLED = re.compile(r"(?<![.\w])say\(([^,()]*)")
READ = re.compile(r"\bwords\.(\w+)")
READ_AS = re.compile(r"\bwords\[`(\w+)\$\{")
QUOTED = re.compile(r'"([\w-]+)"')


def words_of(language: str) -> DeskWords:
    tables: DeskWords = read_toml((LANGUAGES / f"{language}.toml").read_bytes())  # type: ignore[assignment]
    return tables


ENGLISH = words_of("en")
every_language = pytest.mark.parametrize("language", languages())
every_screen = pytest.mark.parametrize("screen", SCREENS)


def keys(tables: DeskWords) -> set[str]:
    return {f"{table}.{key}" for table, words in tables.items() for key in words}


def text_of(pattern: str, folder: Path = DESK) -> str:
    return "\n".join(path.read_text() for path in sorted(folder.rglob(pattern)))


def scripts(screen: str) -> str:
    """Return the scripts of a screen: those called so, and those of all screens."""
    ours = (path for path in DESK.rglob("*.js") if screen_of(path) in (screen, ""))
    return "\n".join(path.read_text() for path in ours)


def screen_of(path: Path) -> str:
    first = path.stem.partition("_")[0]
    return {each.removesuffix("s"): each for each in SCREENS}.get(first.removesuffix("s"), "")


def script_keys(screen: str) -> set[str]:
    return {*ENGLISH["script"], *ENGLISH.get(f"{screen}_script", {})}


def asked_by(script: str) -> Iterator[str]:
    yield from READ.findall(script)
    for call in CALLED.findall(script):
        yield from QUOTED.findall(call)


@every_language
def test_every_language_has_the_words_of_the_page_and_no_others(language: str) -> None:
    assert keys(words_of(language)) == keys(ENGLISH)


@every_language
def test_the_same_is_put_into_the_same_words_of_the_page(language: str) -> None:
    for table, words in words_of(language).items():
        for key, text in words.items():
            assert text == text.strip() != "", key
            assert places(text) == places(ENGLISH[table][key]), key


def test_a_table_of_the_page_has_as_many_heads() -> None:
    heads = {words_of(language)["script"]["heads"].count("|") for language in languages()}
    assert len(heads) == 1


@every_language
def test_the_page_names_a_fault_by_the_words_on_its_fields(language: str) -> None:
    words = words_of(language)
    for option, key in (("no-code", "no_code"), ("brief", "brief"), ("anyway", "anyway")):
        assert words["print"][key] in words["options"][f"--{option}"]


def test_templates_find_the_words_that_they_ask_for() -> None:
    for key, has_more in SAID.findall(text_of("*.html")):
        found = [each for each in keys(ENGLISH) if each.startswith(key)]
        assert found if has_more else key in found, key


@every_screen
def test_scripts_find_the_words_that_they_ask_for(screen: str) -> None:
    asked = set(asked_by(scripts(screen)))
    assert asked
    assert asked <= script_keys(screen)


def test_no_word_of_a_script_stands_unused() -> None:
    for table in (each for each in ENGLISH if each.endswith("script")):
        source = scripts(table.removesuffix("_script")) if "_" in table else text_of("*.js")
        used = {*READ.findall(source + text_of("*.html")), *QUOTED.findall(source)}
        begun = tuple(READ_AS.findall(source))
        unused = [key for key in ENGLISH[table] if key not in used and not key.startswith(begun)]
        assert unused == [], table


def test_no_word_of_a_template_stands_unused() -> None:
    asked = SAID.findall(text_of("*.html"))
    whole = {key for key, has_more in asked if not has_more}
    begun = {key for key, has_more in asked if has_more}
    ours = text_of("*.html") + text_of("*.py", ROOT / "cards")
    known = {*re.findall(r"""["']([\w -]+)["']""", ours), *languages()}
    unused = [
        key
        for key in keys(ENGLISH) - whole
        if not (table := key.partition(".")[0]).endswith("script") and table not in BY_CODE
        if not any(ends_known(key, start, known) for start in begun)
    ]
    assert sorted(unused) == []


def ends_known(key: str, start: str, known: set[str]) -> bool:
    """Whether a key goes on from its beginning with what templates or code know, or two of them."""
    rest = key.removeprefix(start)
    first, _, second = rest.partition("_")
    return rest != key and (rest in known or {first, second} <= known)


def places(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}
