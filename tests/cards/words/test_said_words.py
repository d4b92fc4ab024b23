"""What is found in a leader, and why a knot was chosen, said in every language."""

import re

import pytest
from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.passing import Spread
from tagend.cards.leader.said import Said, said
from tagend.cards.practice.shop_file import Shop, practice_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import Wording, language_file, languages, wording_in
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words, message
from tests.cards.leader.audit.test_audit import ALL_WRONG, LEVEL, THIN
from tests.written import PRACTICE, leader, recipe, section

SPANISH = wording_in("es", None)
PLAIN = leader(recipe(section("9 ft", "4X")))


def messages(written: Recipe, wording: Wording, units: str | None = None) -> dict[str, str]:
    """Return a message of each rule that finds something, in the unit of a shop."""
    by = practice_of(Shop(units=units))
    told = Told(leader(written, by), wording)
    return {each.rule: message(each, told) for each in audit(told.leader, by)}


def spanish(says: Said, of: Leader = PLAIN) -> str:
    return in_words(says, Told(of, SPANISH))


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("written", [ALL_WRONG, LEVEL, THIN])
def test_every_finding_is_a_whole_sentence_in_every_language(
    language: str, written: Recipe
) -> None:
    for said_of in messages(written, wording_in(language, None)).values():
        assert not re.search(r"[{}]|None|Said|Fraction", said_of)


def test_findings_are_in_the_unit_of_the_shop_and_its_decimal_sign() -> None:
    said_of = messages(ALL_WRONG, SPANISH, "cm")
    assert said_of["stated total"].startswith("la receta dice 2,74 m, ")  # 9 x 30.48 cm
    assert "el tippet mide 10,2 cm entre sus nudos" in said_of["class tippet"]  # 4 in
    assert "de nailon duro 0,33 mm a nailon 0,38 mm" in said_of["rise"]  # 0.013 and 0.015 in
    for text in said_of.values():
        assert not re.search(r"\d\.\d| (in|ft)\b(?!;|$)", text.replace("ft por in", ""))


def test_a_unit_that_was_mistaken_is_told_as_it_was_written() -> None:
    slip = recipe(section("9 ft", "0.017 in", "nylon", "22 kg"))
    assert "22 kg es mucha resistencia" in messages(slip, SPANISH, "cm")["strength for size"]
    assert messages(slip, SPANISH, "in")["strength for size"].count("22 lb") == 1


@pytest.mark.parametrize(("count", "verb"), [(0, "quedan"), (1, "queda"), (6, "quedan")])
def test_what_is_counted_has_the_form_of_its_number(count: int, verb: str) -> None:
    says = spanish(said("turns_back", turned=Spread(0.21, 0.21), count=count, of=8))
    assert f" {verb} por debajo {count} de 8" in says


@pytest.mark.parametrize(("turns", "word"), [(1, "1 vuelta a"), (5, "5 vueltas a")])
def test_turns_are_one_or_many(turns: int, word: str) -> None:
    core = said("strands", strands=2)
    thick = PLAIN.tippet.section.diameter.mm  # 4X is 0.007 in
    wound = said("wound", count=turns, core=core, thick=thick, doubled=None)
    assert spanish(wound) == f"{word} 2 hilos de 0,007 in"


def test_a_reason_against_a_knot_stands_within_the_choice_of_another() -> None:
    against = said("too_unlike", most=2, ratio=2.2)
    why = said("not_this", knot="triple surgeon's", against=against)
    name = SPANISH.knot("triple surgeon's")
    assert spanish(why) == f"{name} no: {spanish(against)}"
    assert "2,20 veces" in spanish(why)


def test_lengths_that_differ_by_less_than_a_mark_are_told_apart() -> None:
    least = PRACTICE.rules["class tippet"].limits[0]
    metric = leader(recipe(section("38 cm", "4X")), replace(PRACTICE, unit="cm"))
    for more, words in ((1, ("38,1 cm", "38,2 cm")), (Fraction(1, 5), ("38,10 cm", "38,12 cm"))):
        says = spanish(said("short_class_tippet", lengths=(least, least + more)), metric)
        assert all(word in says for word in words)


def test_every_sentence_of_english_is_said_in_spanish_with_other_words() -> None:
    here, there = language_file("es")["said"], language_file("en")["said"]
    alike = {key for key in there if here[key] == there[key]}
    assert alike == set()
