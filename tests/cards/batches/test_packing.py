from itertools import product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.batches.budget import Budget
from tagend.cards.batches.cutting import STEPS
from tagend.cards.batches.packing import Bins, Packing, is_packable, packed
from tagend.cards.batches.spool_filling import Filling, total


def bins(lengths: list[int], rooms: list[int], fits: list[set[int]] | None = None) -> Bins:
    every = [set(range(len(lengths)))] * len(rooms)
    return Bins(tuple(lengths), tuple(rooms), tuple(map(frozenset, fits or every)))


def pack(found: Bins, wanted: Filling, steps: int = 10**6) -> Packing:
    return packed(found, wanted, Budget(steps))


def left_over(found: Bins, wanted: Filling) -> int:
    """Return the length left over, which must be known to be the least."""
    packing = pack(found, wanted)
    assert total(found.lengths, packing.left) == packing.least
    return packing.least


def is_true(found: Bins, wanted: Filling, packing: Packing) -> bool:
    """Whether a packing is of what was asked for, and each filling fits on its spool."""
    made = tuple(map(sum, zip(*packing.fillings, packing.left, strict=True)))
    return made == wanted and all(
        total(found.lengths, filling) <= room
        and all(size in fits for size, count in enumerate(filling) if count)
        for filling, room, fits in zip(packing.fillings, found.rooms, found.fits, strict=True)
    )


def every_way(found: Bins, wanted: Filling) -> set[Filling]:
    """Return all that the spools can give of the pieces wanted, by trying everything."""
    given_: set[Filling] = {(0,) * len(wanted)}
    for room, fits in zip(found.rooms, found.fits, strict=True):
        ranges = [range(n + 1) if size in fits else range(1) for size, n in enumerate(wanted)]
        fillings = [choice for choice in product(*ranges) if total(found.lengths, choice) <= room]
        sums = {tuple(map(sum, zip(a, b, strict=True))) for a in given_ for b in fillings}
        given_ = {way for way in sums if all(n <= m for n, m in zip(way, wanted, strict=True))}
    return given_


def test_two_half_spools_make_no_whole_piece() -> None:
    assert left_over(bins([6], [5, 5]), (1,)) == 6
    assert pack(bins([6], [5, 6]), (1,)).fillings == ((0,), (1,))


def test_a_piece_that_nobody_wants_needs_no_spool() -> None:
    assert left_over(bins([6], []), (0,)) == 0
    assert left_over(bins([6], []), (1,)) == 6


def test_filling_the_first_spool_with_the_longest_is_not_enough() -> None:
    # 7 and 3 + 3 + 3 into 9 and 7: the longest first on the first spool would leave a 3 over.
    assert pack(bins([7, 3], [9, 7]), (1, 3)).fillings == ((0, 3), (1, 0))


def test_filling_the_first_spool_to_the_brim_is_not_enough() -> None:
    # 6 + 4 fill the first, and then 5 + 5 is too long for the second; 5 + 5 and 6 + 3 leave a 4.
    assert left_over(bins([6, 5, 4, 3], [10, 9]), (1, 2, 1, 1)) == 4


def test_length_alone_is_not_enough() -> None:
    # 4 + 4 + 4 are 12, and 6 + 6 are 12 too; but each spool holds one 4.
    assert left_over(bins([4], [6, 6]), (3,)) == 4
    assert left_over(bins([4], [6, 6]), (2,)) == 0


def test_a_size_comes_only_from_spools_of_its_line() -> None:
    assert left_over(bins([5, 4], [9, 9], [{0}, {0, 1}]), (2, 2)) == 4
    assert pack(bins([5, 4], [9, 9], [{0}, {0, 1}]), (2, 1)).fillings == ((1, 0), (1, 1))


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
    packing = pack(found, wanted)
    assert is_true(found, wanted, packing)
    most = max(total(found.lengths, way) for way in ways)
    assert left_over(found, wanted) == total(found.lengths, wanted) - most
    assert is_packable(found, wanted, Budget(10**6)) == (wanted in ways)
    # With fewer steps than it takes, what is said is less, and still true.
    for steps in (0, 20, 100):
        rough = pack(found, wanted, steps)
        assert is_true(found, wanted, rough)
        assert rough.least <= packing.least <= total(found.lengths, rough.left)
        assert is_packable(found, wanted, Budget(steps)) in (None, wanted in ways)


@given(st.data())
@settings(deadline=None)
def test_what_was_cut_can_be_packed_again(data: st.DataObject) -> None:
    lengths = data.draw(st.lists(st.integers(20, 90), min_size=1, max_size=4, unique=True))
    cut = data.draw(
        st.lists(st.tuples(*[st.integers(0, 12)] * len(lengths)), min_size=1, max_size=5)
    )
    over = data.draw(st.integers(0, 5))
    made = bins(lengths, [over + total(lengths, filling) for filling in cut])
    wanted = tuple(map(sum, zip(*cut, strict=True)))
    packing = pack(made, wanted)
    assert is_true(made, wanted, packing)
    assert packing.least == 0


# ---- hard inputs -----------------------------------------------------------------------------


def hard(seed: int, sizes: int, spools: int, *, longest: int, room: int) -> tuple[Bins, Filling]:
    random = Random(seed)
    lengths = sorted(random.sample(range(longest // 5, longest), sizes), reverse=True)
    rooms = sorted(random.randint(room // 2, room) for _ in range(spools))
    share = sum(rooms) // sum(lengths) + 1
    return bins(lengths, rooms), tuple(random.randint(share // 2, 2 * share) for _ in lengths)


@pytest.mark.parametrize(
    ("sizes", "spools", "longest", "room"),
    [
        (3, 40, 1_000, 3_000),  # a few pieces a spool, and many spools
        (30, 500, 1_000, 3_000),
        (30, 500, 1_000, 100_000),
        (30, 10, 100_000, 50_000_000),  # parts far finer than any tape
        (360, 500, 3_000, 1_000_000),  # thirty recipes of twelve sections of one line
    ],
)
def test_the_budget_holds_and_the_bound_is_true(
    sizes: int, spools: int, longest: int, room: int
) -> None:
    found, wanted = hard(1, sizes, spools, longest=longest, room=room)
    budget = Budget(STEPS)
    packing = packed(found, wanted, budget)
    assert is_true(found, wanted, packing)
    assert packing.least <= total(found.lengths, packing.left)
    # What must be done is done, however little is left; that is bounded by itself.
    assert budget.left > -STEPS
    assert packed(found, wanted, Budget(STEPS)) == packing
