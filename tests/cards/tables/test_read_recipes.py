import pytest

from tagend.cards.recipe.recipe import Recipe
from tagend.cards.tables.read_recipes import read_table
from tagend.layouts.base.faults import Refused
from tests.written import PRACTICE

HEADER = "name,section,length,diameter,material,knot,part,bought,use,line_weight,tied,rod,fly_knot"
LENGTH = 'write a length with its unit, such as "30 in", "7 1/2 ft" or "76 cm"'
DIAMETER = 'write a diameter with its unit, such as "0.023 in", "23 thou", "0.58 mm" or "4X"'


def read(*rows: str) -> tuple[tuple[Recipe, ...], list[str]]:
    """Return the recipes, and the faults as they are told."""
    table = read_table("\n".join((HEADER, *rows)).encode(), PRACTICE)
    return table.recipes, [str(fault) for fault in table.faults]


def names(*rows: str) -> list[tuple[str, int]]:
    """Return the name and the number of sections of each recipe in a table without a fault."""
    recipes, faults = read(*rows)
    assert faults == []
    return [(recipe.name, len(recipe.sections)) for recipe in recipes]


# ---- where a leader begins -------------------------------------------------------------------


def test_rows_of_one_name_are_one_leader() -> None:
    found = names("Low,,9 ft,4X,nylon", "Low,,2 ft,5X,nylon", "High,,9 ft,3X,nylon")
    assert found == [("Low", 2), ("High", 1)]


def test_a_row_without_a_name_belongs_to_the_leader_above() -> None:
    found = names("Low,,9 ft,4X,nylon", "", ",,2 ft,5X,nylon", "High,,9 ft,3X,nylon")
    assert found == [("Low", 2), ("High", 1)]


def test_the_number_1_begins_another_leader_of_the_same_name() -> None:
    found = names("Low,1,9 ft,4X,nylon", "Low,2,2 ft,5X,nylon", "Low,1,9 ft,3X,nylon")
    assert found == [("Low", 2), ("Low", 1)]


def test_a_leader_torn_apart_is_told() -> None:
    recipes, faults = read(
        "Low,,9 ft,4X,nylon", "High,,9 ft,3X,nylon", "Low,,2 ft,5X,nylon", "Low,,2 ft,6X,nylon"
    )
    assert [recipe.name for recipe in recipes] == ["Low", "High"]
    assert faults == [
        "A4, name: 'Low' ended in row 2; "
        "put the rows of a leader together, or number the sections of each from 1"
    ]


# ---- cells -----------------------------------------------------------------------------------


def test_words_may_have_capitals() -> None:
    (recipe,), faults = read("Low,,9 ft,4X,NYLON,,Butt,YES", "Low,,2 ft,5X,Nylon,,Tippet,no")
    assert faults == []
    assert [section.part for section in recipe.sections] == ["butt", "tippet"]
    assert [section.bought for section in recipe.sections] == [True, False]


def test_a_word_of_the_whole_leader_may_stand_in_every_row() -> None:
    (recipe,), faults = read("Low,,9 ft,4X,nylon,,,,Carp,6", "Low,,2 ft,5X,nylon,,,,Carp,6")
    assert faults == []
    assert (recipe.use, recipe.line_weight) == ("Carp", 6)


