import pytest

from tagend.cards.faces.columns import Column, columns
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.language import ENGLISH, Wording
from tests.told import scale, told
from tests.written import SIX, leader, practice, recipe, section

SCALE = scale()


def of(written: Recipe, *spools: tuple[int, str]) -> dict[str, Column]:
    """Return the columns by their heads; the column of numbers has none."""
    found = columns(told(leader(written), spools=dict(spools)), SCALE)
    return {column.head.text: column for column in found}


def shown(written: Recipe, shop: str, wording: Wording = ENGLISH) -> dict[str, list[str]]:
    """Return what stands in each column under a shop file, by the column's head."""
    found = columns(told(leader(written, practice(shop)), wording), SCALE)
    return {column.head.text: cells(column) for column in found}


def cells(column: Column) -> list[str]:
    return [
        (" " if cell.gap else "")
        .join(line.text for line in (cell.whole, cell.fraction) if line is not None)
        .strip()
        for cell in column.cells
    ]


SALT = recipe(
    section("46 in", "0.023 in", "hard nylon", "25 lb"),
    section("24 in", "0.020 in", "hard nylon", "18 lb"),
    section("22 to 28 in", "0.010 in", "fluorocarbon", "8.5 lb"),
)


def test_each_section_is_a_row_with_what_its_spool_says() -> None:
    table = of(SALT)
    assert cells(table[""]) == ["1", "2", "3"]
    assert cells(table["line"]) == ["hard nylon", "hard nylon", "fluorocarbon"]
    assert cells(table["dia."]) == [".023", ".020", ".010"]
    assert cells(table["lb"]) == ["25", "18", "8.5"]
    assert cells(table["tied"]) == ["46", "24", "22–28"]


def test_the_cut_is_the_largest_type() -> None:
    table = of(SALT)
    cut = table["CUT, in"].cells[0].whole
    assert cut.size == SCALE.cut
    assert all(cell.whole.size < cut.size for name in ("", "line", "tied")
               for cell in table[name].cells)  # fmt: skip


def test_a_person_s_own_spools_are_named_instead_of_their_line() -> None:
    table = of(SALT, (2, "Stiff 18"))
    assert cells(table["spool"]) == ["hard nylon", "Stiff 18", "fluorocarbon"]


def test_without_strengths_there_is_no_column_of_them() -> None:
    table = of(recipe(section("46 in", "0.023 in"), section("24 in", "4X")))
    assert list(table) == ["", "line", "dia.", "tied", "CUT, in"]


@pytest.mark.parametrize(
    ("diameters", "head", "shown"),
    [
        (("0.023 in", "0.010 in"), "dia.", [".023", ".010"]),
        (("23 thou", "10 thou"), "dia., thou", ["23", "10"]),
        (("0.58 mm", "0.25 mm"), "dia., mm", ["0.58", "0.25"]),
        (("1X", "4X"), "dia.", ["1X", "4X"]),  # the size holds its unit
        (("0.013 in", "4X"), "dia.", [".013", "4X"]),
        (("0.33 mm", "4X"), "dia.", ["0.33 mm", "4X"]),  # units differ: each says its own
        (("1/50 in", "0.010 in"), "dia., in", ["1/50", "0.010"]),
    ],
)
def test_the_unit_stands_in_the_head_where_all_share_it(
    diameters: tuple[str, str], head: str, shown: list[str]
) -> None:
    first, second = diameters
    assert cells(of(recipe(section("46 in", first), section("24 in", second)))[head]) == shown


def test_a_strength_with_a_fraction_keeps_it() -> None:
    table = of(recipe(section("46 in", "1X"), section("24 in", "4X", strength="2 1/2 lb")))
    assert cells(table["lb"]) == ["", "2 1/2"]


