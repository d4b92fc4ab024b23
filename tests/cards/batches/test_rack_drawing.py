import json
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.batches.rack_drawing import left_words, rack_after, record_rows
from tagend.cards.practice.rack_file import Spool, read_rack
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.cards.batches.test_whole_leaders import cut_as
from tests.strategies import texts
from tests.written import PRACTICE

RACK = """\
# The bench.
[[spool]]   # by the window
label = 'Butt'
material = "nylon"
diameter = "0.020 in"
left = "10 ft"        # marked in June
lot = "=K 1"

# Below the lamp.
[[spool]]
left = "2 m"
label = "Tippet"
diameter = "0.010 in"
material = "nylon"
"""


def spool(left: str) -> Spool:
    return Spool("a", "nylon", parse_diameter("0.020 in"), parse_line_length(left))


@pytest.mark.parametrize(
    ("left", "inches", "says"),
    [
        ("40 yd", "114", "36.83 yd"),  # 36.8333
        ("40 yd", "36", "39 yd"),
        ("10 ft", "30", "7.5 ft"),
        ("82 1/2 in", "57.04", "25.4 in"),  # 25.46
        ("7 ft 6 in", "30", "60 in"),
        ("50 m", "72", "48.17 m"),  # 48.1712
        ("300 cm", "20", "249 cm"),  # 249.2
        ("3000 mm", "20", "2492 mm"),
        ("1 yd", "36", "0 yd"),
    ],
)
def test_what_is_left_is_rounded_down_in_the_spools_own_unit(
    left: str, inches: str, says: str
) -> None:
    whole = spool(left)
    assert left_words(whole, whole.left.mm - Fraction(inches) * INCH_MM) == says


def test_only_what_is_left_changes_in_the_file() -> None:
    rack = read_rack(RACK.encode(), PRACTICE)
    drawn = cut_batch([Order(cut_as((30, "0.020 in"), (20, "0.010 in")), 2)], rack)
    after = rack_after(RACK.encode(), rack, drawn).decode()
    # 120 - 60 in are 5 ft; 2000 - 1016 mm are 0.984 m.
    assert after == RACK.replace('"10 ft" ', '"5 ft" ').replace('"2 m"', '"0.98 m"')


def test_a_spool_that_gives_nothing_stays_as_it_is() -> None:
    rack = read_rack(RACK.replace("10 ft", "10.123 ft").encode(), PRACTICE)
    drawn = cut_batch([Order(cut_as((20, "0.010 in")), 1)], rack)
    after = rack_after(RACK.replace("10 ft", "10.123 ft").encode(), rack, drawn).decode()
    assert 'left = "10.123 ft"' in after


def test_spools_in_one_line_are_drawn_from_too() -> None:
    text = (
        'spool = [{label = "a", material = "nylon", diameter = "0.020 in", left = "9 ft"}, # one\n'
        '  {label = "b", material = "nylon", diameter = "0.010 in", left = "9 ft"}]\n'
    )
    rack = read_rack(text.encode(), PRACTICE)
    drawn = cut_batch([Order(cut_as((12, "0.010 in")), 1)], rack)
    after = rack_after(text.encode(), rack, drawn).decode()
    assert after == text.replace('"0.010 in", left = "9 ft"', '"0.010 in", left = "8 ft"')


def test_a_rack_that_has_too_little_is_not_drawn_from() -> None:
    rack = read_rack(RACK.encode(), PRACTICE)
    drawn = cut_batch([Order(cut_as((30, "0.020 in")), 5)], rack)
    with pytest.raises(Refused) as refusal:
        rack_after(RACK.encode(), rack, drawn)
    assert str(refusal.value) == (
        "to buy: 0.9 yd of 0.020 in nylon, from leader 5 on; nothing was drawn"
    )


def test_the_record_says_what_each_spool_gave() -> None:
    rack = read_rack(RACK.encode(), PRACTICE)
    drawn = cut_batch([Order(cut_as((30, "0.020 in"), (20, "0.020 in")), 2)], rack)
    rows = list(record_rows(drawn, date(2026, 5, 31)))
    assert [(row["spool"], row["section"], row["pieces"], row["cut_mm"]) for row in rows] == [
        ("Butt", "1", "2", "762"),
        ("Butt", "2", "2", "508"),
    ]
    assert {row["left"] for row in rows} == {"1.66 ft"}  # 20 in


@given(st.lists(texts(20), min_size=1, max_size=4, unique=True), st.data())
def test_any_rack_reads_the_same_but_for_what_is_left(
    labels: list[str], data: st.DataObject
) -> None:
    text = "".join(
        f"[[spool]] # {place}\nlabel = {json.dumps(label, ensure_ascii=False)}\n"
        f'material = "nylon"\ndiameter = "0.0{10 + place} in"\n'
        f'left = "{data.draw(st.integers(4, 90))} ft"\n'
        for place, label in enumerate(labels)
    )
    rack = read_rack(text.encode(), PRACTICE)
    place = data.draw(st.integers(0, len(labels) - 1))
    drawn = cut_batch([Order(cut_as((40, f"0.0{10 + place} in")), 1)], rack)
    after = rack_after(text.encode(), rack, drawn)
    again = read_rack(after, PRACTICE)
    for at, (one, other) in enumerate(zip(rack.spools, again.spools, strict=True)):
        assert (one.label, one.diameter, one.material) == (
            *(other.label, other.diameter, other.material),
        )
        taken = one.left.mm - other.left.mm
        assert 40 * INCH_MM <= taken < 41 * INCH_MM if at == place else taken == 0
    assert after.count(b"#") >= len(labels)
