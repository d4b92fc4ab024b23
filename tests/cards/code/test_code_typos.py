from hypothesis import assume, given
from hypothesis import strategies as st

from tagend.cards.code.check_characters import CHARACTERS, check_characters
from tagend.cards.code.code_typos import corrections

BARE = CHARACTERS.replace(" ", "")
BODIES = st.text(BARE, min_size=2, max_size=150)


@given(BODIES, st.data())
def test_a_replaced_character_is_among_the_corrections(body: str, data: st.DataObject) -> None:
    text = body + check_characters(body)
    place = data.draw(st.integers(0, len(text) - 1))
    letters = BARE if place < len(body) else BARE[:36]
    other = data.draw(st.sampled_from(letters.replace(text[place], "")))
    slipped = text[:place] + other + text[place + 1 :]
    assert text in [slip.applied(slipped) for slip in corrections(slipped)]


@given(BODIES, st.data())
def test_neighbours_changed_are_among_the_corrections(body: str, data: st.DataObject) -> None:
    text = body + check_characters(body)
    place = data.draw(st.integers(0, len(body) - 2))
    assume(text[place] != text[place + 1])
    slipped = text[:place] + text[place + 1] + text[place] + text[place + 2 :]
    assert text in [slip.applied(slipped) for slip in corrections(slipped)]


@given(BODIES)
def test_every_correction_makes_the_check_fit(body: str) -> None:
    for slip in corrections(f"{body}00"):
        text = slip.applied(f"{body}00")
        assert check_characters(text[:-2]) == text[-2:]


def test_look_alikes_come_first_and_swaps_before_any_other_character() -> None:
    text = "30*.023:"
    text += check_characters(text)
    assert corrections(text.replace("30", "3O"))[0].applied("3O*.023") == "30*.023"
    assert corrections(text.replace("23", "32"))[0].meant == "23"


def test_spaces_stay_where_they_are() -> None:
    text = "AB12:" + check_characters("AB12:")
    (slip, *_) = corrections(text.replace("1", "I"))
    assert slip.applied("A B I 2 :") == "A B 1 2 :"
