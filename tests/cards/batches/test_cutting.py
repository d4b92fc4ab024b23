"""Batches: line drawn from each spool, what runs out when, and what is to buy."""

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import pairwise

import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Batch, Cut, LeaderAt, Order, Pull, Shortage
from tagend.cards.batches.cutting import cut_batch, spool_labels
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.layouts.base.quantities import INCH_MM
from tests.tieable import counts, seeds, tieable
from tests.written import leader, recipe, section

# Cut lengths, so that the sums below are of the very numbers written.
TWO = leader(
    recipe(
        section("50 in", "0.020 in", "hard nylon"),
        section("30 in", "0.010 in", "fluorocarbon"),
        lengths="cut",
    )
)


def spool(label: str, material: str, diameter: str, left: str) -> Spool:
    return Spool(label, material, parse_diameter(diameter), parse_line_length(left))


def stiff(label: str, left: str, diameter: str = "0.020 in") -> Spool:
    return spool(label, "hard nylon", diameter, left)


CLEAR = spool("Clear", "fluorocarbon", "0.010 in", "100 yd")


def rack(*spools: Spool) -> Rack:
    return Rack(spools)


def drawn(of: Batch) -> dict[str, Fraction]:
    """Return the inches drawn from each spool."""
    return {pull.spool.label: pull.mm / INCH_MM for pull in of.pulls if pull.spool}


def cut_from(of: Batch) -> dict[str, int]:
    """Return the pieces cut from each spool."""
    return {
        pull.spool.label: sum(cut.count for cut in pull.cuts) for pull in of.pulls if pull.spool
    }


def test_each_line_is_a_pull_of_all_its_pieces() -> None:
    whole = cut_batch([Order(TWO, 12)], rack(stiff("Stiff", "20 yd"), CLEAR))
    assert drawn(whole) == {"Stiff": 600, "Clear": 360}  # 12 × 50 and 12 × 30
    # 20 yd are 720 in
    assert [pull.left_mm for pull in whole.pulls] == [120 * INCH_MM, (3600 - 360) * INCH_MM]
    assert whole.shortages == ()
    assert [pull.runs_out_at for pull in whole.pulls] == [None, None]


def number(at: LeaderAt | None) -> int | None:
    return at and at.number


def test_a_spool_runs_out_at_the_first_leader_it_has_no_piece_for() -> None:
    whole = cut_batch([Order(TWO, 12)], rack(stiff("Stiff", "10 yd"), CLEAR))
    # 360 in hold 7 pieces of 50 in
    assert cut_from(whole)["Stiff"] == 7
    assert number(whole.pulls[0].runs_out_at) == 8
    (short,) = whole.shortages
    assert short.mm / INCH_MM == 250  # 5 × 50
    assert short.first.number == 8


def test_a_spool_that_is_just_long_enough_does_not_run_out() -> None:
    whole = cut_batch([Order(TWO, 12)], rack(stiff("Stiff", "600 in"), CLEAR))
    assert whole.pulls[0].runs_out_at is None
    assert whole.pulls[0].left_mm == 0


def test_the_emptiest_spool_that_will_do_is_used_up_first() -> None:
    whole = cut_batch(
        [Order(TWO, 5)],
        rack(stiff("Full", "40 yd"), stiff("Rest", "120 in"), stiff("Stub", "40 in"), CLEAR),
    )
    # The stub is shorter than a piece; the rest holds 2
    assert cut_from(whole) == {"Full": 3, "Rest": 2, "Stub": 0, "Clear": 5}
    out = {pull.spool.label: number(pull.runs_out_at) for pull in whole.pulls if pull.spool}
    assert out == {"Full": None, "Rest": 3, "Stub": 1, "Clear": None}


def test_without_a_rack_each_kind_of_line_never_ends() -> None:
    whole = cut_batch([Order(TWO, 12)], None)
    assert [pull.material for pull in whole.pulls] == ["hard nylon", "fluorocarbon"]
    assert [pull.mm / INCH_MM for pull in whole.pulls] == [600, 360]
    assert all(pull.left_mm is None and pull.runs_out_at is None for pull in whole.pulls)
    assert whole.shortages == ()


