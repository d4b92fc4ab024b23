"""Pieces whose length is asked for: how they are read, and where they stand in a proposal."""

from collections.abc import Callable, Sequence
from itertools import pairwise, product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_length, parse_strength
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.propose import search
from tagend.cards.propose.asked_piece import AskedPiece, read_bought, read_guard, read_sighter
from tagend.cards.propose.costs import step_costs
from tagend.cards.propose.net import net_of, nets_below_bought
from tagend.cards.propose.proposal import Proposal, propose
from tagend.cards.propose.search import Way, best_ways
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Wish
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.cards.propose.test_proposal import supply, wish
from tests.written import PRACTICE

BODY = [supply(size) for size in (21, 19, 17, 15, 13, 12, 11, 9, 8, 7)]
SIGHTERS = [supply(8, "sighter nylon"), supply(16, "sighter nylon")]
RACK = [*BODY, *SIGHTERS, supply(6), supply(12, "wire")]


def made(asked: Wish, rack: Sequence[Supply] = RACK) -> tuple[Proposal, ...]:
    return propose(asked, rack, PRACTICE, "Taper")


def parts(proposal: Proposal) -> list[str | None]:
    return [section.part for section in proposal.recipe.sections]


def test_a_sighter_is_a_length_or_a_strand_too() -> None:
    plain = read_sighter("18 in", PRACTICE)
    assert (plain.material, plain.diameter) == ("sighter nylon", None)
    strand = read_sighter("18 in 0.010 in sighter 7 lb", PRACTICE)
    assert strand == replace(
        plain, diameter=parse_diameter("0.010 in"), strength=parse_strength("7 lb")
    )


@pytest.mark.parametrize("text", ["12 in wire", "wire 12 in", "steel wire 12 in"])
def test_a_guard_is_a_material_and_a_length_in_either_order(text: str) -> None:
    assert read_guard(text, PRACTICE) == AskedPiece(
        part="bite guard", length=parse_length("12 in"), material="wire"
    )


@pytest.mark.parametrize(
    ("text", "length", "thick", "thin"),
    [
        ("5 ft 0.021 in to 0.012 in nylon", "5 ft", "0.021 in", "0.012 in"),
        ("7 ft 6 in 0.021 to 0.012 in nylon", "7 ft 6 in", "0.021 in", "0.012 in"),
        ("0.53 mm to 4X nylon 2.1 m", "2.1 m", "0.53 mm", "4X"),
        ("5 ft 0.021 in nylon", "5 ft", "0.021 in", None),
    ],
)
def test_a_bought_butt_may_taper(text: str, length: str, thick: str, thin: str | None) -> None:
    piece = read_bought(text, PRACTICE)
    assert (piece.length, piece.diameter) == (parse_length(length), parse_diameter(thick))
    assert piece.tapers_to == (parse_diameter(thin) if thin else None)


@pytest.mark.parametrize(
    ("read", "text", "fault"),
    [
        (read_guard, "wire", "'wire' gives no length"),
        (read_guard, "12 wire", "'12 wire' gives no length"),
        (read_guard, "12 in wier", "no material is called 'wier'"),
        (read_sighter, "", "gives no length"),
        (read_bought, "5 ft nylon", "has no diameter"),
        (read_bought, "5 ft 0.012 in to 0.021 in nylon", "does not taper"),
    ],
)
def test_other_pieces_are_refused(
    read: Callable[[str, Practice], AskedPiece], text: str, fault: str
) -> None:
    with pytest.raises(Refused, match=fault):
        read(text, PRACTICE)


def test_a_sighter_stands_above_the_tippet_and_is_the_one_that_steps_well() -> None:
    asked = replace(wish(108, 21, 6, None), sighter=read_sighter("18 in", PRACTICE))
    for proposal in made(asked):
        assert parts(proposal)[-2:] == ["sighter", "tippet"]
        assert proposal.strands[-2] is SIGHTERS[0]
        assert proposal.recipe.sections[-2].length.plain == "18 in"


def test_a_bought_butt_comes_first_and_takes_no_line() -> None:
    bought = read_bought("7 1/2 ft 0.021 in to 0.007 in nylon", PRACTICE)
    asked = replace(wish(108, 7, 6, None), bought=bought)
    first = made(asked)[0]
    assert parts(first) == ["butt", "tippet"]
    assert first.recipe.sections[0].bought
    assert work_out(first.recipe, PRACTICE).finished.high_mm == 108 * INCH_MM


def test_a_guard_of_wire_is_cut_from_any_wire_there_is() -> None:
    asked = replace(wish(108, 21, 8, None), guard=read_guard("12 in wire", PRACTICE))
    assert made(asked)[0].strands[-1].material == "wire"
    with pytest.raises(Refused, match="there is no wire for the bite guard; buy a spool of it"):
        made(asked, BODY)


def test_a_guard_longer_than_its_wire_is_no_reason_to_buy_a_tippet() -> None:
    asked = replace(wish(108, 21, 8, None), guard=read_guard("12 in wire", PRACTICE))
    with pytest.raises(Refused, match="or write a shorter bite guard"):
        made(asked, [*BODY, supply(12, "wire", left=13)])
    assert made(asked, [*BODY, supply(12, "wire", left=30)])


