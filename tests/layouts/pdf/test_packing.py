"""Pages packed: one or many come out in their order, drawn only as they are wanted."""

import zlib
from collections.abc import Iterator

import pytest

from tagend.layouts.pdf.packing import each_packed


@pytest.mark.parametrize("count", [1, 7, 8, 200])
def test_pages_come_out_packed_in_their_order(count: int) -> None:
    pages = [f"page {number} ".encode() * (1 + number * 37 % 500) for number in range(count)]
    assert [zlib.decompress(page) for page in each_packed(pages, count)] == pages


def test_pages_are_drawn_as_they_are_wanted() -> None:
    drawn: list[int] = []

    def pages() -> Iterator[bytes]:
        for number in range(200):
            drawn.append(number)
            yield b"page"

    packed = each_packed(pages(), 200)
    next(packed)
    assert len(drawn) < 20
    assert len([*packed]) == 199


def test_what_goes_wrong_while_a_page_is_drawn_comes_out() -> None:
    def pages() -> Iterator[bytes]:
        yield from [b"page"] * 20
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        list(each_packed(pages(), 200))
