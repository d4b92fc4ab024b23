"""Bench sheets as numbers: every piece and every knot stands on a page, with boxes to tick."""

import re
from collections.abc import Iterable
from datetime import date

import pytest
from cfractions import Fraction
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import length_number
from tagend.cards.base.units import parse_line_length
from tagend.cards.batches.batch import Batch, Order
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.faces.batch_head import BatchHead
from tagend.cards.faces.bench import bench_sheet
from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.page import NARROW_MARGIN
from tagend.cards.practice.rack_file import Rack, read_rack
from tagend.cards.words.cautions import cautions
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.tying_words import tying_lines
from tagend.fonts import OURS
from tagend.layouts.base.quantities import INCH_MM
from tagend.layouts.paper.face import Face
from tagend.layouts.paper.text import TooWide
from tagend.layouts.paper.typeset import prepare
from tagend.layouts.stock.formats import Paper
from tagend.layouts.stock.stock import paper
from tests.seen import Box, faults, paths, points, runs, words
from tests.tieable import counts, seeds, tieable
from tests.told import told
from tests.written import PRACTICE, SIX, leader, practice, recipe, section

LETTER, A4, A5 = paper("Letter"), paper("A4"), paper("A5")
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


def boxes(page: Face) -> list[Box]:
    """Return the boxes to tick: closed, not filled, and smaller than a frame."""
    closed = [path for path in paths(page) if path.steps[-1] == ("close",) and path.fill is None]
    found = []
    for path in closed:
        xs, ys = zip(*points(path), strict=True)
        if max(ys) - min(ys) < 20:
            found.append((min(xs), min(ys), max(xs), max(ys)))
    return found


def cut_lengths(found: Iterable[Face]) -> list[str]:
    """Return the whole inches of every cut, which are the largest numbers."""
    largest = [run.text for page in found for run in runs(page) if run.size == 18]
    return [text for text in largest if "/" not in text]


def typeset(text: str) -> str:
    return prepare(text)


def test_every_piece_is_listed_with_its_length_large() -> None:
    found = pages(cut_batch([Order(THREE, 12)], None))
    whole = [str(int(piece.cut_mm / INCH_MM)) for piece in THREE.pieces]
    assert cut_lengths(found) == whole


def test_a_row_has_what_is_cut_what_is_tied_and_the_lap_with_the_next_on_one_line() -> None:
    (page, *_) = pages(cut_batch([Order(THREE, 12)], None))
    (first,) = [run for run in runs(page) if run.text == "57" and run.size == 18]
    row = [run.text for run in runs(page) if abs(run.y - first.y) < 3]
    lap = typeset(told(THREE).lap_numbers()[1]).replace(" ", "")
    assert row[:2] == ["1", "57"]
    assert "46" in row
    assert lap in "".join(row)


def test_every_knot_is_listed_in_order_and_how_each_is_seated_once() -> None:
    text = read(cut_batch([Order(THREE, 12)], None))
    knots = [THREE.butt.knot, *(joint.knot for joint in THREE.joints), THREE.fly.knot]
    tying = text[text.index("to the fly") + len("to the fly") :]
    places = [tying.index(place) for place in (" butt ", " 1 to 2 ", " 2 to 3 ", " fly ")]
    assert places == sorted(places)
    for knot in knots:
        assert knot is not None
        assert typeset(knot.name) in text
        assert text.count(typeset(knot.seat)) == 1


def test_there_is_a_box_for_each_piece_and_each_knot() -> None:
    ticked = sum(len(boxes(page)) for page in pages(cut_batch([Order(THREE, 12)], None)))
    assert ticked == 12 * (3 + 4)  # three pieces; two joints and two ends


def test_each_box_has_its_leader_s_number_where_the_book_has_given_one() -> None:
    order = Order(THREE, 12, range(141, 153))
    found = pages(cut_batch([order], None))
    text = " ".join(words(page) for page in found)
    for number in order.numbers:
        assert len(re.findall(rf"\b{number}\b", text)) == 3 + 4
    for page in found:
        labels = [run for run in runs(page) if run.text in map(str, order.numbers)]
        for run, (left, top, right, bottom) in zip(labels, boxes(page), strict=True):
            assert left < run.x
            assert run.x + run.width < right
            assert top < run.y < bottom


def test_a_piece_from_another_spool_names_the_leaders_that_it_is_for() -> None:
    order = Order(THREE, 12, range(141, 153))
    spools = (*RACK.spools, replace(RACK.spools[0], label="Other 23"))
    text = read(cut_batch([order], Rack(spools)))
    # 12 yd give 7 pieces of 57 in
    first, rest = text.split("Other 23")
    assert first.endswith("147 ")
    assert "148 149 150 151 152" in rest[: rest.index("Stiff 17")]


