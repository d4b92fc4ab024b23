"""Bench sheets as numbers: every piece and every knot stands on a page, with boxes to tick."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.base.shown_lengths import ShownUnit, length
from tagend.cards.base.units import parse_line_length
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.page import MARGIN
from tagend.cards.practice.rack_file import Rack, read_rack
from tagend.cards.words.cautions import cautions
from tagend.cards.words.language import ENGLISH, Wording
from tagend.fonts import OURS
from tagend.layouts.paper.face import Face, Path
from tagend.layouts.paper.text import TooWide
from tagend.layouts.paper.typeset import prepare
from tagend.layouts.stock.formats import Paper
from tagend.layouts.stock.stock import paper
from tests.seen import faults, paths, runs, words
from tests.tieable import counts, seeds, tieable
from tests.told import told
from tests.written import PRACTICE, leader, practice, recipe, section

LETTER, A4, A6 = paper("Letter"), paper("A4"), paper("A6")
UNITS: tuple[ShownUnit, ShownUnit] = ("in", "cm")
FOOT = 3.0  # points that the tails of the page number's letters go below the margin
THREE = leader(
    recipe(
        section("46 in", "0.023 in", "hard nylon"),
        section("24 in", "0.017 in", "hard nylon"),
        section("24 in", "0.010 in", "fluorocarbon"),
        butt="perfection loop",
        fly="non-slip loop",
    )
)
RACK = read_rack(
    b"""
[[spool]]
label = "Stiff 23"
material = "hard nylon"
diameter = "0.023 in"
left = "12 yd"

