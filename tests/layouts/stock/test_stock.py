import re
import subprocess
import sys
import tomllib
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM
from tagend.layouts.stock.formats import CardSize, LabelSheet, Paper, Stock
from tagend.layouts.stock.stock import any_stock, card_size, label_sheet, merge, paper, shipped

SHEET = {
    "paper": "A4",
    "columns": 2,
    "rows": 4,
    "size": "90 x 60 mm",
    "margin": "10 x 20 mm",
    "pitch": "100 x 65 mm",
}


def one_label(changes: Mapping[str, object]) -> Stock:
    return merge({"labels": {"mine": {**SHEET, **changes}}})


def test_defaults_are_a_bank_card_on_letter_and_thirty_address_labels() -> None:
    assert shipped().defaults == {
        "paper": "Letter",
        "card": "ID-1",
        "labels": "letter-3x10-66.7x25.4",
    }
    for name in shipped().defaults.values():
        assert any(
            name == entry.name
            for known in (shipped().papers, shipped().cards, shipped().labels)
            for entry in known.values()
        )


@pytest.mark.parametrize("name", ["A4", "a4", " a4 ", "half-letter", "Half Letter", "HALF_LETTER"])
def test_spelling_of_a_name_does_not_matter(name: str) -> None:
    assert paper(name).name in ("A4", "Half-Letter")


def test_bank_card_has_its_standard_size_and_corner() -> None:
    card = card_size("id-1")
    assert (card.width, card.height) == pytest.approx((85.6 * MM, 53.98 * MM))
    assert card.corner == pytest.approx(3.18 * MM)


def test_index_cards_lie_on_their_long_side() -> None:
    card = card_size("index-3x5")
    assert (card.width, card.height) == pytest.approx((127 * MM, 76.2 * MM))


def test_a_card_may_be_named_after_its_paper() -> None:
    assert (card_size("a7").width, card_size("a7").height) == pytest.approx((74 * MM, 105 * MM))


@pytest.mark.parametrize("name", ["85x54mm", "85 x 54 mm", "8.5×5.4cm"])
def test_a_size_stands_for_a_card(name: str) -> None:
    card = card_size(name)
    assert (card.width, card.height) == pytest.approx((85 * MM, 54 * MM))
    assert card.corner == 0


def test_a_size_in_inches_is_taken_as_written() -> None:
    assert (card_size("3x5in").width, card_size("3x5in").height) == (216, 360)


def test_a_size_stands_for_a_label_cut_from_a_roll() -> None:
    label = label_sheet("62x40mm")
    assert label.on_roll
    assert (label.paper.width, label.paper.height) == (label.width, label.height)
    assert label.places == ((0, 0),)


def test_inch_sheets_are_not_rounded() -> None:
    sheet = label_sheet("letter-3x10-66.7x25.4")
    # 2 5/8 in, 3/16 in, 1/2 in, 2 3/4 in and 1 in at 72 points
    assert (sheet.width, sheet.left, sheet.top) == (189, 13.5, 36)
    assert (sheet.pitch_x, sheet.pitch_y, sheet.height) == (198, 72, 72)
    # 1 1/3 in = 96 points
    assert label_sheet("letter-2x7-101.6x33.9").height == 96


def test_labels_are_counted_row_by_row() -> None:
    places = label_sheet("letter-3x10-66.7x25.4").places
    assert places[:4] == ((13.5, 36), (211.5, 36), (409.5, 36), (13.5, 108))
    assert len(places) == 30


def test_a_speck_of_a_label_has_an_inset_too() -> None:
    assert label_sheet("2x2mm").inset == pytest.approx(1 * MM)


@pytest.mark.parametrize(
    ("name", "inset_mm"),
    [
        ("letter-3x10-66.7x25.4", 2),
        ("a4-7x27-25.4x10", 1.5),  # under 15 mm tall
        ("roll-51x25", 1.5),
        ("a4-3x8-70x37", 25.4 / 6),  # reaches the sheet's edge: the printer's white border
        ("a4-3x4-63.5x72", 2),  # 4.5 mm off the edge: clear of the border
        ("roll-62x29", 1.6),
    ],
)
def test_inset_keeps_clear_of_drift_and_of_the_white_border(name: str, inset_mm: float) -> None:
    assert label_sheet(name).inset == pytest.approx(inset_mm * MM)


def test_unknown_name_is_met_with_the_nearest_ones() -> None:
    with pytest.raises(Refused) as caught:
        paper("Leter")
    assert str(caught.value) == (
        "no paper is called 'Leter'; did you mean Letter, Half-Letter "
        "or a size with its unit, such as 85x54mm?"
    )


@pytest.mark.parametrize("name", ["", "85x54", "0x54mm", "-1x5mm", "?"])
def test_what_is_neither_name_nor_size_is_refused(name: str) -> None:
    for look_up in (paper, card_size, label_sheet):
        with pytest.raises(Refused):
            look_up(name)


