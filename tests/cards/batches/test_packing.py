from itertools import product
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.batches.packing import Bins, Filling, least_left_over, packed, total


def bins(lengths: list[int], rooms: list[int], fits: list[set[int]] | None = None) -> Bins:
    every = [set(range(len(lengths)))] * len(rooms)
    return Bins(tuple(lengths), tuple(rooms), tuple(map(frozenset, fits or every)))


def fills(found: Bins, wanted: Filling, fillings: list[Filling]) -> bool:
    """Whether fillings are what was asked for, and each fits on its spool."""
    made = tuple(map(sum, zip(*fillings, strict=True)))
    return made == wanted and all(
        total(found, filling) <= room
        and all(size in fits for size, count in enumerate(filling) if count)
        for filling, room, fits in zip(fillings, found.rooms, found.fits, strict=True)
    )


def every_way(found: Bins, wanted: Filling) -> set[Filling]:
    """Return all that the spools can give of the pieces wanted, by trying everything."""
    given_: set[Filling] = {(0,) * len(wanted)}
    for room, fits in zip(found.rooms, found.fits, strict=True):
        ranges = [range(n + 1) if size in fits else range(1) for size, n in enumerate(wanted)]
        fillings = [choice for choice in product(*ranges) if total(found, choice) <= room]
        sums = {tuple(map(sum, zip(a, b, strict=True))) for a in given_ for b in fillings}
        given_ = {way for way in sums if all(n <= m for n, m in zip(way, wanted, strict=True))}
    return given_


def test_two_half_spools_make_no_whole_piece() -> None:
    assert packed(bins([6], [5, 5]), (1,)) is None
    assert packed(bins([6], [5, 6]), (1,)) == [(0,), (1,)]


def test_a_piece_that_nobody_wants_needs_no_spool() -> None:
    assert packed(bins([6], []), (0,)) == []
    assert packed(bins([6], []), (1,)) is None


def test_filling_the_first_spool_greedily_is_not_enough() -> None:
    # 7 and 3 + 3 + 3 into 9 and 7: the longest first on the first spool would leave a 3 over.
    assert packed(bins([7, 3], [9, 7]), (1, 3)) == [(0, 3), (1, 0)]


def test_length_alone_is_not_enough() -> None:
    # 4 + 4 + 4 are 12, and 6 + 6 are 12 too; but each spool holds one 4.
    assert packed(bins([4], [6, 6]), (3,)) is None
    assert packed(bins([4], [6, 6]), (2,)) == [(1,), (1,)]


def test_a_size_comes_only_from_spools_of_its_line() -> None:
    assert packed(bins([5, 4], [9, 9], [{0}, {0, 1}]), (2, 2)) is None
    assert packed(bins([5, 4], [9, 9], [{0}, {0, 1}]), (2, 1)) == [(1, 0), (1, 1)]


def test_the_least_is_left_over() -> None:
    # The spool of 6 gives 5, that of 9 gives 5 + 3, and a 3 is left over.
    assert least_left_over(bins([5, 3], [6, 9]), (2, 2)) == 3
    assert least_left_over(bins([5, 3], [20]), (2, 2)) == 0
    assert least_left_over(bins([5, 3], []), (2, 2)) == 16


@pytest.mark.parametrize("seed", range(300))
def test_the_search_agrees_with_trying_everything(seed: int) -> None:
    random = Random(seed)
    sizes, spools = random.randint(1, 3), random.randint(1, 5)
    lengths = sorted(random.sample(range(2, 12), sizes), reverse=True)
    rooms = [random.randint(0, 60 // spools) for _ in range(spools)]
    kinds = [set(range(sizes))] * 3 + [{random.randrange(sizes)}]
    found = bins(lengths, rooms, [random.choice(kinds) for _ in rooms])
    wanted = tuple(random.randint(0, 4) for _ in lengths)
    ways = every_way(found, wanted)
    fillings = packed(found, wanted)
    assert (fillings is not None) == (wanted in ways)
    assert fillings is None or fills(found, wanted, fillings)
    most = max(total(found, way) for way in ways)
    assert least_left_over(found, wanted) == total(found, wanted) - most


@given(st.data())
def test_what_was_cut_can_be_packed_again(data: st.DataObject) -> None:
    lengths = data.draw(st.lists(st.integers(20, 90), min_size=1, max_size=4, unique=True))
    cut = data.draw(
        st.lists(st.tuples(*[st.integers(0, 12)] * len(lengths)), min_size=1, max_size=5)
    )
    rest = data.draw(st.integers(0, 5))
    made = bins(lengths, [rest + total(bins(lengths, []), filling) for filling in cut])
    wanted = tuple(map(sum, zip(*cut, strict=True)))
    fillings = packed(made, wanted)
    assert fillings is not None
    assert fills(made, wanted, fillings)
