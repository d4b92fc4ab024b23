import pytest
from hypothesis import given

from tagend.cards.base.value_readers import plain_text
from tagend.layouts.base.faults import Refused
from tests.strategies import texts


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("  two words ", "two words"),
        ("e\u0301te\u0301", "été"),
        ("№ 8, 20 °C, ½ © ™", "№ 8, 20 °C, ½ © ™"),
        ("Песок 浅瀬 أ", "Песок 浅瀬 أ"),
        ("non\u00a0breaking", "non\u00a0breaking"),
    ],
)
def test_a_text_is_composed_and_trimmed(written: str, text: str) -> None:
    assert plain_text(written, 60) == text


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("a\nb", "U+000A (a control character) cannot be printed; leave it out"),
        ("a\x1b[31m", "U+001B (a control character) cannot be printed; leave it out"),
        ("a\u202eb", "U+202E (right-to-left override) cannot be printed; leave it out"),
        ("a\u200bb", "U+200B (zero width space) cannot be printed; leave it out"),
        ("a\u2028b", "U+2028 (line separator) cannot be printed; leave it out"),
        ("fish 🐟", "U+1F41F (fish) cannot be printed; leave it out"),
        ("☀", "U+2600 (black sun with rays) cannot be printed; leave it out"),
        ("\ue000", "U+E000 (a control character) cannot be printed; leave it out"),
        ("", "this text is empty; write 1 to 8 characters"),
        (" \t", "this text is empty; write 1 to 8 characters"),
        ("123456789", "this text has 9 characters; write at most 8"),
        (8, 'this is not a text in quotes; write a text such as "Sandbar eight"'),
    ],
)
def test_what_no_card_can_show_is_refused(written: object, message: str) -> None:
    with pytest.raises(Refused) as caught:
        plain_text(written, 8)
    assert str(caught.value) == message


@given(texts(60))
def test_a_text_that_came_in_comes_in_again(text: str) -> None:
    assert plain_text(text, 60) == text