def test_the_fraction_of_a_mixed_number_hangs() -> None:
    table = of(recipe(section("46 1/2 in", "1X"), section("24 in", "3X"), section("3/4 in", "4X")))
    tied = table["tied"]
    assert [cell.whole.text for cell in tied.cells] == ["46", "24", ""]
    assert [cell.fraction and cell.fraction.text for cell in tied.cells] == ["1/2", None, "3/4"]
    widest = max(cell.fraction.width for cell in tied.cells if cell.fraction)
    assert tied.hang == pytest.approx(tied.cells[0].gap + widest)


def test_numbers_align_on_the_point() -> None:
    table = of(SALT)
    assert [cell.whole.text for cell in table["lb"].cells] == ["25", "18", "8"]
    assert [cell.fraction and cell.fraction.text for cell in table["lb"].cells] == [
        None, None, ".5",
    ]  # fmt: skip


def test_a_taper_is_told_in_its_own_row() -> None:
    table = of(recipe(section("5 ft", "0.021 in", tapers_to="0.012 in"), section("20 in", "4X")))
    assert cells(table["line"])[0] == "nylon, tapers to .012"


def test_what_is_bought_has_no_cut() -> None:
    table = of(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "4X")))
    assert cells(table["CUT, in"])[0] == "BUY"


def test_a_column_is_as_wide_as_its_widest_cell_and_its_head() -> None:
    for column in of(SALT).values():
        assert column.width >= column.head.width
        for cell in column.cells:
            assert column.width >= cell.whole.width + (cell.fraction.width if cell.fraction else 0)


def test_a_second_unit_has_a_column_of_cuts_beside_the_first() -> None:
    table = shown(SIX, 'units = "in and cm"')
    assert list(table)[-2:] == ["CUT, in", "cm"]
    assert table["CUT, in"] == shown(SIX, 'units = "in"')["CUT, in"]
    for inches, cm in zip(table["CUT, in"], table["cm"], strict=True):
        whole, _, quarters = inches.partition(" ")
        exact = 2.54 * (float(whole) + {"": 0, "1/4": 0.25, "1/2": 0.5, "3/4": 0.75}[quarters])
        assert float(cm) == pytest.approx(exact, abs=0.0501)  # half a mm, to which it is said
    assert table["cm"][0] == "145.4"  # 57 1/4 in


def test_the_second_cut_is_no_larger_than_the_rest() -> None:
    *_, first, second = columns(told(leader(SIX, practice('units = "cm and in"'))), SCALE)
    assert (first.head.text, second.head.text) == ("CUT, cm", "in")
    assert {cell.whole.size for cell in first.cells} == {SCALE.cut}
    assert {cell.whole.size for cell in second.cells} == {SCALE.body}


def test_what_is_bought_has_no_cut_in_either_unit() -> None:
    bought = recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "4X"))
    table = shown(bought, 'units = "in and mm"')
    assert (table["CUT, in"][0], table["mm"][0]) == ("BUY", "")


def test_diameters_go_with_the_first_unit() -> None:
    thick = ["0.58", "0.51", "0.43", "0.38", "0.33", "0.25"]
    for units in ("cm", "mm", "cm and in"):
        assert shown(SIX, f'units = "{units}"')["dia., mm"] == thick
    assert shown(SIX, 'units = "in and cm"')["dia."][0] == ".023"
    mixed = recipe(section("46 in", "0.58 mm"), section("24 in", "4X"))
    assert shown(mixed, 'units = "in"')["dia."] == [".023", "4X"]


def test_every_number_has_the_decimal_sign_of_the_shop() -> None:
    ranged = recipe(
        section("116.5 cm", "0.58 mm", "hard nylon", "11.3 kg"),
        section("55.5 to 71.5 cm", "0.25 mm", "fluorocarbon", "3.9 kg"),
    )
    table = shown(ranged, 'units = "cm and in"', Wording("en", ","))
    assert table["dia., mm"] == ["0,58", "0,25"]
    assert table["kg"] == ["11,3", "3,9"]
    assert table["tied"] == ["116,5", "55,5–71,5"]
    assert not any("." in cell for column in table.values() for cell in column)
