import pytest

from tagend.cards.base.toml_file import DEEPEST, LONGEST, read_toml
from tagend.layouts.base.faults import Refused

NESTED = "this file is nested too deep; write tables and texts only"


def refusal(data: bytes) -> str:
    with pytest.raises(Refused) as caught:
        read_toml(data)
    return str(caught.value)


def test_tables_come_out_as_toml_has_them() -> None:
    assert read_toml(b'name = "x"\n[[section]]\nlength = "9 ft"\n') == {
        "name": "x",
        "section": [{"length": "9 ft"}],
    }


@pytest.mark.parametrize(
    "nested",
    [b"a = " + b"[" * 100_000, b"a = " + b"[" * 1400 + b"]" * 1400, b"[a" + b".a" * 1400 + b"]"],
)
def test_what_is_nested_too_deep_is_refused(nested: bytes) -> None:
    assert refusal(b"\n".join(nested[i : i + 2900] for i in range(0, len(nested), 2900))) == NESTED


def test_nesting_is_allowed_up_to_its_limit() -> None:
    lists = DEEPEST - 2  # one level for the file itself, one for what the lists hold
    deep = b"a = " + b"[" * lists + b"1" + b"]" * lists
    assert read_toml(deep)
    assert refusal(deep.replace(b"1", b"[1]")) == NESTED


@pytest.mark.parametrize("number", ["9" * 5000, "0x" + "f" * 5000])
def test_a_number_too_long_for_python_is_refused(number: str) -> None:
    assert refusal(f"\na = {number}".encode()) == (
        f"line 2: this line has {len(number) + 4} characters; write at most {LONGEST} in a line"
    )
