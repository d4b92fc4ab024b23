"""Wallet labels as numbers: every label sheet that comes with the program."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.label import wallet_label
from tagend.cards.faces.label_lines import LabelNote
from tagend.cards.leader.leader import Leader
from tagend.cards.printing.codes import code_of
from tagend.cards.words.language import ENGLISH, Wording
from tagend.fonts import OURS
from tagend.layouts.codes.code import DESIGN_MODULE, QUIET, SMALLEST_MODULE
from tagend.layouts.paper.face import Face
from tagend.layouts.stock.formats import LabelSheet
from tagend.layouts.stock.stock import label_sheet, shipped
from tests.seen import codes, faults, paths, points, runs, words
from tests.tieable import seeds, tieable
from tests.told import told
from tests.written import PRACTICE, SIX, leader, practice, recipe, section

ALL = list(shipped().labels.values())
USUAL = label_sheet("letter-3x10-66.7x25.4")
LARGE = label_sheet("letter-2x3-101.6x84.7")
EIGHT = replace(SIX, name="Sandbar eight", line_weight=8)
TIED = replace(EIGHT, tied=date(2026, 5, 31))


def label(
    of: Leader,
    stock: LabelSheet,
    note: LabelNote | None = None,
    wording: Wording = ENGLISH,
) -> Face:
    return wallet_label(told(of, wording), code_of(of, PRACTICE), stock, OURS, note or LabelNote())


def test_a_label_says_which_leader_it_is() -> None:
    text = words(label(leader(TIED), USUAL))
    for word in ("Sandbar eight", "11 ft", "tippet 0.010 in", "8.5 lb", "tied 2026-05-31"):
        assert word in text


def test_a_label_says_its_length_in_both_units_that_a_person_wants() -> None:
    both = leader(EIGHT, practice('units = "in and cm"'))
    assert "11 ft · 3.35 m" in words(label(both, USUAL))  # 132 in = 335.28 cm
    assert "3.35" not in words(label(leader(EIGHT, practice('units = "in"')), USUAL))


def test_a_label_has_the_decimal_sign_of_the_shop_and_the_same_code() -> None:
    metric = leader(TIED, practice('units = "cm and in"'))
    face = label(metric, USUAL, wording=Wording("en", ","))
    for word in ("3,35 m · 11 ft", "tippet 0,25 mm", "3,9 kg", "tied 2026-05-31"):
        assert word in words(face)
    assert codes(face)[0].symbol == code_of(leader(TIED), PRACTICE)


def test_the_code_of_a_label_holds_the_whole_recipe() -> None:
    (code,) = codes(label(leader(TIED), USUAL))
    assert code.symbol == code_of(leader(TIED), PRACTICE)


def test_a_day_not_known_is_a_line_to_write_on() -> None:
    known, blank = label(leader(TIED), USUAL), label(leader(EIGHT), USUAL)
    assert paths(known) == []
    (line,) = paths(blank)
    (left, y), (right, end) = points(line)
    assert y == end
    (tied,) = [run for run in runs(blank) if run.text == "tied"]
    assert tied.x + tied.width < left
    assert right - left >= 3 * tied.size  # room for a month and a day
    assert abs(y - tied.y) < tied.size / 2


def test_six_sections_fit_the_one_inch_label_at_a_module_that_prints() -> None:
    (code,) = codes(label(leader(EIGHT), USUAL))
    assert code.module >= SMALLEST_MODULE


def test_a_large_label_has_a_code_of_the_design_size_and_large_type() -> None:
    small, large = label(leader(EIGHT), USUAL), label(leader(EIGHT), LARGE)
    assert codes(large)[0].module >= DESIGN_MODULE
    assert runs(large)[0].size > runs(small)[0].size


def test_a_note_numbers_the_label_and_says_how_it_was_wound() -> None:
    note = LabelNote(number="3 of 12", first_out="fly", test_box=True)
    face = label(leader(TIED), LARGE, note)
    for word in ("3 of 12", "fly end comes out first", "pull-tested"):
        assert word in words(face)
    (box,) = [path for path in paths(face) if path.steps[-1] == ("close",)]
    xs = [x for x, _ in points(box)]
    assert max(xs) - min(xs) >= 0.75 * 7.5  # a pencil's tick fits


def test_a_note_may_say_another_day_and_the_lots() -> None:
    note = LabelNote(number="no. 12", tied=date(2026, 10, 4), lots=("B 22", "F 7"))
    text = words(label(leader(TIED), LARGE, note))
    assert "no. 12 · tied 2026-10-04" in text
    assert "lots B 22, F 7" in text
    assert "2026-05-31" not in text
    assert "lot B 22" in words(label(leader(TIED), LARGE, replace(note, lots=("B 22",))))


@pytest.mark.parametrize("stock", ALL, ids=[stock.name for stock in ALL])
def test_what_is_asked_for_stands_or_is_refused_and_lots_stand_whole_or_not_at_all(
    stock: LabelSheet,
) -> None:
    lots = ("B 22", "F 7", "K 114")
    note = LabelNote(number="3 of 12", first_out="fly", test_box=True, lots=lots)
    try:
        face = label(leader(TIED), stock, note)
    except TooSmall:
        return
    text = words(face)
    for word in ("3 of 12", "2026-05-31", "fly end comes out first", "pull-tested"):
        assert word in text
    assert len({said in text for said in ("lots", *lots)}) == 1


def test_lots_give_way_to_all_that_is_asked_for() -> None:
    lots = tuple(f"long lot {n}" for n in range(12))
    text = words(label(leader(TIED), USUAL, LabelNote(number="3 of 12", lots=lots)))
    assert "3 of 12" in text
    assert "lot" not in text


def test_a_round_label_keeps_to_its_circle() -> None:
    round_label = label_sheet("letter-3x4-50.8round")
    face = label(leader(EIGHT), round_label)
    centre, radius = round_label.width / 2, round_label.width / 2 - round_label.inset
    corners = [(run.x + dx, run.y) for run in runs(face) for dx in (0, run.width)]
    for code in codes(face):
        side = code.symbol.side * code.module
        corners += [(code.x + dx, code.y + dy) for dx in (0, side) for dy in (0, side)]
    for x, y in corners:
        assert (x - centre) ** 2 + (y - centre) ** 2 <= (radius + 0.01) ** 2


@pytest.mark.parametrize("stock", ALL, ids=[stock.name for stock in ALL])
def test_every_label_that_holds_the_sample_is_readable(stock: LabelSheet) -> None:
    note = LabelNote(number="3 of 12", first_out="fly", test_box=True)
    code_side = (code_of(leader(EIGHT), PRACTICE).side + 2 * QUIET) * SMALLEST_MODULE
    room = min(stock.width, stock.height)
    for written, more in ((EIGHT, LabelNote()), (TIED, note)):
        try:
            face = label(leader(written), stock, more)
        except TooSmall:
            if more == note:
                continue  # what is asked for does not give way
            # Only where the code itself takes more than four fifths of the shorter side, or the
            # words are left less than an inch.
            assert code_side > 0.8 * room or max(stock.width, stock.height) - code_side < 72
            continue
        assert (face.width, face.height) == (stock.width, stock.height)
        assert faults(face, stock.inset) == []


@given(seeds, st.sampled_from(ALL))
@settings(max_examples=80, deadline=None)
def test_any_leader_s_label_is_readable_or_refused(seed: int, stock: LabelSheet) -> None:
    try:
        face = label(tieable(seed), stock)
    except TooSmall:
        return
    assert faults(face, stock.inset) == []


@pytest.mark.parametrize("stock", [s for s in ALL if s.on_roll], ids=lambda stock: stock.name)
def test_a_roll_s_code_stands_on_whole_dots_of_its_printer(stock: LabelSheet) -> None:
    assert stock.dpi
    try:
        (code,) = codes(label(leader(EIGHT), stock))
    except TooSmall:
        return
    for measure in (code.x, code.y, code.module):
        dots = measure * stock.dpi / 72
        assert dots == pytest.approx(round(dots), abs=1e-6)
    assert code.module >= SMALLEST_MODULE


def test_a_label_with_room_can_be_tied_from_without_its_code() -> None:
    text = words(label(leader(TIED), label_sheet("letter-1x2-215.9x139.7")))
    assert "finished 46 · 24 · 14 · 10 · 8 · 30 in" in text
    assert "0.023 · 0.020 · 0.017 · 0.015 · 0.013 · 0.010 in" in text
    for word in ("8-weight", "B blood", "NS non-slip loop"):
        assert word in text.replace("\u00a0", " ")


def test_a_broken_line_leaves_no_orphan() -> None:
    square = label_sheet("letter-3x4-50.8sq")
    said = [run.text.replace("\u00a0", " ") for run in runs(label(leader(TIED), square))]
    first, second = [text for text in said if text.startswith("0.0")]
    assert first.endswith("·")
    assert second.count("·") == 2
    assert not any(text.startswith("·") for text in said)


def test_a_small_label_keeps_its_lines_to_tie_by_in_fewer_words() -> None:
    face = label(leader(TIED), USUAL, LabelNote(number="no. 12", lots=("B 22", "F 7", "K 114")))
    text = words(face).replace("\u00a0", " ")
    to_tie = "finished 46 · 24 · 14 · 10 · 8 · 30 in 23 · 20 · 17 · 15 · 13 · 10 thou"
    for said in ("Sandbar eight, 11 ft", to_tie, "lots B 22, F 7, K 114", "no. 12"):
        assert said in text
    assert face.left_out == ()


def test_x_sizes_among_others_are_told_in_the_unit_of_the_others() -> None:
    mixed = recipe(
        section("40 in", "0.021 in"), section("20 in", "10 thou"), section("20 in", "2X")
    )
    assert "0.021 · 0.010 · 0.009 in" in words(label(leader(mixed), LARGE)).replace("\u00a0", " ")


def test_what_a_label_has_no_room_for_is_said_of_it() -> None:
    lots = tuple(f"long lot {n}" for n in range(12))
    face = label(leader(TIED), USUAL, LabelNote(number="3 of 12", lots=lots, test_box=True))
    assert face.left_out == ("to tie", "lots")
    assert label(leader(TIED), LARGE).left_out == ()


def test_the_smallest_labels_say_at_least_the_tippets_diameter() -> None:
    tiny = label_sheet("a4-7x27-25.4x10")
    face = wallet_label(told(leader(EIGHT)), None, tiny, OURS)
    assert words(face).replace("\u00a0", " ") == "Sandbar eight 11 ft, 0.010 in"
    assert faults(face, tiny.inset) == []
    assert face.left_out == ("to tie", "tippet")


def test_lot_and_number_stand_last() -> None:
    note = LabelNote(number="no. 12", lots=("B 22",), test_box=True)
    said = [run.text for run in runs(label(leader(TIED), LARGE, note))]
    assert said[-2:] == ["lot B 22", "no. 12 · tied 2026-05-31"]


def test_a_label_of_words_alone_fits_where_no_code_does() -> None:
    tiny = label_sheet("roll-40x20")
    face = wallet_label(told(leader(TIED)), None, tiny, OURS)
    assert codes(face) == []
    assert "Sandbar eight" in words(face)
    assert faults(face, tiny.inset) == []
