import pytest

from tagend.cards.base.units import parse_length
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.recipe.recipe import Part, Recipe, Strand, Variant
from tagend.cards.recipe.strand import parse_strand
from tagend.cards.variants.variant_strands import restrung
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE, recipe, section

TAPER = recipe(
    section("36 in", "0.021 in", knot="blood"),
    section("24 in", "0.019 in", knot="blood", dropper="6 in", part="taper"),
    section("18 in", "0.017 in", knot="triple surgeon's"),
    section("24 to 30 in", "0.013 in", "fluorocarbon", "8 lb"),
    fly="non-slip loop",
)


def strand(text: str) -> Strand:
    return parse_strand(text, PRACTICE)


def vary(change: Variant, before: Recipe = TAPER) -> Recipe:
    return restrung(before, change, PRACTICE)


def sizes(leader: Recipe) -> list[str]:
    return [section.diameter.plain for section in leader.sections]


def parts(leader: Recipe) -> list[Part]:
    return [piece.part for piece in work_out(leader, PRACTICE).pieces]


def test_without_other_strands_a_recipe_is_itself() -> None:
    assert vary(Variant("longer", butt=parse_length("6 ft"))) == TAPER


# ---- stopping early --------------------------------------------------------------------------


def test_a_leader_stopped_one_section_early_is_fished_with_the_heavier_end() -> None:
    # Common practice, no source.
    short = vary(Variant("short", stop_after=3))
    assert sizes(short) == ["0.021 in", "0.019 in", "0.017 in"]
    assert parts(short) == ["butt", "taper", "tippet"]
    assert work_out(short, PRACTICE).tippet.section.diameter.thou == 17
    assert short.fly.knot == "non-slip loop"


def test_where_it_stops_there_is_no_joint_and_no_dropper() -> None:
    short = vary(Variant("short", stop_after=2))
    assert (short.sections[-1].knot, short.sections[-1].dropper) == (None, None)
    assert parts(short) == ["butt", "tippet"]


def test_a_tippet_beside_it_is_tied_on_below() -> None:
    other = vary(Variant("short", stop_after=2, tippet=strand("0.013 in fluorocarbon 14 lb")))
    assert sizes(other) == ["0.021 in", "0.019 in", "0.013 in"]
    assert parts(other) == ["butt", "taper", "tippet"]
    assert other.sections[-1].length.plain == "24 to 30 in"  # as the tippet that it stands for
    assert other.sections[1].dropper == parse_length("6 in")


@pytest.mark.parametrize(
    ("stop", "before", "fault"),
    [
        (4, TAPER, "the leader has 4 sections; write 1 to 3"),
        (9, TAPER, "the leader has 4 sections; write 1 to 3"),
        (1, recipe(section("9 ft", "4X")), "the leader has 1 section; leave it whole"),
    ],
)
def test_a_leader_cannot_stop_after_its_end(stop: int, before: Recipe, fault: str) -> None:
    with pytest.raises(Refused) as refusal:
        vary(Variant("short", stop_after=stop), before)
    assert str(refusal.value) == f"stop_after: {fault}"


# ---- tippet ----------------------------------------------------------------------------------


def test_another_tippet_takes_the_place_and_length_of_the_old() -> None:
    tippet = vary(Variant("finer", tippet=strand("4X nylon"))).sections[-1]
    assert (tippet.length.plain, tippet.diameter.plain, tippet.material) == (
        "24 to 30 in",
        "4X",
        "nylon",
    )
    assert (tippet.strength, tippet.part) == (None, "tippet")


def test_the_bite_guard_below_another_tippet_stays() -> None:
    guard = section("12 in", "0.024 in", "fluorocarbon")
    before = recipe(section("5 ft", "0.024 in"), section("20 in", "0.015 in"), guard)
    other = vary(Variant("other", tippet=strand("0.017 in nylon")), before)
    assert sizes(other) == ["0.024 in", "0.017 in", "0.024 in"]
    assert parts(other) == ["butt", "tippet", "bite guard"]


# ---- bite guard ------------------------------------------------------------------------------


def test_for_rough_mouths_a_heavier_bite_guard_goes_on_the_end() -> None:
    # Common practice, no source: fluorocarbon, heavier than the tippet, and no fault of the taper.
    rough = vary(Variant("rough", guard=strand("0.018 in fluorocarbon 28 lb 12 in")))
    assert sizes(rough) == ["0.021 in", "0.019 in", "0.017 in", "0.013 in", "0.018 in"]
    assert parts(rough) == ["butt", "taper", "taper", "tippet", "bite guard"]
    rules = {finding.rule for finding in worksheet(rough, PRACTICE).findings}
    assert not rules & {"rise", "untieable knot", "unfit knot", "too short"}


def test_a_bite_guard_takes_the_place_of_one_that_is_there() -> None:
    rough = vary(Variant("rough", guard=strand("0.017 in fluorocarbon 12 in")))
    rougher = vary(Variant("rougher", guard=strand("0.020 in wire")), rough)
    assert sizes(rougher)[-2:] == ["0.013 in", "0.020 in"]
    assert rougher.sections[-1].length.plain == "12 in"


def test_a_thick_end_counts_as_a_bite_guard_that_is_there() -> None:
    thick = section("12 in", "0.030 in", "fluorocarbon")
    before = recipe(section("5 ft", "0.024 in"), section("20 in", "0.015 in"), thick)
    rougher = vary(Variant("rougher", guard=strand("0.020 in wire")), before)
    assert sizes(rougher) == ["0.024 in", "0.015 in", "0.020 in"]
    assert parts(rougher) == ["butt", "tippet", "bite guard"]


def test_a_new_bite_guard_says_its_length() -> None:
    with pytest.raises(Refused) as refusal:
        vary(Variant("rough", guard=strand("0.020 in wire")))
    assert str(refusal.value) == (
        "guard: '0.020 in wire' says no length; write one behind it: '0.020 in wire 12 in'"
    )


def test_a_bite_guard_below_the_thirtieth_section_is_one_too_many() -> None:
    long = recipe(*(section("6 in", "0.020 in") for _ in range(30)))
    with pytest.raises(Refused) as refusal:
        vary(Variant("rough", guard=strand("0.020 in wire 6 in")), long)
    assert str(refusal.value) == "guard: the leader has 30 sections; leave one out for it"


# ---- other sections --------------------------------------------------------------------------


def test_sections_are_tied_of_other_strands() -> None:
    change = Variant(
        "limp", replace={1: strand("0.022 in nylon"), 3: strand("0.016 in nylon 20 in")}
    )
    limp = vary(change)
    assert sizes(limp) == ["0.022 in", "0.019 in", "0.016 in", "0.013 in"]
    assert [part.length.plain for part in limp.sections] == [
        "36 in",
        "24 in",
        "20 in",
        "24 to 30 in",
    ]
    assert limp.sections[1] == TAPER.sections[1]


def test_a_strand_is_neither_bought_nor_tapered() -> None:
    before = recipe(section("9 ft", "0.021 in", bought=True, tapers_to="4X"), section("2 ft", "5X"))
    (first, _) = vary(Variant("own", replace={1: strand("0.021 in nylon")}), before).sections
    assert (first.bought, first.tapers_to) == (False, None)


def test_a_section_that_is_not_there_cannot_be_replaced() -> None:
    with pytest.raises(Refused) as refusal:
        vary(Variant("limp", replace={5: strand("4X nylon")}))
    assert str(refusal.value) == "replace, 5: the leader has 4 sections; write 1 to 4"
