"""Every language file says what English says: all of it, no more, and as briefly."""

import ast
import re
from collections.abc import Iterable, Iterator
from string import Formatter
from typing import get_args

import pytest

from tagend.cards.faces.leader_table import needed_widths
from tagend.cards.faces.panel import INSET
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.steps import By
from tagend.cards.practice.knot_file import STEP_MOST, load_knots
from tagend.cards.practice.practice import Meets
from tagend.cards.practice.rules import common_rules
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.cautions import LONG_MOST, SHORT_MOST
from tagend.cards.words.knot_words import knot_in
from tagend.cards.words.language import (
    ENGLISH,
    KnotTable,
    Words,
    language_file,
    languages,
    read_language,
    wording_in,
)
from tagend.fonts import OURS, Chain
from tagend.layouts.paper.text import set_line
from tagend.layouts.stock.stock import card_size
from tests.told import scale, told
from tests.translation import missing, unknown
from tests.tree import ROOT, SAMPLES
from tests.written import PRACTICE, practice

NAME_MOST = 24  # characters: the column of knots on a card
CODE_SIGNS = re.compile(r"[*+$]|\b-\b")  # a hyphen between two letters or figures

# The keys that the program puts together, by how it writes them, and what comes of it.
PUT_TOGETHER = {
    'f"{what}_of"': {"cards_of", "labels_of"},
    'f"is_{leader.state}"': {"is_tied", "is_fished", "is_given", "is_discarded"},
    'f"is_{state}"': {"is_fished", "is_given", "is_discarded"},
    'f"{note.first_out}_first"': {"butt_first", "fly_first"},
    'f"as_{apart.by}"': {f"as_{by}" for by in get_args(By)},
    'f"too_{too}"': {"too_strong", "too_weak"},
    'f"{told.key}_slip"': {"too_strong_slip", "too_weak_slip"},
    'f"lack_{what}"': {f"lack_{what}" for what in ("frames", "seats", "renewals", "variants")},
    "rule.name": common_rules().keys() - {"untieable knot", "unfit knot"},  # a fact says why
    'f"knot_{self.where}"': {"knot_at_butt", "knot_below", "knot_at_fly"},
    "meets": set(get_args(Meets)),
    "key": set(),
}

EN = language_file("en")
OTHERS = [language for language in languages() if language != "en"]
every_language = pytest.mark.parametrize("language", languages())
every_other = pytest.mark.parametrize("language", OTHERS)


def blanks(text: str) -> set[str]:
    """Return the names of what is put into a text, each with how it is told."""
    fields = ((name, spec) for _, name, spec, _ in Formatter().parse(text) if name is not None)
    return {f"{name}:{spec}" for name, spec in fields}


def all_words(language: str) -> dict[str, Words]:
    """Return the words of a language, and what is said of leaders, under keys of its own."""
    file = language_file(language)
    return {**file["words"], **{f"said of a leader: {key}": it for key, it in file["said"].items()}}


def forms(words: Words) -> list[str]:
    """Return every form of some words."""
    return [words] if isinstance(words, str) else list(words.values())


def one_form(words: Words) -> str:
    """Return the only form of words that count nothing."""
    (form,) = forms(words)
    return form


def counted(steps: Iterable[str]) -> list[tuple[set[str], list[str]]]:
    """Return what each step counts: what is put in, and the numbers that it says itself."""
    return [(blanks(step), figures(step)) for step in steps]


def figures(text: str) -> list[str]:
    return re.findall(r"\d+", text)


def lines(knot: KnotTable) -> list[str]:
    said = (knot.get("seat"), knot.get("caution"))
    return [*knot.get("steps", []), *(words for words in said if words is not None)]


def texts(value: object) -> Iterator[str]:
    """Yield every text of a file."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from texts(part)
    elif isinstance(value, list):
        for part in value:
            yield from texts(part)


def asked(method: str, room: str = "") -> Iterator[str]:
    """Yield how the program writes each key that it asks a wording for, in all rooms or in one."""
    for path in (ROOT / "cards" / room).rglob("*.py"):
        source = path.read_text()
        for node in ast.walk(ast.parse(source)):
            if isinstance(node, ast.Call) and node.args and _called(node) == method:
                for key in _branches(node.args[0]):
                    yield ast.get_source_segment(source, key) or ""


def _called(call: ast.Call) -> str:
    match call.func:
        case ast.Attribute(attr=name) | ast.Name(id=name):
            return name
    return ""


def _branches(key: ast.expr) -> list[ast.expr]:
    return [key.body, key.orelse] if isinstance(key, ast.IfExp) else [key]


def keys(written: set[str]) -> set[str]:
    """Return the keys themselves; what is put together must be known above."""
    plain = {key for key in written if re.fullmatch(r"""(["'])\w+\1""", key)}
    return {key.strip("\"'") for key in plain}.union(
        *(PUT_TOGETHER[key] for key in written - plain)
    )