def test_twelve_leaders_of_six_sections_take_one_page() -> None:
    for sheet in ("Letter", "A4"):
        for numbers in ((), range(141, 153)):
            batch = cut_batch([Order(leader(SIX), 12, numbers)], None)
            assert len(pages(batch, sheet)) == 1


def test_fourteen_sections_take_two_pages_at_most() -> None:
    fine = (section(f"{30 - k} in", f"0.0{26 - k} in") for k in range(14))
    of = leader(recipe(*fine, butt="perfection loop", fly="non-slip loop"))
    for sheet in ("Letter", "A4"):
        assert len(pages(cut_batch([Order(of, 12, range(141, 153))], None), sheet)) <= 2


def test_type_is_large_enough_for_the_bench() -> None:
    (page, *_) = pages(cut_batch([Order(THREE, 12)], None))
    sizes = {run.text: run.size for run in runs(page)}
    assert sizes["57"] == 18
    assert sizes["1 to 2"] == pytest.approx(13)


def test_every_page_says_which_batch_it_is_of() -> None:
    batch = cut_batch([Order(THREE, 60)], None)
    head = BatchHead(number=3, day=date(2026, 5, 31), who="Ana")
    all_told = [told(THREE)]
    found = bench_sheet(all_told, batch, (), A5, OURS, head)
    assert len(found) > 1
    for number, page in enumerate(found, start=1):
        for said in ("Under test", "batch 3", "tied 2026-05-31", "Ana", f"{number} of"):
            assert said in words(page)[:120] + words(page)[-20:]


def test_a_day_not_known_is_a_line_to_write_on_beside_the_remark() -> None:
    batch = cut_batch([Order(THREE, 2)], None)
    for day, asked in ((None, ["tied", "remark"]), (date(2026, 5, 31), ["remark"])):
        head = BatchHead(day=day)
        (page,) = bench_sheet([told(THREE)], batch, (), LETTER, OURS, head)
        first = min(run.y for run in runs(page) if run.text == "remark")
        assert [run.text for run in runs(page) if run.y == first] == asked


def test_there_is_a_line_for_what_learn_asks_of_each_different_knot() -> None:
    (page,) = pages(cut_batch([Order(THREE, 2)], None))
    rows = {run.y for run in runs(page) if run.text == "cut"}
    asked = {y: [run.text for run in runs(page) if run.y == y] for y in rows}
    # a blood or a surgeon's takes two pieces, a loop one: tests/cards/leader/test_learning.py
    kinds = {joint.knot.name for joint in THREE.joints}
    assert sorted(asked.values()) == sorted(
        [["cut", "+", "tied"]] * len(kinds) + [["cut", "tied"]] * 2
    )


def test_cautions_stand_in_a_frame_each_with_a_mark() -> None:
    (page,) = pages(cut_batch([Order(THREE, 2)], None))
    heeded = cautions(ENGLISH, "fly")
    assert [run.text for run in runs(page)].count("!") == len(heeded)
    closed = [path for path in paths(page) if path.steps[-1] == ("close",)]
    (frame,) = [path for path in closed if path.line == 1.0]
    ys = [y for _, y in points(frame)]
    assert all(min(ys) < run.y < max(ys) for run in runs(page) if run.text == "!")


def test_a_spool_is_named_with_what_stays_and_where_it_runs_out() -> None:
    text = read(cut_batch([Order(THREE, 12)], RACK))
    # 12 yd are 432 in: 7 pieces of 57 in take 399 in, 11.1 yd; 33 in, 0.9 yd, stay
    assert "Stiff 23 0.023 in hard nylon; draws 11.1 yd; 0.9 yd stays" in text
    assert "runs out at leader 8 of Under test" in text
    assert "Stiff 17 0.017 in hard nylon" in text


def test_a_person_s_second_unit_stands_beside_every_cut_and_in_the_head() -> None:
    both = leader(THREE.recipe, practice('units = "in and cm"'))
    (page, *_) = pages(cut_batch([Order(both, 12)], None))
    # 94 in = 238.76 cm
    assert "12 × Under test, 7 ft 10 in · 2.39 m" in words(page)
    placed = {run.text: run for run in runs(page)}
    for piece in both.pieces:
        first = placed[str(int(piece.cut_mm / INCH_MM))]
        second = placed[f"{cm(piece.cut_mm)}".partition(".")[0]]
        assert second.size < first.size == 18
        assert first.x + first.width < second.x
        assert abs(second.y - first.y) < 4


def cm(mm: Fraction) -> str:
    return length_number(mm, "cm")


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
    assert "Spare 0,43 mm hard nylon" in text
    assert "Stiff 17 0,43 mm hard nylon" in text
    assert not re.search(r"\d yd|0.017", text)
    unused = read(cut_batch([Order(thin, 1)], Rack(spools)), wording=Wording("en", ","))
    assert "Stiff 17 0,43 mm hard nylon; draws 0 m; 91,4 m stays" in unused


