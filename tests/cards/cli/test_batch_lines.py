from tagend.cards.base.units import parse_diameter, parse_line_length
from tagend.cards.batches.batch import Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.cli.batch_lines import batch_lines
from tagend.cards.practice.rack_file import Rack, Spool
from tests.shortages import alike
from tests.written import leader, recipe, section

# Cut lengths, so that the sums below are of the very numbers written.
TWO = leader(
    recipe(
        section("50 in", "0.020 in", "hard nylon"),
        section("30 in", "0.010 in", "fluorocarbon"),
        lengths="cut",
    )
)
STIFF = Spool("Stiff", "hard nylon", parse_diameter("0.020 in"), parse_line_length("10 yd"))


def test_each_spool_says_what_it_gives_and_when_it_runs_out() -> None:
    assert list(batch_lines(cut_batch([Order(TWO, 12)], Rack((STIFF,))))) == [
        "12 leaders, spool by spool",
        # 10 yd are 360 in: 7 pieces of 50 in are 350 in, 9.7 yd; 10 in, 0.3 yd, stay
        "  Stiff: 0.020 in hard nylon, 0.3 yd left after it; draws 9.7 yd",
        "      7 × 50 in  Under test, section 1",
        "      runs out at leader 8 of Under test",
        # 5 × 50 in are 6.9 yd, 12 × 30 in 10 yd
        "  to buy: 7 yd of 0.020 in hard nylon, for 5 pieces from leader 8 of Under test on",
        "  to buy: 10 yd of 0.010 in fluorocarbon, for 12 pieces from leader 1 of Under test on",
    ]


def test_without_a_rack_each_line_says_what_it_takes() -> None:
    assert list(batch_lines(cut_batch([Order(TWO, 1)], None))) == [
        "1 leader, spool by spool",
        "  0.020 in hard nylon; draws 1.4 yd",
        "      1 × 50 in  Under test, section 1",
        "  0.010 in fluorocarbon; draws 0.8 yd",
        "      1 × 30 in  Under test, section 2",
    ]


def test_one_piece_is_one_piece() -> None:
    lines = list(batch_lines(cut_batch([Order(TWO, 1)], Rack(()))))
    assert (
        lines[1]
        == "  to buy: 1.4 yd of 0.020 in hard nylon, for 1 piece from leader 1 of Under test on"
    )


def test_what_is_bought_ready_made_comes_last() -> None:
    of = leader(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "4X")))
    assert list(batch_lines(cut_batch([Order(of, 3)], None)))[-1] == (
        "  to buy: 3 × 5 ft of 0.024 in nylon, ready made: Under test"
    )


def test_what_could_be_cut_better_is_said() -> None:
    orders, rack = alike(3, 100, 3)
    exact, rough = cut_batch(orders, rack), cut_batch(orders, rack, 0)
    assert (exact.spare_mm == 0) is not any("another way" in line for line in batch_lines(exact))
    assert rough.spare_mm > 1
    assert any("cut in another way, at most" in line for line in batch_lines(rough))