def test_an_empty_rack_is_a_list_of_what_to_buy() -> None:
    whole = cut_batch([Order(TWO, 3)], rack())
    assert whole.pulls == ()
    assert [short.material for short in whole.shortages] == ["hard nylon", "fluorocarbon"]
    assert [short.mm / INCH_MM for short in whole.shortages] == [150, 90]
    assert all(short.first.number == 1 for short in whole.shortages)


def test_line_of_another_material_or_size_is_not_used() -> None:
    other = rack(spool("Soft", "nylon", "0.020 in", "90 yd"), stiff("Thin", "90 yd", "0.019 in"))
    whole = cut_batch([Order(TWO, 1)], other)
    assert whole.pulls == ()
    assert len(whole.shortages) == 2


def test_inches_and_millimetres_of_one_strand_share_a_spool() -> None:
    # 0.51 mm is how a spool of 0.020 in, 0.508 mm, is printed in millimetres
    metric = leader(recipe(section("50 in", "0.51 mm", "hard nylon"), lengths="cut"))
    whole = cut_batch([Order(TWO, 4), Order(metric, 4)], rack(stiff("Stiff", "10 yd"), CLEAR))
    # 360 in hold 7 of the 8 pieces; a spool can be cut only once
    assert cut_from(whole)["Stiff"] == 7
    assert [pull.spool.label for pull in whole.pulls if pull.spool] == ["Stiff", "Clear"]
    assert [short.mm for short in whole.shortages] == [50 * INCH_MM]
    assert whole.shortages[0].first == (whole.orders[1], 3)


def test_the_longest_pieces_are_cut_first() -> None:
    of = leader(
        recipe(*(section(f"{inches} in", "0.020 in") for inches in (20, 50, 30, 50)), lengths="cut")
    )
    (pull,) = cut_batch([Order(of, 2)], None).pulls
    lengths = [cut.piece.cut_mm for cut in pull.cuts]
    assert lengths == sorted(lengths, reverse=True)
    assert [cut.piece.place for cut in pull.cuts][:2] == [2, 4]  # of equals, from the butt


def test_what_is_bought_ready_made_is_not_cut() -> None:
    of = leader(
        recipe(section("5 ft", "0.020 in", "hard nylon", bought=True), section("20 in", "4X"))
    )
    whole = cut_batch([Order(of, 5)], rack(stiff("Stiff", "40 yd")))
    assert [pull.material for pull in whole.pulls] == []
    assert [short.material for short in whole.shortages] == ["nylon"]


def test_a_spool_runs_out_at_a_leader_of_a_recipe() -> None:
    other = leader(replace(TWO.recipe, name="The other"))
    whole = cut_batch([Order(TWO, 3), Order(other, 3)], rack(stiff("Stiff", "200 in"), CLEAR))
    # 4 pieces: three of the first and one of the other
    assert whole.pulls[0].runs_out_at == (whole.orders[1], 1)
    cuts = {cut.leader.recipe.name: cut.count for cut in whole.pulls[0].cuts}
    assert cuts == {"Under test": 3, "The other": 1}


def test_sections_are_labelled_with_the_spools_that_the_rack_has() -> None:
    assert spool_labels(TWO, rack(stiff("First", "1 yd"), stiff("Second", "90 yd"))) == {1: "First"}
    assert spool_labels(TWO, rack(CLEAR)) == {2: "Clear"}
    assert spool_labels(TWO, None) == {}


# ---- laws ------------------------------------------------------------------------------------


def rich(leaders: Sequence[Leader]) -> Rack:
    """Return a rack with a spool of 10 km for each kind of line."""
    lines = {
        (piece.section.material, piece.section.diameter.plain)
        for of in leaders
        for piece in of.pieces
    }
    return Rack(
        tuple(
            spool(f"{material} {diameter}", material, diameter, "10000 m")
            for material, diameter in sorted(lines)
        )
    )


@given(st.lists(st.tuples(seeds, counts, st.integers(1, 40)), min_size=1, max_size=4))
@settings(max_examples=60, deadline=None)
def test_a_rich_rack_gives_every_leader_its_cuts(
    of: list[tuple[int, int | None, int]],
) -> None:
    orders = [Order(tieable(seed, sections), count) for seed, sections, count in of]
    whole = cut_batch(orders, rich([order.leader for order in orders]))
    assert whole.shortages == ()
    total = sum((pull.mm for pull in whole.pulls), start=Fraction(0))
    assert total == sum(order.count * order.leader.cut_mm for order in orders)
    assert all(pull.runs_out_at is None for pull in whole.pulls)


