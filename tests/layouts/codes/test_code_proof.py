import pytest
from msgspec.structs import replace

from tagend.layouts.codes import code_proof
from tagend.layouts.codes.code import Level, symbol, symbol_path
from tagend.layouts.codes.code_proof import NotProven, proven

MADE = symbol("TAG3:SANDBAR:30*23*HN:")


@pytest.mark.parametrize("text", ["TAG3:A", "tag1: any text, ASCII!", "TAG3:" + "8*11*N:" * 150])
@pytest.mark.parametrize("level", ["L", "H"])
def test_a_right_symbol_is_given_back(text: str, level: Level) -> None:
    made = symbol(text, level)
    assert proven(made) is made


def test_a_symbol_of_another_text_is_not_proven() -> None:
    with pytest.raises(NotProven, match="it reads 'TAG3:SANDBAR"):
        proven(replace(MADE, text="TAG3:SANDBAR:31*23*HN:"))


def test_a_symbol_that_cannot_be_read_is_not_proven() -> None:
    rows = len(MADE.rows)
    first = sum(((1 << rows) - 1) << row * (rows + 1) + 1 for row in range(rows - 12, rows))
    with pytest.raises(NotProven):
        proven(replace(MADE, dark=MADE.dark ^ first))  # its first twelve rows, light for dark


def test_what_will_be_drawn_is_read_not_what_was_encoded(monkeypatch: pytest.MonkeyPatch) -> None:
    drawn = [each for each in symbol_path(MADE) if each[1] > 7]
    monkeypatch.setattr(code_proof, "symbol_path", lambda _: drawn)
    with pytest.raises(NotProven):
        proven(MADE)
