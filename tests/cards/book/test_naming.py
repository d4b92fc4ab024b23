"""What a person calls things of the book, and what is meant."""

import re
import unicodedata
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tagend.cards.book.naming import batch_number, meant, numbers, plain, ranges
from tagend.layouts.base.faults import Refused
from tests.strategies import texts

lots = texts(40)
codes = st.from_regex(r"[A-Z]{1,2}[ -]?[0-9]{1,4}", fullmatch=True)
many = st.sets(st.integers(1, 999_999_999), min_size=1, max_size=30) | st.sets(
    st.integers(1, 40), min_size=1
)


@given(many)
def test_ranges_and_numbers_are_inverse(some: set[int]) -> None:
    told = ranges(some)
    assert numbers([told]) == tuple(sorted(some))
    assert numbers([f"No. {told}"]) == numbers(told.split()) == numbers([told])
    assert numbers([told.replace("-", "–")]) == numbers([told])
    assert numbers([told, told]) == numbers([told])


@given(many)
def test_ranges_say_each_run_once(some: set[int]) -> None:
    runs = [list(map(int, run.split("-"))) for run in ranges(some).split(", ")]
    assert all(len(run) == 1 or run[0] < run[1] for run in runs)
    assert all(one[-1] + 1 < two[0] for one, two in pairwise(runs))


@given(st.integers(1, 999_999_999), st.integers(0, 4), st.sampled_from([0x30, 0x660, 0xFF10]))
def test_zeros_before_a_number_and_digits_of_any_script_are_read(
    number: int, zeros: int, nought: int
) -> None:
    written = ("0" * zeros + str(number))[-9:]
    other = "".join(chr(nought + int(digit)) for digit in written)
    assert numbers([other]) == (int(written),)


@pytest.mark.parametrize(
    "words", ["0", "0-3", "5-3", "1-", "-4", "x", "1.5", "1-2-3", "1" * 10, "1-2000000", "²"]
)
def test_what_is_no_number_is_refused(words: str) -> None:
    with pytest.raises(Refused, match="no number"):
        numbers([words])


@given(st.text(max_size=20))
def test_any_words_are_numbers_or_refused(words: str) -> None:
    try:
        found = numbers([words])
    except Refused:
        return
    assert all(0 < number <= 999_999_999 for number in found)
    assert found == tuple(sorted(set(found)))


@given(codes, st.integers(0, 3), st.sampled_from(["", " ", "-", ".", "_", "/"]))
def test_case_signs_and_leading_zeros_make_no_difference(code: str, zeros: int, sign: str) -> None:
    letters, digits = re.findall("[A-Z]+|[0-9]+", code)
    other = f" {letters.lower()}{sign}{'0' * zeros}{int(digits)}"
    assert plain(other) == plain(code)
    assert meant("lot", other, [code]) == code


@given(lots)
def test_a_name_written_otherwise_is_the_same(name: str) -> None:
    assert plain(unicodedata.normalize("NFD", name)) == plain(name)
    assert plain(plain(name)) == plain(name)
    assert plain(f" {name}\t") == plain(name)


@given(st.lists(lots | codes, min_size=1, max_size=6), st.data())
def test_an_exact_name_is_meant(known: list[str], data: st.DataObject) -> None:
    asked = data.draw(st.sampled_from(known))
    assert meant("lot", asked, known) == asked


@given(st.lists(codes, max_size=6), codes)
def test_of_several_alike_none_is_guessed(known: list[str], asked: str) -> None:
    assume(asked not in known)
    alike = {name for name in known if plain(name) == plain(asked)}
    if len(alike) == 1:
        assert {meant("lot", asked, known)} == alike
        return
    with pytest.raises(Refused) as refusal:
        meant("lot", asked, known)
    assert all(name in str(refusal.value) for name in alike)


@given(st.integers(1, 999_999), st.sampled_from(["", "batch ", "Batch", " BATCH  00"]))
def test_a_batch_is_called_by_its_number(number: int, word: str) -> None:
    assert batch_number(f"{word}{number}") == number


@pytest.mark.parametrize("word", ["", "batch", "x", "1-2", "-1", "٣", "1" * 10])
def test_what_is_no_batch_is_refused(word: str) -> None:
    with pytest.raises(Refused):
        batch_number(word)