spools = st.lists(
    st.builds(
        lambda material, thou, inches: spool("", material, f"0.0{thou} in", f"{inches} in"),
        st.sampled_from(["hard nylon", "fluorocarbon"]),
        st.sampled_from([10, 20]),
        st.integers(1, 600),
    ),
    max_size=6,
)
sections = st.builds(
    section,
    st.integers(5, 60).map(lambda inches: f"{inches} in"),
    st.sampled_from(["0.010 in", "0.020 in"]),
    st.sampled_from(["hard nylon", "fluorocarbon"]),
)
orders = st.lists(
    st.builds(
        lambda parts, count: Order(leader(recipe(*parts, lengths="cut")), count),
        st.lists(sections, min_size=1, max_size=4),
        st.integers(1, 8),
    ),
    min_size=1,
    max_size=3,
)


def in_batch(whole: Batch, at: LeaderAt) -> tuple[int, int]:
    return next(n for n, order in enumerate(whole.orders) if order is at.order), at.place


def _cuts(sources: Iterable[Pull] | Iterable[Shortage]) -> list[Cut]:
    return [cut for source in sources for cut in source.cuts]


@given(orders, spools)
@settings(max_examples=80, deadline=None)
def test_no_spool_gives_more_than_it_has_and_no_piece_is_lost(
    of: list[Order], on_rack: list[Spool]
) -> None:
    labelled = tuple(replace(one, label=f"S{k}") for k, one in enumerate(on_rack))
    whole = cut_batch(of, Rack(labelled))
    assert all(pull.left_mm is not None and pull.left_mm >= 0 for pull in whole.pulls)
    used = [pull.spool for pull in whole.pulls if pull.spool]
    assert len(used) == len({one.label for one in used})
    wanted = Counter(
        {(id(o.leader), piece.place): o.count for o in of for piece in o.leader.pieces}
    )
    found: Counter[tuple[int, int]] = Counter()
    for cut in (*_cuts(whole.pulls), *_cuts(whole.shortages)):
        found[id(cut.leader), cut.piece.place] += cut.count
        assert len(set(cut.places)) == cut.count
    assert found == wanted


@given(orders, spools)
@settings(max_examples=80, deadline=None)
def test_a_spool_runs_out_before_a_piece_that_it_is_too_short_for(
    of: list[Order], on_rack: list[Spool]
) -> None:
    whole = cut_batch(of, Rack(tuple(replace(one, label=f"S{k}") for k, one in enumerate(on_rack))))
    for short in whole.shortages:
        alike = {
            pull.spool.label: pull
            for pull in whole.pulls
            if pull.spool
            and (pull.material, pull.diameter_mm) == (short.material, short.diameter_mm)
        }
        # What is to buy goes on none of its spools, and each has run out by then.
        for pull in alike.values():
            assert pull.left_mm is not None
            assert all(pull.left_mm < cut.piece.cut_mm for cut in short.cuts)
            assert pull.runs_out_at is not None
            assert in_batch(whole, pull.runs_out_at) <= in_batch(whole, short.first)
    for cuts in (*(pull.cuts for pull in whole.pulls), *(short.cuts for short in whole.shortages)):
        lengths = [cut.piece.cut_mm for cut in cuts]
        assert lengths == sorted(lengths, reverse=True)


@given(seeds, st.integers(1, 500))
@settings(max_examples=20, deadline=None)
def test_one_more_leader_never_draws_less(seed: int, count: int) -> None:
    of, on_rack = tieable(seed), rich([tieable(seed)])
    fewer, more = (cut_batch([Order(of, n)], on_rack) for n in (count, count + 1))
    drawn_by = [sum((p.mm for p in b.pulls), start=Fraction(0)) for b in (fewer, more)]
    assert all(less < next_one for less, next_one in pairwise(drawn_by))


@pytest.mark.parametrize("count", [1, 999, COUNT_MOST])
def test_counts_are_exact_however_large(count: int) -> None:
    whole = cut_batch([Order(TWO, count)], None)
    assert whole.pulls[0].mm == count * 50 * INCH_MM
