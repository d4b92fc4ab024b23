import pytest

from tagend.cards.words.language import ENGLISH, Wording, wording_in

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