def test_a_sighter_that_steps_badly_is_told() -> None:
    asked = replace(wish(108, 21, 6, None), sighter=read_sighter("18 in", PRACTICE))
    with pytest.raises(Refused, match=r"\(16 sighter nylon\) does not fit above 6 thou"):
        made(asked, [*BODY, supply(6), SIGHTERS[1]])


def test_a_sighters_spool_gives_what_its_knots_take_too() -> None:
    asked = replace(wish(108, 21, 6, None), sighter=read_sighter("18 in", PRACTICE))
    with pytest.raises(Refused, match="has too little line"):
        made(asked, [*BODY, supply(6), supply(8, "sighter nylon", left=19)])


@pytest.mark.parametrize("gap", [(21, 9), (12, 6)])
def test_a_gap_below_a_bought_butt_is_named(gap: tuple[int, int]) -> None:
    thin, tippet = gap
    bought = read_bought(f"5 ft 0.030 in to 0.0{thin:02} in nylon", PRACTICE)
    asked = replace(wish(108, thin, tippet, None), bought=bought)
    with pytest.raises(Refused, match=rf"\(bought\) to {tippet} thou nylon .* in steps of 1\.45"):
        made(asked, [supply(tippet)])


@settings(max_examples=60, deadline=None)
@given(
    st.integers(130, 180),
    st.sampled_from([None, "18 in", "7 1/2 in"]),
    st.sampled_from([None, "12 in wire", "9 3/4 in wire"]),
    st.booleans(),
)
def test_the_total_is_met_exactly_and_no_step_is_warned_of(
    total: int, sighter: str | None, guard: str | None, ready_made: bool
) -> None:
    text = "5 ft 0.026 in to 0.017 in nylon"
    asked = replace(
        wish(total, 17 if ready_made else 21, 6, None),
        bought=read_bought(text, PRACTICE) if ready_made else None,
        sighter=read_sighter(sighter, PRACTICE) if sighter else None,
        guard=read_guard(guard, PRACTICE) if guard else None,
    )
    for proposal in made(asked):
        sections = proposal.recipe.sections
        leader = work_out(proposal.recipe, PRACTICE)
        assert leader.finished.high_mm == total * INCH_MM  # a bought butt loses what its knots take
        assert not any(found.rule == "step" for found in audit(leader, PRACTICE))
        cut = [s for s in sections if s.part in ("butt", "taper", "tippet") and not s.bought]
        assert all(a.diameter.mm > b.diameter.mm for a, b in pairwise(cut))


def test_what_carries_no_finding_comes_first() -> None:
    # Steps of 1.6 and 1.5 times are even; steps within the limit take a knot more.
    rack = [supply(size) for size in (24, 15, 10, 20, 17, 14, 12)]
    asked = wish(108, 24, 10, 9)
    found = [
        sum(f.severity != "note" for f in audit(work_out(p.recipe, PRACTICE), PRACTICE))
        for p in made(asked, rack)
    ]
    assert found == sorted(found)
    assert found[0] == 0


def test_many_spools_for_each_piece_are_found_in_few_steps(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    kinds = ("nylon", "hard nylon", "sighter nylon", "wire")
    rack = [Supply(kinds[at % 4], parse_diameter(f"{0.15 + at / 200:.3f} mm")) for at in range(100)]
    monkeypatch.setattr(search, "STEPS", 2 * len(rack))  # 25 sighters and 25 wires
    asked = replace(
        wish(108, 22, 10),
        bought=read_bought("4 ft 0.55 mm to 0.40 mm nylon", PRACTICE),
        butt=parse_diameter("0.40 mm"),
        sighter=read_sighter("18 in", PRACTICE),
        guard=read_guard("12 in wire", PRACTICE),
    )
    assert made(asked, rack)


def test_a_search_that_ends_before_it_finds_any_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(search, "STEPS", 1)
    with pytest.raises(Refused, match="no taper was found in 1 steps of the search"):
        made(wish(108, 21, 6, None))


@pytest.mark.parametrize("seed", range(100))
def test_of_all_sighters_and_guards_the_best_pair_is_found(seed: int) -> None:
    random = Random(seed)
    asked = replace(
        wish(100, 16, 7, random.choice([None, 5])),
        material="nylon",
        sighter=read_sighter("12 in", PRACTICE),
        guard=read_guard("9 in wire", PRACTICE),
    )

    def some(material: str, *sizes: int) -> list[Supply]:
        return [
            supply(size, material, random.choice([None, random.randint(10, 70)])) for size in sizes
        ]

    body = some("nylon", 16, *random.sample(range(8, 16), 4), 7)
    sighters = some("sighter nylon", *random.sample(range(6, 14), 3))
    guards = some("wire", *random.sample(range(7, 15), 3))
    alone = [best(asked, body, [s], [g]) for s, g in product(sighters, guards)]
    costs = [way.cost for ways in alone for way in ways]
    found = best(asked, body, sighters, guards)
    assert [way.cost for way in found] == sorted(costs)[:1]


def best(
    asked: Wish, body: list[Supply], sighters: list[Supply], guards: list[Supply]
) -> list[Way]:
    net = net_of(asked, [*body, *sighters, *guards], PRACTICE, sighters, guards)
    return best_ways(nets_below_bought(net), step_costs(net), 1)
