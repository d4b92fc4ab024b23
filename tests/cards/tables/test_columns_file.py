import pytest

from tagend.cards.tables.columns_file import Answers, parse_units, read_columns_file, with_answers
from tagend.layouts.base.faults import Refused

ANSWERS = Answers(
    columns={'Ø "thin"': "butt diameter (mm)", "Price": ""},
    units={"length": "cm", "strength": "kg"},
    material="nylon",
)


def test_answers_come_back_from_their_file() -> None:
    assert read_columns_file(with_answers(None, "list.csv", ANSWERS)) == ANSWERS


def test_what_a_person_wrote_stays_and_what_is_new_is_added() -> None:
    there = b'# mine\n[columns]\nPrice = "note"\n'
    data = with_answers(there, "list.csv", ANSWERS)
    assert data.startswith(b"# mine\n")
    assert read_columns_file(data) == Answers(
        columns={**ANSWERS.columns, "Price": "note"}, units=ANSWERS.units, material="nylon"
    )


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("in, in, lb", {"length": "in", "diameter": "in", "strength": "lb"}),
        ("pulgadas, mm", {"length": "in", "diameter": "mm"}),
        ("lb", {"strength": "lb"}),
        ("cm,thou", {"length": "cm", "diameter": "thou"}),
    ],
)
def test_units_are_said_in_the_order_of_length_diameter_strength(
    text: str, units: dict[str, str]
) -> None:
    assert parse_units(text) == units


@pytest.mark.parametrize("text", ["furlong", "lb, in", "in, in, lb, lb"])
def test_other_units_are_refused(text: str) -> None:
    with pytest.raises(Refused, match="is no unit here"):
        parse_units(text)


@pytest.mark.parametrize(
    "text", ['[columns]\nA = "parsecs"', "[columns]\nA = 1", '[missing]\nunits = "lb, lb"']
)
def test_a_file_that_means_nothing_is_refused(text: str) -> None:
    with pytest.raises(Refused):
        read_columns_file(text.encode())
