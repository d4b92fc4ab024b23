import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tagend.cards.code.check_characters import CHARACTERS
from tagend.cards.code.code_escapes import escape, unescape
from tagend.cards.code.cursor import Cursor
from tagend.layouts.base.faults import Refused
from tests.strategies import texts


def read(written: str, *, capital: bool = True) -> str:
    return unescape(Cursor(written, range(1, len(written) + 2), "name"), capital=capital)


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("Sandbar eight", "SANDBAR EIGHT"),
        ("GT bite leader", "G+T BITE LEADER"),
        ("Guide's choice, 9 ft", "GUIDE*S CHOICE$. 9 FT"),
        ("Café très léger", "CAFE$1 TRE$2S LE$1GER"),
        ("9 ft leader", "9 FT LEADER"),
        ("flats", "+FLATS"),
        ("Sandbar Eight", "SANDBAR +EIGHT"),
        ("SANDBAR EIGHT No 2", "++SANDBAR EIGHT N+O 2"),
        ("Łódź – żółw", "$LO$1DZ$1 $- Z$0O$1$LW"),
        ("Bjørn & Größe", "BJ$ORN $N +GRO$4$SE"),
        ("Ệ", "$U1EC6/"),
        ("50% + $5 * 3:1", "50$% $+ $$5 $R 3$/1"),
        ("Форель 7", "$U0424043E04400435043B044C/ 7"),
        ("a/α", "+A/$U03B1/"),
        ("Two  spaces", "TWO $U0020/SPACES"),
        ("𐐨", "$UD801DC28/"),
    ],
)
def test_texts_are_written_so_that_they_still_read(text: str, written: str) -> None:
    assert escape(text) == written
    assert read(written) == text


@given(texts(200), st.booleans())
@example("İıſßẞ K", False)
@example("x̂é́ 각", True)
def test_every_text_comes_back(text: str, capital: bool) -> None:
    text = unicodedata.normalize("NFC", text)
    written = escape(text, capital=capital)
    assert set(written) <= set(CHARACTERS) - {":"}
    assert read(written, capital=capital) == text


def test_every_letter_of_the_common_alphabets_comes_back() -> None:
    for code in (*range(0x20, 0x7F), *range(0xA1, 0x590), *range(0x1E00, 0x2300)):
        text = unicodedata.normalize("NFC", f"a{chr(code)}b{chr(code)}")
        assert read(escape(text)) == text


def test_western_accents_cost_two_characters_each() -> None:
    for letter in "áàâäãǎåçążăőșāñüß":
        assert len(escape(letter)) <= 4  # the letter, its mark and a turned case


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("AB$", "name, character 3: '$' writes nothing"),
        ("AB+", "name, character 3: '+' writes nothing"),
        ("A:B", "name, character 2: ':B' writes nothing"),
        ("A$UD800/", "name, character 2: '$UD800/' numbers no character"),
        ("A$U12/", "name, character 2: '$U' writes nothing"),
        ("A%", "name, character 2: '%' writes nothing"),
    ],
)
def test_what_writes_nothing_is_pointed_at(written: str, said: str) -> None:
    with pytest.raises(Refused) as refusal:
        read(written)
    assert str(refusal.value) == f"{said}; compare it with the label"