@pytest.mark.parametrize(
    ("row", "faults"),
    [
        ("Low,,30,4X,nylon", [f"C3, length: '30' has no unit; {LENGTH}"]),
        ("Low,,9 ft,,nylon", [f"D3, diameter: this cell is empty; {DIAMETER}"]),
        (
            "Low,,9 ft,4X,nylo",
            ["E3, material: no material is called 'nylo'; did you mean nylon?"],
        ),
        (
            "Low,,9 ft,4X,nylon,,belly",
            [
                "G3, part: 'belly' is not known; "
                "write one of: 'butt', 'taper', 'tippet', 'bite guard' or 'sighter'"
            ],
        ),
        (
            "Low,,9 ft,4X,nylon,,,perhaps",
            ["H3, bought: 'perhaps' is not true or false; write yes, or nothing"],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,six",
            ["J3, line_weight: 'six' is not a whole number; write a whole number"],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,16",
            ["J3, line_weight: 16 is out of range; write a number up to 15"],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,,31/02/2026",
            ["K3, tied: '31/02/2026' is not a date; write it as 2026-05-31 or 31 May 2026"],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,,,9 ft",
            # The column line_out is not in this table at all.
            [f"A3, line_out: this cell is empty; {LENGTH}"],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,,,,bloood",
            ["M3, fly_knot: no knot is called 'bloood'; did you mean blood or clinch?"],
        ),
        (
            "Low,,9 ft,4X,nylon,blood",
            [
                "F3, knot: the last section ends at the fly, and 'blood' joins it to nothing; "
                "write the knot to the fly in the column fly_knot"
            ],
        ),
        (
            "Low,2,9 ft,4X,nylon",
            [
                "B3, section: '2' stands where section 1 comes; "
                "number from the butt, or leave it empty"
            ],
        ),
        (
            "Low,,9 ft,4X,nylon,,,,,,,,,low, clear",
            ["N3: 'low clear' is beyond the last column; put a cell that holds commas in quotes"],
        ),
        (
            f"{'x' * 61},,9 ft,4X,nylon",
            ["A3, name: this text has 61 characters; write at most 60"],
        ),
    ],
)
def test_a_fault_is_told_by_row_and_column_and_good_leaders_are_kept(
    row: str, faults: list[str]
) -> None:
    recipes, told = read("Good,,9 ft,4X,nylon", row, "Better,,8 ft,4X,nylon")
    assert told == faults
    assert [recipe.name for recipe in recipes] == ["Good", "Better"]


def test_the_first_row_needs_a_name() -> None:
    recipes, faults = read(",,9 ft,4X,nylon", "Good,,9 ft,4X,nylon")
    assert faults == ["A2, name: this cell is empty; write 1 to 60 characters"]
    assert [recipe.name for recipe in recipes] == ["Good"]


def test_every_fault_of_a_leader_is_told_with_its_own_row() -> None:
    _, faults = read(
        "Low,1,9 ft,4X,nylon,,,,Carp", "Low,3,,5X,nylon,,,,Tench", "Low,3,2 ft,6X,nylo"
    )
    assert faults == [
        "B3, section: '3' stands where section 2 comes; number from the butt, or leave it empty",
        "I3, use: 'Tench' differs from row 2; write it in the leader's first row only",
        f"C3, length: this cell is empty; {LENGTH}",
        "E4, material: no material is called 'nylo'; did you mean nylon?",
    ]


def test_more_sections_than_a_recipe_has_are_told() -> None:
    _, faults = read(*["Low,,9 in,4X,nylon"] * 31)
    assert faults == ["A2, section: there are 31; write at most 30"]


def test_a_table_without_rows_is_refused() -> None:
    with pytest.raises(Refused, match=r"^no leader stands below the headings"):
        read()


def test_a_column_that_says_nothing_of_leaders_is_left_out() -> None:
    plain = f"{HEADER}\nLow,,9 ft,4X,nylon\n"
    priced = f"{HEADER},price\nLow,,9 ft,4X,nylon,,,,,,,,,12\n"
    assert read_table(priced.encode(), PRACTICE) == read_table(plain.encode(), PRACTICE)


def test_a_table_without_headings_is_refused() -> None:
    with pytest.raises(Refused, match=r"^no row says what the columns hold"):
        read_table(b"Low,9 ft,4X,nylon\n", PRACTICE)


def test_a_knot_below_section_1_is_that_of_the_butt_where_columns_go_by_parts() -> None:
    table = read_table(
        b"name,butt length,butt diameter,tippet length,tippet diameter,material,knot 1\n"
        b"Low,4 ft,0X,3 ft,4X,nylon,blood\n",
        PRACTICE,
    )
    (recipe,) = table.recipes
    assert recipe.sections[0].knot == "blood"
