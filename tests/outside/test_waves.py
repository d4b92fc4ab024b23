"""What the joints of leaders in print reflect, against figures worked out apart from our code.

A wave at a boundary, in any text on waves, such as French, Vibrations and Waves, or Crawford,
Waves: r = (Z1 - Z2) / (Z1 + Z2) with Z proportional to d sqrt(density), energy passed 1 - r^2.
The figures were worked out from the diameters alone, before the code was written.
"""

import pytest

from tagend.cards.leader.passing import Spread
from tagend.cards.leader.waves import Measure, measure
from tests.written import leader, recipe, section

NYLON, FLUORO = "nylon", "fluorocarbon"

# Diameters, r at each joint in whole per cent, energy passed and the worst joint's loss in per
# cent. Sources of the formulas: tests/outside/test_published_leaders.
TABLE: list[tuple[str, str, list[int], float, float]] = [
    ("F4", ".017 .015 .013 .011 .009 .007 .006", [6, 7, 8, 10, 12, 8], 95.3, 1.6),
    ("F5 with 4X", ".015 .013 .011 .009 .007", [7, 8, 10, 12], 96.3, 1.6),
    # The size of its tippet is left open in print: here it is 4X.
    ("F6 with 4X", ".020 .013 .010 .007", [21, 13, 18], 91.0, 4.5),
    ("F9", ".015 .013 .012 .009 .008 .007", [7, 4, 14, 6, 7], 96.5, 2.0),
    ("F11", ".017 .015 .012 .009", [6, 11, 14], 96.4, 2.0),
    ("F12", ".50mm .40mm .30mm .70mm", [11, 14, -40], 81.3, 16.0),
    ("F15", ".030 .020 .011", [20, 29], 87.9, 8.4),
    ("an invented one", ".026 .023 .020 .017 .014F .010F", [6, 7, 8, -1, 17], 95.7, 2.8),
    ("one step", ".026 .010", [44], 80.2, 19.8),
]


def measured(diameters: str) -> Measure:
    def diameter(written: str) -> str:
        return f"0{written[:-2]} mm" if written.endswith("mm") else f"0{written.rstrip('F')} in"

    return measure(
        leader(
            recipe(
                *(
                    section("20 in", diameter(each), FLUORO if each.endswith("F") else NYLON)
                    for each in diameters.split()
                )
            )
        )
    )


def settled(spread: Spread | None) -> float:
    assert spread
    assert spread.low == spread.high  # nylon's and fluorocarbon's densities are single figures
    return spread.low


@pytest.mark.parametrize(
    ("diameters", "reflected", "passed", "lost"),
    [row[1:] for row in TABLE],
    ids=[row[0] for row in TABLE],
)
def test_the_table_is_the_formula(
    diameters: str, reflected: list[int], passed: float, lost: float
) -> None:
    found = measured(diameters)
    # To the half: 9 to 7 thousandths reflect 12.5 %, which is 12 in the table.
    found_percent = [100 * settled(joint.reflection) for joint in found.joints]
    assert found_percent == pytest.approx(reflected, abs=0.5001)
    assert 100 * settled(found.passed) == pytest.approx(passed, abs=0.05)
    assert found.worst is not None
    assert 100 * (1 - settled(found.joints[found.worst - 1].passed)) == pytest.approx(
        lost, abs=0.05
    )


def test_fluorocarbon_is_as_heavy_a_string_as_nylon_a_quarter_thicker() -> None:
    # sqrt(1.78 / 1.14) = 1.25: fluorocarbon's 0.014 in is nylon's 0.0175 in.
    found = measured(".0175 .014F")
    assert settled(found.joints[0].reflection) == pytest.approx(0, abs=0.001)


def test_a_formula_in_print_weighs_what_was_worked_out_by_hand() -> None:
    # F4: 0.23 g in nylon, 0.36 g in fluorocarbon.
    lengths, thou = (10, 20, 20, 20, 12, 10, 28), (17, 15, 13, 11, 9, 7, 6)
    for material, grams in ((NYLON, 0.23), (FLUORO, 0.36)):
        sections = [
            section(f"{length} in", f"{size} thou", material)
            for length, size in zip(lengths, thou, strict=True)
        ]
        assert settled(measure(leader(recipe(*sections))).mass_g) == pytest.approx(grams, abs=0.005)
