import pytest

from tagend.cards.practice.shop_file import read_shop
from tagend.cards.words.language import ENGLISH, Wording, languages, wording_in, wording_of
from tagend.layouts.base.faults import Refused

COMMA = Wording("en", ",")


@pytest.mark.parametrize(
    ("plain", "shown"),
    [
        ("8.5", "8,5"),
        ("0.010 in", "0,010 in"),
        ("55.5–71.5", "55,5–71,5"),
        ("34 1/4", "34 1/4"),
        ("2026-05-31", "2026-05-31"),
        ("no. 3", "no. 3"),
        ("no.3", "no.3"),
        ("cut 3. Then wait.", "cut 3. Then wait."),
        ("", ""),
    ],
)
def test_only_a_point_between_figures_is_a_decimal_sign(plain: str, shown: str) -> None:
    assert COMMA.number(plain) == shown
    assert ENGLISH.number(plain) == plain


def test_numbers_one_after_the_other_are_never_taken_for_decimals() -> None:
    assert ENGLISH.listed(["46", "24.5", "8 in"]) == "46, 24.5, 8 in"
    assert COMMA.listed(["46", "24.5", "8 in"]) == "46; 24,5; 8 in"
    assert COMMA.listed(["46"]) == "46"
    assert COMMA.listed([]) == ""


def test_a_language_has_its_own_decimal_sign_or_the_one_that_is_asked_for() -> None:
    assert wording_in("en", None) == ENGLISH
    assert wording_in("en", ",") == COMMA
    assert wording_in("es", None) == Wording("es", ",")
    assert wording_in("es", ".") == Wording("es", ".")


def test_the_language_and_the_decimal_sign_are_those_of_the_shop() -> None:
    def told(shop: str) -> Wording:
        return wording_of(read_shop(shop.encode()))

    assert told("name = 'Bench'") == ENGLISH
    assert told("decimal = ','") == COMMA
    assert told("language = 'es'") == Wording("es", ",")
    assert told("language = 'es'\ndecimal = '.'") == Wording("es", ".")


def test_a_language_that_is_not_there_is_met_with_those_that_are() -> None:
    with pytest.raises(Refused) as error:
        wording_in("xx", None)
    (fault,) = error.value.faults
    assert fault.where == "language"
    assert all(language in fault.instead for language in languages())


def test_what_a_person_named_keeps_its_name() -> None:
    spanish = wording_in("es", None)
    assert spanish.knot("blood") != "blood"
    assert spanish.knot("the bench knot") == ENGLISH.knot("the bench knot") == "the bench knot"
    assert spanish.material("nylon") != ENGLISH.material("nylon") == "nylon"
    assert spanish.material("silk") == "silk"


def test_values_stand_in_their_places() -> None:
    assert ENGLISH.say("range", low=4, high=6) == "4 to 6"
    with pytest.raises(KeyError):
        ENGLISH.say("no such key")


@pytest.mark.parametrize("language", languages())
def test_the_form_of_words_goes_by_their_count(language: str) -> None:
    say = wording_in(language, None).say
    every: dict[str, dict[str, object]] = {
        "turns": {},
        "turns_of_both": {"below": 5},
        "turns_of_section": {"section": 2},
        "box_for": {},
        "sections_and_tippet": {"strand": ""},
        "buy_for": {},
        "shortage_of": {"amount": "", "strand": "", "leader": 3, "name": ""},
        "so_many_leaders": {},
        "counter_sheet": {},
    }
    for key, more in every.items():
        one, many = (say(key, count=count, **more) for count in (1, 2))
        assert one.replace("1", "2", 1) != many, key
        assert say(key, count=7, **more) == many.replace("2", "7", 1)