def test_what_the_rack_lacks_is_to_buy() -> None:
    text = read(cut_batch([Order(THREE, 12)], RACK))
    # 5 pieces of 57 1/2 in: 287 1/2 in = 7.99 yd
    assert "Buy 8 yd of 0.023 in hard nylon, for 5 pieces from leader 8 of Under test on" in text
    assert "of 0.010 in fluorocarbon, for 12 pieces from leader 1 of Under test on" in text


def test_what_is_bought_ready_made_is_to_buy_and_not_to_cut() -> None:
    bought = leader(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "0.010 in")))
    batch = cut_batch([Order(bought, 4)], None)
    assert "4 × 5 ft of 0.024 in nylon, ready made" in read(batch)
    assert len(cut_lengths(pages(batch))) == 1


def test_without_anything_to_buy_there_is_no_heading_for_it() -> None:
    assert " Buy " not in read(cut_batch([Order(THREE, 2)], None))


def test_a_knot_through_which_a_piece_passes_says_what_must_wait() -> None:
    text = read(cut_batch([Order(THREE, 2)], None))
    assert "section 3 passes through whole, so tie it before the fly" in text


def test_each_recipe_of_a_batch_has_its_tying_and_its_chart() -> None:
    other = leader(replace(THREE.recipe, name="The other"))
    text = read(cut_batch([Order(THREE, 2), Order(other, 3)], None))
    assert "Tie 2 × Under test, from the butt to the fly" in text
    assert "Tie 3 × The other, from the butt to the fly" in text
    assert text.count("stiffness in bending") == 2
    assert text.count("The other") >= 5  # in the head, what is tied, its cuts, its tying and chart


def test_pages_are_numbered_and_as_large_as_the_paper() -> None:
    found = pages(cut_batch([Order(THREE, 60)], None), "A5")
    for number, page in enumerate(found, start=1):
        assert (page.width, page.height) == (A5.width, A5.height)
        assert f"page {number} of {len(found)}" in words(page)


def test_a_spool_that_takes_more_than_a_page_is_named_on_each_under_the_heads() -> None:
    same = leader(recipe(*(section("20 in", "0.010 in") for _ in range(30)), butt="none"))
    found = pages(cut_batch([Order(same, 60)], None))
    cutting = [page for page in found if cut_lengths([page])]
    assert len(cutting) > 1
    for page in cutting:
        assert "0.010 in nylon" in words(page)
        assert "CUT, in" in words(page)
    assert len(cut_lengths(found)) == 30


def test_many_recipes_fill_more_than_one_page_with_their_names() -> None:
    many = [Order(leader(replace(THREE.recipe, name=f"Leader {k}")), 1) for k in range(60)]
    text = read(cut_batch(many, None))
    assert all(f"1 × Leader {k}, 7 ft 10 in" in text for k in range(60))


def test_paper_too_small_for_its_type_is_refused() -> None:
    with pytest.raises((TooSmall, TooWide)):
        pages(cut_batch([Order(THREE, 1)], None), "A8")


@given(seeds, counts, st.sampled_from([1, 7, 60, 61, 10_000]), st.sampled_from([LETTER, A4, A5]))
@settings(max_examples=20, deadline=None)
def test_every_page_is_readable_and_no_piece_is_lost(
    seed: int, sections: int | None, count: int, sheet: Paper
) -> None:
    of = tieable(seed, sections)
    whole = cut_batch([Order(of, count)], RACK)
    found = bench_sheet([told(of)], whole, cautions(ENGLISH, "fly"), sheet, OURS)
    for page in found:
        assert faults(page, NARROW_MARGIN) == []
    text = " ".join(words(page) for page in found)
    cuts = [cut.count for pull in whole.pulls for cut in pull.cuts]
    knots = len(tying_lines(told(of)))
    ticked = sum(map(boxes_for, [*cuts, *[count] * knots]))
    assert sum(len(boxes(page)) for page in found) == ticked
    short = sum(int(n) for n in re.findall(r"for (\d+) pieces? from", text))
    pieces = sum(not piece.section.bought for piece in of.pieces)
    assert sum(cuts) + short == count * pieces


def boxes_for(count: int) -> int:
    """Return how many boxes as many things have: more than 60 share them by tens and so on."""
    each = next(each for each in (1, 10, 100, 1000) if count <= 60 * each)
    return -(-count // each)


def test_one_section_is_one_section() -> None:
    single = leader(recipe(section("9 ft", "0.010 in", "fluorocarbon")))
    assert typeset("1 section, tippet") in read(cut_batch([Order(single, 2)], None))
