"""The check characters against ISO/IEC 7064 and two libraries that know nothing of this one."""

from hypothesis import given
from hypothesis import strategies as st
from segno import consts
from stdnum.iso7064 import mod_97_10

from tagend.cards.code.check_characters import CHARACTERS, check_characters

BARE = CHARACTERS.replace(" ", "")


def test_the_characters_are_those_of_the_alphanumeric_mode() -> None:
    # ISO/IEC 18004, table of the alphanumeric mode, as segno has it.
    assert CHARACTERS.encode() == consts.ALPHANUMERIC_CHARS


@given(st.text("0123456789", min_size=1, max_size=30))
def test_a_pure_system_leaves_one(digits: str) -> None:
    # ISO/IEC 7064 defines its pure systems alike: read to the base r, text and check leave 1 over
    # M. The reference holds for MOD 97-10 what the next two tests hold for MOD 1271-36.
    assert int(digits + mod_97_10.calc_check_digits(digits), 10) % 97 == 1


def test_the_standards_example_for_mod_1271_36() -> None:
    # ISO/IEC 7064, MOD 1271-36: ISO79 has the check characters 3W (from memory).
    assert int("ISO793W", 36) % 1271 == 1


@given(st.text(BARE, max_size=300))
def test_text_and_check_leave_one_over_1271(text: str) -> None:
    digits = "".join(f"{BARE.index(char):02}" for char in text)
    check = check_characters(text)
    assert len(check) == 2
    assert int(digits + check, 36) % 1271 == 1


def test_a_worked_example() -> None:
    # A is 10, the point is 41 and 7 is 07; 104107 to the base 36 is
    # 36^5 + 4 x 36^3 + 36^2 + 7 = 60 654 103, and with two places for the check 78 607 717 488,
    # which leaves 6 over 1271. 1 - 6 + 1271 = 1266 = 35 x 36 + 6.
    assert check_characters("A.7") == "Z6"


def test_spaces_do_not_count() -> None:
    assert check_characters("30 * .023") == check_characters("30*.023")


@given(st.text(BARE, min_size=1, max_size=200), st.data())
def test_every_replaced_character_is_caught(text: str, data: st.DataObject) -> None:
    place = data.draw(st.integers(0, len(text) - 1))
    for other in BARE.replace(text[place], ""):
        changed = text[:place] + other + text[place + 1 :]
        assert check_characters(changed) != check_characters(text)


@given(st.text(BARE, min_size=2, max_size=200))
def test_every_change_of_neighbours_is_caught(text: str) -> None:
    for place in range(len(text) - 1):
        one, other = text[place], text[place + 1]
        changed = text[:place] + other + one + text[place + 2 :]
        assert one == other or check_characters(changed) != check_characters(text)
