import sys

import pytest

from tagend.layouts.codes import code_proof
from tagend.layouts.codes.code import symbol, symbol_path
from tagend.layouts.codes.code_proof import NotProven, proven
from tagend.layouts.paper.face import Symbol

MADE = symbol("TAG1:SANDBAR:30*.023*HN:")


@pytest.fixture(params=["with a camera's reader", "without"])
def _reader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    if request.param == "without":
        monkeypatch.setitem(sys.modules, "zxingcpp", None)


def with_module_turned(made: Symbol, x: int, y: int) -> Symbol:
    rows = [list(row) for row in made.rows]
    rows[y][x] = not rows[y][x]
    return made._replace(rows=tuple(map(tuple, rows)))


@pytest.mark.usefixtures("_reader")
def test_a_right_symbol_is_given_back() -> None:
    assert proven(MADE) is MADE


@pytest.mark.usefixtures("_reader")
def test_a_symbol_of_another_text_is_not_proven() -> None:
    with pytest.raises(NotProven, match="it reads 'TAG1:SANDBAR"):
        proven(MADE._replace(text="TAG1:SANDBAR:31*.023*HN:"))


@pytest.mark.usefixtures("_reader")
def test_one_wrong_module_is_enough() -> None:
    with pytest.raises(NotProven, match=r"does not read back as its text \(a codeword is wrong\)"):
        proven(with_module_turned(MADE, 12, 12))


def test_what_will_be_drawn_is_read_not_what_was_encoded(monkeypatch: pytest.MonkeyPatch) -> None:
    drawn = symbol_path(MADE)
    monkeypatch.setattr(code_proof, "symbol_path", lambda _: drawn[1:])
    with pytest.raises(NotProven):
        proven(MADE)


@pytest.mark.parametrize(
    ("seen", "why"),
    [
        (("TAG1:SANDBAR EIGHT",), "a camera's reader sees another text"),
        ((), "no camera reads it"),
    ],
)
def test_a_cameras_reader_has_the_last_word(
    monkeypatch: pytest.MonkeyPatch, seen: tuple[str, ...], why: str
) -> None:
    monkeypatch.setattr(code_proof, "texts_in_grey", lambda _: seen)
    with pytest.raises(NotProven, match=why):
        proven(MADE)
