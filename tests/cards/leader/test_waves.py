import math

import pytest
from cfractions import Fraction
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.passing import Passing, Spread, passing
from tagend.cards.leader.printed_waves import most_reflected, stay_under
from tagend.cards.leader.suitability import Meeting
from tagend.cards.leader.waves import Measure, measure
from tagend.cards.practice.materials import Material, Range, load_materials
from tagend.cards.practice.printed_tapers import printed_tapers
from tests.written import SIX, leader, practice, recipe, section

MATERIALS = load_materials()
NYLON = MATERIALS.find("nylon")
KNOWN = [material for material in MATERIALS if material.density]
UNKNOWN = [material for material in MATERIALS if not material.density]

diameters = st.fractions("0.05", 1, max_denominator=1000).map(Fraction)
materials = st.sampled_from(KNOWN)


def known_spread(spread: Spread | None) -> Spread:
    assert spread is not None
    assert spread.low <= spread.high
    return spread


def met(upper: Material, upper_mm: Fraction, lower: Material, lower_mm: Fraction) -> Passing:
    return passing(Meeting(upper=upper, upper_mm=upper_mm, lower=lower, lower_mm=lower_mm))


def measured(
    *sections: tuple[str, ...], line_tip: str | None = None, shop: str = "# nothing of one's own"
) -> Measure:
    return measure(tied(*sections, line_tip=line_tip, shop=shop))


def tied(
    *sections: tuple[str, ...], line_tip: str | None = None, shop: str = "# nothing of one's own"
) -> Leader:
    written = recipe(*(section(*each) for each in sections), line_tip=line_tip)
    return leader(written, practice(shop))


@given(materials, diameters, materials, diameters)
def test_what_is_reflected_from_below_is_its_opposite(
    upper: Material, upper_mm: Fraction, lower: Material, lower_mm: Fraction
) -> None:
    down, up = met(upper, upper_mm, lower, lower_mm), met(lower, lower_mm, upper, upper_mm)
    there, back = known_spread(down.reflection), known_spread(up.reflection)
    assert (back.low, back.high) == pytest.approx((-there.high, -there.low))
    one_way, other_way = known_spread(down.passed), known_spread(up.passed)
    assert (one_way.low, one_way.high) == pytest.approx((other_way.low, other_way.high))


@given(materials, diameters, materials, diameters)
def test_what_is_not_reflected_passes(
    upper: Material, upper_mm: Fraction, lower: Material, lower_mm: Fraction
) -> None:
    joint = met(upper, upper_mm, lower, lower_mm)
    reflection, passed = known_spread(joint.reflection), known_spread(joint.passed)
    squares = [reflection.low**2, reflection.high**2]
    assert passed.low == pytest.approx(1 - max(squares))
    surely_none = reflection.low <= 0 <= reflection.high
    assert passed.high == pytest.approx(1 if surely_none else 1 - min(squares))


@given(materials, diameters, materials, diameters, st.floats(0, 1), st.floats(0, 1))
def test_a_range_holds_what_comes_of_any_figure_in_it(
    upper: Material,
    upper_mm: Fraction,
    lower: Material,
    lower_mm: Fraction,
    above: float,
    below: float,
) -> None:
    def settled(material: Material, share: float) -> Material:
        assert material.density
        low, high = material.density
        exact = low + Fraction(share) * (high - low)
        return replace(material, density=(exact, exact))

    if upper == lower:
        below = above
    wide = met(upper, upper_mm, lower, lower_mm)
    narrow = met(settled(upper, above), upper_mm, settled(lower, below), lower_mm)
    for one, other in ((wide.reflection, narrow.reflection), (wide.passed, narrow.passed)):
        outer, inner = known_spread(one), known_spread(other)
        assert inner.low == pytest.approx(inner.high)
        assert outer.low - 1e-9 <= inner.middle <= outer.high + 1e-9


@given(materials, diameters)
def test_like_strands_pass_all(material: Material, mm: Fraction) -> None:
    joint = met(material, mm, material, mm)
    assert joint == Passing(reflection=Spread(0, 0), passed=Spread(1, 1), stiffness=Spread(1, 1))


