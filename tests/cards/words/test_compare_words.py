"""What is said of leaders side by side, in words."""

from tagend.cards.words.compare_words import compared
from tests.told import told
from tests.written import leader, recipe, section

BUTT = section("60 in", "0.020 in")
GUARD = section("20 in", "0.020 in", part="bite guard")
ONE = leader(recipe(BUTT, section("20 in", "0.010 in")))
UP = leader(recipe(BUTT, section("20 in", "0.010 in"), GUARD))
MIXED = leader(recipe(BUTT, section("20 in", "0.014 in", "stranded wire")))


def test_a_joint_reflects_by_the_ratio_of_its_strings() -> None:
    # r = (k - 1) / (k + 1) with k = 2 in one material: a third (any text on waves at a boundary).
    rows = compared([told(ONE), told(UP)]).table
    assert rows[1][3].endswith("33 %")
    assert rows[1][2] == "89 %"  # 1 - 1/9
    assert rows[2][2] == "79 %"  # twice


def test_what_all_have_is_said_once() -> None:
    found = compared([told(ONE), told(UP)])
    assert "butt 0.020 in nylon" in found.alike
    assert all("butt" not in each for each in found.differs)
    assert "6 ft 8 in" in found.differs[0]


def test_a_range_is_told_with_both_ends() -> None:
    found = compared([told(ONE), told(MIXED)])
    assert " to " in found.table[2][4]
    assert " to " not in found.table[1][4]


def test_what_is_not_known_is_said() -> None:
    unknown = leader(recipe(BUTT, section("12 in", "0.014 in", "coated wire")))
    found = compared([told(ONE), told(unknown)])
    assert found.table[2][2:] == ("not known",) * 4
    assert any("coated wire" in note for note in found.notes)


def test_one_piece_has_no_worst_joint() -> None:
    found = compared([told(leader(recipe(section("9 ft", "0.012 in")))), told(ONE)])
    assert found.table[1][3] == "–"
    assert "joint" not in found.differs[0]