def test_english_has_the_words_that_are_used_and_no_others() -> None:
    said, of_leaders = set(asked("say")), {*asked("said", "leader"), *asked("Said", "leader")}
    assert said | of_leaders > PUT_TOGETHER.keys()
    assert keys(said) == EN["words"].keys()
    assert keys(of_leaders) == EN["said"].keys()


def test_english_has_the_steps_that_are_used_and_no_others() -> None:
    assert keys(set(asked("steps"))) == EN["steps"].keys()


def test_there_is_another_language() -> None:
    assert "es" in OTHERS


@every_language
def test_numbers_are_written_with_a_point_or_a_comma(language: str) -> None:
    assert language_file(language)["decimal"] in (".", ",")


@every_other
def test_a_language_says_all_that_english_says_and_no_more(language: str) -> None:
    assert missing(language) == ()
    assert unknown(language) == ()


@every_other
def test_the_same_is_put_into_the_same_words(language: str) -> None:
    words = all_words(language)
    for key, there in all_words("en").items():
        asked = {frozenset(blanks(form)) for form in (*forms(there), *forms(words[key]))}
        assert len(asked) == 1, key


@every_language
def test_forms_are_told_apart_by_a_count(language: str) -> None:
    for key, words in all_words(language).items():
        if not isinstance(words, str):
            assert words.keys() == {"one", "other"}, key


@every_other
def test_a_page_asks_for_as_many_steps(language: str) -> None:
    steps = read_language(language)["steps"]
    for key, there in EN["steps"].items():
        assert counted(steps[key]) == counted(there)


@every_other
def test_the_signs_of_a_code_are_explained_as_they_stand(language: str) -> None:
    words = language_file(language)["words"]
    for key in ("code_order",):
        here, there = one_form(words[key]), one_form(EN["words"][key])
        assert CODE_SIGNS.findall(here) == CODE_SIGNS.findall(there)
        assert figures(here) == figures(there)


@every_other
def test_a_knot_is_tied_in_the_same_steps(language: str) -> None:
    for name, words in language_file(language)["knots"].items():
        knot = load_knots().find(name)
        assert counted(words["steps"]) == counted(knot.steps), knot.name


@every_other
def test_two_things_never_share_a_name(language: str) -> None:
    file = language_file(language)
    names = [knot["name"] for knot in file["knots"].values()]
    assert len(set(names)) == len(names)
    assert max(map(len, names)) <= NAME_MOST
    assert len(set(file["materials"].values())) == len(file["materials"])


@every_other
def test_what_is_said_fits_its_place(language: str) -> None:
    file = language_file(language)
    of_knots = [line for knot in file["knots"].values() for line in lines(knot)]
    assert [line for line in of_knots if len(line) > STEP_MOST] == []
    for caution in file["cautions"].values():
        assert len(caution["short"]) <= SHORT_MOST
        assert len(caution["short"]) <= len(caution["long"]) <= LONG_MOST


@every_language
@pytest.mark.parametrize("fonts", [OURS.medium, OURS.bold])
def test_every_character_can_be_set(language: str, fonts: Chain) -> None:
    for text in texts(language_file(language)):
        assert text == text.strip() != ""
        set_line(text, fonts, 9)  # raises NoGlyph


@every_other
def test_a_table_that_fits_a_card_in_english_fits_it_here(language: str) -> None:
    room = card_size("ID-1").width - 2 * INSET
    here = wording_in(language, None)
    for path in sorted(SAMPLES.glob("*-*.toml")):
        recipe = read_recipe(path.read_bytes(), PRACTICE)
        for unit in ("in", "cm"):
            leader = work_out(recipe, practice_of(Shop(units=unit)))
            there, ours = (
                needed_widths(told(leader, wording), scale())["between"]
                for wording in (ENGLISH, here)
            )
            assert there <= room
            assert ours <= room, path.name


@every_other
def test_knots_are_taught_in_the_language(language: str) -> None:
    there, wording = language_file(language)["knots"], wording_in(language, None)
    for name, said in there.items():
        words = knot_in(wording, load_knots().find(name))
        assert (list(words.steps), words.seat) == (said.get("steps"), said.get("seat"))
        assert words.caution == said.get("caution")


@every_other
def test_a_shops_own_steps_stand_before_a_translation(language: str) -> None:
    own = practice(f'language = "{language}"\n[knots.davy]\nsteps = ["Our own way."]\n').knots
    there, wording = language_file(language)["knots"], wording_in(language, None)
    davy = knot_in(wording, own.find("davy"))
    assert (davy.steps, davy.seat) == (("Our own way.",), there["davy"]["seat"])
    assert knot_in(wording, own.find("palomar")).seat == there["palomar"]["seat"]


def test_a_knot_of_a_persons_own_is_told_as_it_is_written() -> None:
    own = practice(
        "[knots.'bench knot']\ncode = 'BK'\nplaces = ['fly']\nstraight = 'yes'\n"
        "takes = { body = 5 }\nsteps = ['Our own way.']\nseat = 'Slow.'\n"
    ).knots.find("bench knot")
    assert knot_in(wording_in("es", None), own) == own