@given(diameters, diameters)
def test_it_is_the_lighter_string_that_reflects_above_nought(
    upper_mm: Fraction, lower_mm: Fraction
) -> None:
    reflection = known_spread(met(NYLON, upper_mm, NYLON, lower_mm).reflection)
    assert (reflection.low > 0) is (lower_mm < upper_mm)
    assert (reflection.high < 0) is (lower_mm > upper_mm)


@pytest.mark.parametrize("thread", UNKNOWN, ids=lambda each: each.name)
def test_of_an_unknown_density_nothing_is_told(thread: Material) -> None:
    joint = met(thread, Fraction(1, 2), NYLON, Fraction(1, 4))
    assert (joint.reflection, joint.passed, joint.stiffness) == (None, None, None)
    of_one = met(thread, Fraction(1, 2), thread, Fraction(1, 4))
    assert of_one == Passing(reflection=None, passed=None, stiffness=Spread(16, 16))
    found = measured(("30 in", "20 thou", thread.name), ("20 in", "13 thou"), ("20 in", "9 thou"))
    assert (found.passed, found.worst, found.mass_g, found.thirds_g) == (None, None, None, None)
    assert found.joints[0].passed is None
    assert found.joints[1].passed
    assert found.strips[0].impedance is None
    assert found.strips[1].impedance


def test_a_persons_own_density_settles_it() -> None:
    shop = '[materials."furled thread"]\ndensity = [0.5, 0.9]\n'
    found = measured(("30 in", "40 thou", "furled thread"), ("30 in", "13 thou"), shop=shop)
    # By hand: 40/13 x sqrt(0.5/1.14) = 2.0377 and x sqrt(0.9/1.14) = 2.7339.
    reflection = known_spread(found.joints[0].reflection)
    assert (reflection.low, reflection.high) == pytest.approx((0.3416, 0.4644), abs=1e-4)


def test_a_leader_passes_what_every_joint_passes() -> None:
    found = measure(leader(SIX))
    each = [known_spread(joint.passed) for joint in found.joints]
    passed = known_spread(found.passed)
    assert passed.low == pytest.approx(math.prod(share.low for share in each))
    assert passed.high == pytest.approx(math.prod(share.high for share in each))
    assert found.worst is not None
    assert each[found.worst - 1].low == min(share.low for share in each)


def test_the_worst_joint_may_be_a_step_up() -> None:
    assert measured(("9 in", "20 thou"), ("9 in", "16 thou"), ("9 in", "30 thou")).worst == 2


def test_one_piece_passes_all_and_has_no_joint() -> None:
    found = measured(("3 m", "20 thou"))
    assert (found.passed, found.worst, found.joints) == (Spread(1, 1), None, ())


def test_strips_go_from_the_butt_to_the_fly() -> None:
    strips = measure(leader(SIX)).strips
    assert strips[-1].to_mm == 0
    assert [strip.to_mm for strip in strips[:-1]] == [strip.from_mm for strip in strips[1:]]
    assert strips[0].from_mm == leader(SIX).finished.high_mm


def test_a_taper_has_the_strings_of_both_its_ends() -> None:
    written = recipe(section("9 ft", "0.020 in", tapers_to="0.010 in"), section("2 ft", "0.010 in"))
    found = measure(leader(written))
    assert found.passed == Spread(1, 1)  # nothing is reflected within, nor at the joint
    (taper, _) = found.strips
    assert taper.impedance
    assert taper.stiffness
    assert taper.impedance[0].low == pytest.approx(2 * taper.impedance[1].low)
    assert taper.stiffness[0].high == pytest.approx(16 * taper.stiffness[1].high)


def test_mass_is_density_by_volume() -> None:
    # By hand: 1.14 g/cm3 x pi (0.05 cm)^2 / 4 x 100 cm, and twice as long of half the diameter.
    found = measured(("1 m", "0.50 mm"), ("2 m", "0.25 mm"))
    assert known_spread(found.mass_g).low == pytest.approx(0.22384 * 1.5, rel=1e-4)
    assert found.thirds_g
    assert [known_spread(third).high for third in found.thirds_g] == pytest.approx(
        [0.22384, 0.05596, 0.05596], rel=1e-4
    )