def test_own_stock_adds_to_the_shipped_stock_and_replaces_it() -> None:
    own = merge(
        {
            "paper": {"Bench": "200 x 300 mm", "A4": "209 x 296 mm"},
            "card": {"Wallet": {"size": "3 x 2 in", "corner": "2 mm"}},
            "labels": {"mine": {**SHEET, "paper": "bench"}},
            "defaults": {"card": "wallet"},
        }
    )
    assert paper("BENCH", own).width == pytest.approx(200 * MM)
    assert paper("a4", own).width == pytest.approx(209 * MM)
    assert card_size("wallet", own).corner == pytest.approx(2 * MM)
    assert label_sheet("mine", own).paper.name == "Bench"
    assert label_sheet("mine", own).pitch_x == pytest.approx(100 * MM)
    assert own.defaults == {**shipped().defaults, "card": "wallet"}
    assert card_size("id-1", own) == card_size("id-1")
    with pytest.raises(Refused):
        paper("bench")


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        (
            {"pitch": "80 x 65 mm"},
            "labels 'mine', pitch: 80 mm across is 10 mm less than the label's 90 mm, so labels "
            "overlap; measure from one label's edge to the same edge of the next",
        ),
        (
            {"margin": "30 x 20 mm"},
            # 30 + 100 + 90 = 220
            "labels 'mine', across: left margin 30 mm + 1 × pitch 100 mm + label 90 mm is 220 mm, "
            "10 mm more than the paper's 210 mm (A4); measure margin, pitch and label again",
        ),
        (
            {"rows": 5},
            # 20 + 4 * 65 + 60 = 340
            "labels 'mine', down: top margin 20 mm + 4 × pitch 65 mm + label 60 mm is 340 mm, "
            "43 mm more than the paper's 297 mm (A4); measure margin, pitch and label again",
        ),
        (
            {"corner": "31 mm"},
            "labels 'mine', corner: 31 mm is 1 mm more than half the label's short side; "
            "write at most 30 mm",
        ),
        (
            {"inset": "40 mm"},
            "labels 'mine', inset: 40 mm is 10 mm more than half the label's short side; "
            "write at most 30 mm",
        ),
        (
            {"size": "90 x 0 mm"},
            "labels 'mine', size: found '90 x 0 mm'; write lengths above 0",
        ),
        (
            {"size": "90 x 60"},
            "labels 'mine', size: '60' has no unit; "
            'write two lengths with their unit, such as "63.5 x 38.1 mm"',
        ),
        ({"size": 90}, "labels 'mine', size: found 90; write text in quotes"),
        (
            {"corner": "1.5"},
            "labels 'mine', corner: '1.5' has no unit; "
            'write a length with its unit, such as "3/16 in" or "1.5 mm"',
        ),
        (
            {"rows": "4"},
            "labels 'mine', rows: found '4'; write a whole number from 1 to 1000",
        ),
        (
            {"columns": True},
            "labels 'mine', columns: found True; write a whole number from 1 to 1000",
        ),
        (
            {"shape": "oval"},
            "labels 'mine', shape: found 'oval'; write \"rectangle\" or \"round\"",
        ),
        (
            {"paper": "Leter"},
            "labels 'mine', paper: no paper is called 'Leter'; did you mean Letter, Half-Letter "
            "or a size with its unit, such as 85x54mm?",
        ),
        (
            {"gap": "3 mm"},
            "labels 'mine', gap: no such key; write one of: "
            "paper, columns, rows, size, margin, pitch, corner, shape, inset, dpi",
        ),
    ],
)
def test_own_labels_are_refused_with_what_is_off(
    changes: Mapping[str, object], message: str
) -> None:
    with pytest.raises(Refused) as caught:
        one_label(changes)
    assert str(caught.value) == message


def test_two_entries_of_one_name_are_refused() -> None:
    with pytest.raises(Refused, match="card 'dry-tag': 'Dry Tag' is the same name"):
        merge({"card": {"Dry Tag": "40 x 90 mm", "dry-tag": "40 x 80 mm"}})


def test_labels_that_touch_need_no_pitch() -> None:
    sheet = merge(
        {"labels": {"mine": {"paper": "A4", "columns": 3, "rows": 8, "size": "70 x 37 mm"}}}
    )
    assert label_sheet("mine", sheet).places[4] == pytest.approx((70 * MM, 37 * MM))


def test_one_label_needs_no_true_pitch() -> None:
    sheet = one_label({"columns": 1, "pitch": "0 x 65 mm"})
    assert label_sheet("mine", sheet).columns == 1


def test_all_faults_of_a_file_come_together() -> None:
    with pytest.raises(Refused) as caught:
        merge(
            {
                "paper": {"Odd": 7, "Flat": {}},
                "card": {"Thin": "0 x 5 mm"},
                "labels": {"mine": {**SHEET, "pitch": "80 x 50 mm"}},
                "defaults": {"card": "Thinner"},
                "rolls": {},
            }
        )
    assert [fault.where for fault in caught.value.faults] == [
        "rolls",
        "paper 'Odd'",
        "paper 'Flat', size",
        "card 'Thin', size",
        "labels 'mine', pitch",
        "labels 'mine', pitch",
        "defaults, card",
    ]