[[spool]]
label = "Stiff 17"
material = "hard nylon"
diameter = "0.017 in"
left = "100 yd"
""",
    PRACTICE,
)


def pages(of: Batch, sheet: str = "Letter", wording: Wording = ENGLISH) -> tuple[Face, ...]:
    all_told = [told(order.leader, wording) for order in of.orders]
    return bench_sheet(all_told, of, cautions(wording, "fly"), paper(sheet), OURS)


def read(of: Batch, sheet: str = "Letter", wording: Wording = ENGLISH) -> str:
    return " ".join(words(page) for page in pages(of, sheet, wording))


def boxes(page: Face) -> list[Path]:
    """Return the boxes to tick: closed squares that are not filled."""
    return [path for path in paths(page) if path.steps[-1] == ("close",) and path.fill is None]


def typeset(text: str) -> str:
    return prepare(text)


def test_every_piece_is_listed_with_its_length_large() -> None:
    (page, *_) = pages(cut_batch([Order(THREE, 12)], None))
    for piece in THREE.pieces:
        assert f"12 × section {piece.place} of Under test" in words(page)
        assert typeset(length(piece.cut_mm, "in")) in words(page)
    numbers = {run.text: run.size for run in runs(page)}
    assert numbers["57 in"] == pytest.approx(21)  # one and a half times 14 pt


def test_every_knot_is_listed_in_order_with_how_it_is_seated() -> None:
    text = read(cut_batch([Order(THREE, 12)], None))
    knots = [THREE.butt.knot, *(joint.knot for joint in THREE.joints), THREE.fly.knot]
    places = [text.index(place) for place in ("at the butt", "1 to 2", "2 to 3", "at the fly")]
    assert places == sorted(places)
    for knot in knots:
        assert knot is not None
        assert typeset(knot.name) in text
        assert typeset(knot.seat.split(";")[0]) in text


def test_there_is_a_box_for_each_piece_and_each_knot() -> None:
    ticked = sum(len(boxes(page)) for page in pages(cut_batch([Order(THREE, 12)], None)))
    assert ticked == 12 * (3 + 4)  # three pieces; two joints and two ends


def test_body_type_is_large_enough_for_the_bench() -> None:
    for page in pages(cut_batch([Order(THREE, 12)], None)):
        names = [run for run in runs(page) if run.text.startswith("Tie ")]
        assert all(run.size == 14 for run in names)


def test_a_spool_is_named_with_what_stays_and_where_it_runs_out() -> None:
    text = read(cut_batch([Order(THREE, 12)], RACK))
    # 12 yd are 432 in: 7 pieces of 57 in take 399 in, 11.1 yd; 33 in, 0.9 yd, stay
    assert "Stiff 23: 0.023 in hard nylon draws 11.1 yd; 0.9 yd stays" in text
    assert "runs out at leader 8 of Under test" in text
    assert "Stiff 17: 0.017 in hard nylon" in text


def test_a_person_s_second_unit_stands_below_every_cut_and_in_the_head() -> None:
    both = leader(THREE.recipe, practice('units = "in and cm"'))
    (page, *_) = pages(cut_batch([Order(both, 12)], None))
    # 94 in = 238.76 cm
    assert "12 × Under test, 7 ft 10 in · 2.39 m" in words(page)
    placed = {run.text: run for run in runs(page)}
    for piece in both.pieces:
        first, second = (placed[prepare(length(piece.cut_mm, unit))] for unit in UNITS)
        assert second.size < first.size
        assert second.x == first.x
        assert 0 < second.y - first.y < 2 * first.size


def test_without_units_of_a_shop_each_line_is_measured_as_its_recipe_is() -> None:
    metric = leader(recipe(section("60 cm", "0.25 mm"), butt="none", fly="none"))
    inches = leader(recipe(section("45 in", "0.017 in"), butt="none", fly="none"))
    text = read(cut_batch([Order(inches, 4), Order(metric, 4)], None))
    assert "0.017 in nylon draws 5 yd" in text  # 4 × 45 in = 180 in
    assert "0.25 mm nylon draws 2.4 m" in text


def test_what_is_on_a_rack_is_said_in_the_units_of_the_shop_used_or_not() -> None:
    thin = leader(recipe(section("24 in", "0.017 in", "hard nylon")), practice('units = "cm"'))
    spools = (*RACK.spools, replace(RACK.spools[1], label="Spare", left=parse_line_length("9 yd")))
    text = read(cut_batch([Order(thin, 60)], Rack(spools)), wording=Wording("en", ","))
    # The emptiest that will do comes first: 9 yd = 8.2 m, 100 yd = 91.4 m
    assert "Spare: 0,43 mm hard nylon" in text
    assert "Stiff 17: 0,43 mm hard nylon" in text
    assert not re.search(r"\d yd|0.017", text)
    unused = read(cut_batch([Order(thin, 1)], Rack(spools)), wording=Wording("en", ","))
    assert "Stiff 17: 0,43 mm hard nylon draws 0 m; 91,4 m stays" in unused


def test_what_the_rack_lacks_is_to_buy() -> None:
    text = read(cut_batch([Order(THREE, 12)], RACK))
    # 5 pieces of 57 1/2 in: 287 1/2 in = 7.99 yd
    assert "Buy 8 yd of 0.023 in hard nylon, for 5 pieces from leader 8 of Under test on" in text
    assert "of 0.010 in fluorocarbon, for 12 pieces from leader 1 of Sandbar eight on" in text


def test_what_is_bought_ready_made_is_to_buy_and_not_to_cut() -> None:
    bought = leader(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "0.010 in")))
    text = read(cut_batch([Order(bought, 4)], None))
    assert "4 × 5 ft of 0.024 in nylon, ready made" in text
    assert "section 1 of" not in text


def test_without_anything_to_buy_there_is_no_heading_for_it() -> None:
    assert "Buy" not in read(cut_batch([Order(THREE, 2)], None))


def test_a_knot_through_which_a_piece_passes_says_what_must_wait() -> None:
    text = read(cut_batch([Order(THREE, 2)], None))
    assert "section 3 passes through whole, so tie it before the fly" in text


def test_each_recipe_of_a_batch_has_its_tying_and_its_chart() -> None:
    other = leader(replace(THREE.recipe, name="The other"))
    text = read(cut_batch([Order(THREE, 2), Order(other, 3)], None))
    assert "Tie 2 × Under test, from the butt to the fly" in text
    assert "Tie 3 × The other, from the butt to the fly" in text
    assert text.count("stiffness in bending") == 2


def test_pages_are_numbered_and_as_large_as_the_paper() -> None:
    found = pages(cut_batch([Order(THREE, 60)], None), "A6")
    for number, page in enumerate(found, start=1):
        assert (page.width, page.height) == (A6.width, A6.height)
        assert f"page {number} of {len(found)}" in words(page)


def test_a_spool_that_takes_more_than_a_page_is_named_on_each() -> None:
    same = leader(recipe(*(section("20 in", "0.010 in") for _ in range(30)), butt="none"))
    found = pages(cut_batch([Order(same, 60)], None))
    cutting = [page for page in found if "× section" in words(page)]
    assert len(cutting) > 1
    for page in cutting:
        assert "0.010 in nylon" in words(page)
    pieces = re.findall(r"60 × section (\d+) of", " ".join(words(page) for page in found))
    assert sorted(map(int, pieces)) == list(range(1, 31))


def test_many_recipes_fill_more_than_one_page_with_their_names() -> None:
    many = [Order(leader(replace(THREE.recipe, name=f"Leader {k}")), 1) for k in range(60)]
    text = read(cut_batch(many, None))
    assert all(f"1 × Leader {k}, 7 ft 10 in" in text for k in range(60))


def test_paper_too_small_for_its_type_is_refused() -> None:
    with pytest.raises((TooSmall, TooWide)):
        pages(cut_batch([Order(THREE, 1)], None), "A8")


@given(seeds, counts, st.sampled_from([1, 7, 60, 61, 10_000]), st.sampled_from([LETTER, A4, A6]))
@settings(max_examples=20, deadline=None)
def test_every_page_is_readable_and_no_piece_is_lost(
    seed: int, sections: int | None, count: int, sheet: Paper
) -> None:
    of = tieable(seed, sections)
    whole = cut_batch([Order(of, count)], RACK)
    found = bench_sheet([told(of)], whole, cautions(ENGLISH, "fly"), sheet, OURS)
    for page in found:
        assert faults(page, MARGIN - FOOT) == []
    text = " ".join(words(page) for page in found)
    shown = sum(int(n) for n in re.findall(r"(\d+) × section", text))
    short = sum(int(n) for n in re.findall(r"for (\d+) pieces? from", text))
    pieces = sum(not piece.section.bought for piece in of.pieces)
    assert shown + short == count * pieces


def test_one_section_is_one_section() -> None:
    single = leader(recipe(section("9 ft", "0.010 in", "fluorocarbon")))
    assert typeset("1 section, tippet") in read(cut_batch([Order(single, 2)], None))