def test_a_taper_weighs_a_truncated_cone() -> None:
    # By hand: a cone's third part, 1.14 x pi x 100 x (0.05^2 + 0.05 x 0.025 + 0.025^2) / 12.
    written = recipe(section("1 m", "0.50 mm", tapers_to="0.25 mm"))
    found = measure(leader(written))
    assert known_spread(found.mass_g).low == pytest.approx(0.130573, rel=1e-4)
    assert found.thirds_g
    assert sum(third.low for third in found.thirds_g) == pytest.approx(0.130573, rel=1e-4)
    masses = [third.low for third in found.thirds_g]
    assert masses == sorted(masses, reverse=True)


def test_thirds_make_the_whole() -> None:
    found = measure(leader(SIX))
    assert found.thirds_g
    assert len(found.thirds_g) == 3
    assert sum(third.low for third in found.thirds_g) == pytest.approx(
        known_spread(found.mass_g).low
    )


def test_a_length_that_is_a_range_makes_a_mass_that_is_one() -> None:
    found = measured(("1 m", "0.50 mm"), ("22 to 28 in", "0.20 mm"))
    mass = known_spread(found.mass_g)
    # By hand: six inches of 0.20 mm, 1.14 x pi x 0.02^2 / 4 x 15.24.
    assert mass.high - mass.low == pytest.approx(0.005458, rel=1e-3)


def test_the_line_is_met_where_its_tip_is_known() -> None:
    assert measure(leader(SIX)).line is None
    line = measured(("9 ft", "0.020 in"), line_tip="0.030 in").line
    assert line
    assert line.stiffness is None
    # By hand: 1.5 x sqrt(0.8/1.14) = 1.2566 and 1.5 x sqrt(1/1.14) = 1.4049.
    reflection = known_spread(line.reflection)
    assert (reflection.low, reflection.high) == pytest.approx((0.1137, 0.1684), abs=1e-4)


@pytest.mark.parametrize(
    ("name", "builds"),
    [("wire", [(7.8, 1), (8.0, 1)]), ("stranded wire", [(7.8, (7 / 9) ** 2), (8.0, 7 / 9)])],
)
def test_steel_weighs_what_its_strands_fill(name: str, builds: list[tuple[float, float]]) -> None:
    density: Range | None = MATERIALS.find(name).density
    assert density
    for steel, filled in builds:
        assert float(density[0]) <= steel * filled <= float(density[1])
    assert float(density[1] / density[0]) < 1.35


def test_tapers_in_print_go_down_and_name_their_source() -> None:
    for taper in printed_tapers():
        sizes = [diameter.mm for diameter in taper.diameters]
        assert sizes == sorted(sizes, reverse=True)
        assert taper.source


def test_of_the_tapers_in_print_it_is_told_how_many_stay_under_a_share() -> None:
    # By hand: two have a step from 20 to 13 (0.21) and from 20 to 11 (0.29) thousandths; the rest
    # at most 4 to 3 (1/7).
    assert stay_under(0.15) == (len(printed_tapers()) - 2, len(printed_tapers()))
    assert stay_under(1 / 8).tapers < stay_under(0.15).tapers
    worst = max(most_reflected(taper) for taper in printed_tapers())
    assert stay_under(worst).tapers == len(printed_tapers()) - 1  # under, and not up to
    assert stay_under(0).tapers == 0


def test_a_density_that_is_a_range_makes_a_mass_that_is_one() -> None:
    mass = known_spread(measured(("1 m", "0.50 mm", "wire")).mass_g)
    assert mass.high / mass.low == pytest.approx(8.0 / 7.8)  # the steel's


def test_stiffness_is_told_in_newtons_by_square_millimetres() -> None:
    # E pi d^4 / 64 by hand: 0.021 in has 7.947 N mm2 at 2 GPa, and 3.5 GPa is 1.75 times that.
    (strip,) = measured(("1 m", "0.021 in")).strips
    assert strip.stiffness
    stiffness = strip.stiffness[0]
    assert (stiffness.low, stiffness.high) == pytest.approx((7.947, 1.75 * 7.947), rel=1e-3)


def test_a_strip_is_as_long_as_its_piece_may_be() -> None:
    strips = measured(("20 in", "20 thou"), ("22 to 28 in", "15 thou"), ("9 in", "9 thou")).strips
    assert [float((strip.from_mm - strip.to_mm) / Fraction("25.4")) for strip in strips] == [
        20,
        28,
        9,
    ]