@pytest.mark.parametrize("table", ["paper", "card", "labels", "defaults"])
def test_a_table_must_be_a_table(table: str) -> None:
    with pytest.raises(Refused):
        merge({table: 5})


@given(
    columns=st.integers(1, 3),
    rows=st.integers(1, 4),
    left=st.integers(0, 60),
    top=st.integers(0, 60),
    width=st.integers(10, 105),
    height=st.integers(10, 99),
    gap=st.integers(-5, 20),
)
def test_a_sheet_is_taken_when_its_labels_are_apart_and_inside(
    columns: int, rows: int, left: int, top: int, width: int, height: int, gap: int
) -> None:
    changes = {
        "columns": columns,
        "rows": rows,
        "margin": f"{left} x {top} mm",
        "size": f"{width} x {height} mm",
        "pitch": f"{width + gap} x {height + gap} mm",
    }
    apart = gap >= 0 or (columns == 1 and rows == 1)
    inside = (
        left + columns * (width + gap) - gap <= 210 and top + rows * (height + gap) - gap <= 297
    )
    if apart and inside:
        assert len(label_sheet("mine", one_label(changes)).places) == columns * rows
    else:
        with pytest.raises(Refused):
            one_label(changes)


def test_the_name_of_a_shipped_sheet_says_its_measurements() -> None:
    named = re.compile(r"\w+-(?:(\d+)x(\d+)-)?([\d.]+)x([\d.]+)(-card)?")
    odd = {"letter-1x1-full", "a4-1x1-full", "letter-3x4-50.8sq", "letter-3x4-50.8round"}
    for sheet in shipped().labels.values():
        if sheet.name in odd:
            continue
        match = named.fullmatch(sheet.name)
        assert match, sheet.name
        assert (sheet.columns, sheet.rows) == (int(match[1] or 1), int(match[2] or 1)), sheet.name
        # Rolls are named to the millimetre, sheets to the tenth.
        slack = (0.5 if sheet.on_roll else 0.051) * MM
        assert sheet.width == pytest.approx(float(match[3]) * MM, abs=slack), sheet.name
        assert sheet.height == pytest.approx(float(match[4]) * MM, abs=slack), sheet.name


def test_looking_up_a_name_imports_neither_difflib_nor_drawing() -> None:
    code = (
        "import sys; from tagend.layouts.stock.stock import label_sheet; label_sheet('roll-51x25');"
        "print(sorted({'difflib', 'reportlab', 'pydantic', 'cards'} & set(sys.modules)))"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"


def test_stock_file_of_a_person_is_read_as_toml() -> None:
    written = """
        [stock.labels."bench roll"]
        size = "40 x 20 mm"
        corner = "2 mm"
    """
    own = tomllib.loads(written)["stock"]
    assert label_sheet("Bench-Roll", merge(own)).corner == pytest.approx(2 * MM)


def test_any_stock_is_found_by_its_name() -> None:
    assert isinstance(any_stock("A4-3x7-63.5x38.1"), LabelSheet)
    assert isinstance(any_stock("letter"), Paper)
    assert isinstance(any_stock("id 1"), CardSize)
    assert any_stock("85x54mm") == card_size("85x54mm")
    own = merge({"card": {"tag": "40 x 90 mm"}})
    assert any_stock("tag", own).name == "tag"


def test_a_name_that_no_stock_has_is_met_with_those_like_it_of_any_kind() -> None:
    with pytest.raises(Refused, match="no stock is called 'ID-11'; did you mean ID-1"):
        any_stock("ID-11")


def test_the_boxes_of_labels_are_their_places_and_size() -> None:
    sheet = label_sheet("letter-3x10-66.7x25.4")
    assert sheet.boxes[4] == (211.5, 108, 400.5, 180)
    assert len(sheet.boxes) == 30


@pytest.mark.parametrize(
    ("entry", "dpi"),
    [("40 x 30 mm", 203), ({"size": "40 x 30 mm", "dpi": 300}, 300), (SHEET, None)],
)
def test_a_roll_says_the_dots_of_its_printer_and_a_sheet_none(entry: object, dpi: int) -> None:
    assert merge({"labels": {"mine": entry}}).labels["mine"].dpi == dpi


@pytest.mark.parametrize("wrong", [{"size": "4 x 3 cm", "dpi": n} for n in (0, 203.2, True, 9999)])
def test_dots_that_no_printer_has_are_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(Refused, match="a whole number from 150 to 1200"):
        merge({"labels": {"mine": wrong}})


def test_a_sheet_has_no_dots_of_its_own() -> None:
    with pytest.raises(Refused, match="dpi: found 300 for a sheet; leave it out"):
        one_label({"dpi": 300})
