import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.recipe.fields import OF_SECTION
from tagend.cards.tables.columns import COLUMNS
from tagend.cards.tables.meaning import STRAND, Meaning, read_heading

PARTS = ("butt", "taper", "tippet", "bite guard", "sighter")


@pytest.mark.parametrize(
    ("heading", "meaning"),
    [
        ("Weight", Meaning("line_weight")),
        ("rod_wt", Meaning("line_weight")),
        ("Butt length (in)", Meaning("length", "butt", unit="in")),
        ("Sec. 2 Dia.", Meaning("diameter", number=2)),
        ("dia1", Meaning("diameter", number=1)),
        ("MID 3 LB", Meaning(STRAND, "taper", 3, "lb")),
        ("tippet", Meaning(STRAND, "tippet")),
        ("Talón diámetro (mm)", Meaning("diameter", "butt", unit="mm")),
        ("libras", Meaning(STRAND, unit="lb")),
        ('Length (")', Meaning("length", unit="in")),
        ("Line #", Meaning("line_weight")),
        ("Total length", Meaning("total")),
        ("Butt end", Meaning("butt_end")),
        ("1", Meaning(STRAND, number=1)),
    ],
)
def test_a_heading_is_known_by_what_it_means(heading: str, meaning: Meaning) -> None:
    assert read_heading(heading) == (meaning, "")


@pytest.mark.parametrize("heading", ["Price (lb)", "% butt", "SKU", "Hook size"])
def test_a_heading_may_be_none_of_ours(heading: str) -> None:
    assert read_heading(heading).meaning is None


@pytest.mark.parametrize(
    ("heading", "field"), [("Butt lenght", "length"), ("diametre 2", "diameter")]
)
def test_a_misspelt_heading_is_in_doubt(heading: str, field: str) -> None:
    meaning, doubt = read_heading(heading)
    assert meaning is not None
    assert meaning.field == field
    assert doubt


SECTION_MEANINGS = st.builds(
    Meaning,
    st.sampled_from([*OF_SECTION, STRAND]),
    part=st.sampled_from(["", *PARTS]),
    number=st.integers(0, 30),
    unit=st.sampled_from(["", "in", "ft", "cm", "mm", "m", "thou", "lb", "kg"]),
).filter(lambda meaning: str(meaning) != "")


@given(SECTION_MEANINGS | st.builds(Meaning, st.sampled_from([*COLUMNS])))
def test_a_meaning_is_written_as_a_heading_that_means_it(meaning: Meaning) -> None:
    assert read_heading(str(meaning)) == (meaning, "")
