"""A corrected sheet comes out true on the printer that was measured."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM, Face, Path, rectangle
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.imposition import place_labels
from tagend.layouts.sheets.printer import (
    KEYS,
    MARK,
    Printer,
    corrected,
    read_printer,
)
from tagend.layouts.sheets.sheet import Adjustment, Placed, Sheet, SheetSide
from tagend.layouts.stock.stock import label_sheet
from tests.layouts.drawn import boxes

SHIFTS = st.floats(-5, 5).map(lambda mm: mm * MM)
RULES = st.floats(98.01, 101.99).map(lambda mm: mm * MM)
PRINTERS = st.builds(Printer, SHIFTS, SHIFTS, SHIFTS, SHIFTS, RULES, RULES)
SIDES: tuple[SheetSide, ...] = ("front", "back")


def square(x: float, y: float, side: SheetSide = "front") -> Sheet:
    """Return a sheet with 10 mm of black at a place."""
    face = Face("square", 10 * MM, 10 * MM, (Path(rectangle(0, 0, 10 * MM, 10 * MM), fill=0),))
    return Sheet(612, 792, (Placed(face, x, y),), side=side)


def printed(printer: Printer, side: SheetSide, x: float, y: float) -> tuple[float, float]:
    """Return where a printer that was measured so puts a place of the page.

    As the words on the page to measure have it: the mark 20 mm from the left edge comes out
    front_x too far right, and 100 mm are rule_x long.
    """
    shift_x = printer.front_x if side == "front" else printer.back_x
    shift_y = printer.front_y if side == "front" else printer.back_y
    return (
        20 * MM + shift_x + (x - 20 * MM) * printer.rule_x / (100 * MM),
        20 * MM + shift_y + (y - 20 * MM) * printer.rule_y / (100 * MM),
    )


@pytest.mark.parametrize("side", SIDES)
@given(printer=PRINTERS, x=st.floats(100, 400), y=st.floats(100, 500))
def test_what_is_corrected_is_printed_in_its_place(
    side: SheetSide, printer: Printer, x: float, y: float
) -> None:
    (sheet,) = corrected([square(x, y, side)], printer)
    drawn = sheet.adjustment.at(x, y)
    assert printed(printer, side, *drawn) == pytest.approx((x, y), abs=1e-6)


def test_a_print_too_far_right_and_down_is_drawn_further_left_and_up() -> None:
    (sheet,) = corrected([square(200, 300)], Printer(front_x=2 * MM, front_y=3 * MM))
    assert sheet.adjustment.at(200, 300) == pytest.approx((200 - 2 * MM, 300 - 3 * MM))


def test_a_rule_too_short_is_drawn_longer_and_its_mark_stays() -> None:
    (sheet,) = corrected([square(200, 300)], Printer(rule_x=99 * MM))
    (left, _), (right, _) = sheet.adjustment.at(0, 0), sheet.adjustment.at(99 * MM, 0)
    assert right - left == pytest.approx(100 * MM)
    assert sheet.adjustment.at(MARK, 7) == pytest.approx((MARK, 7))


def test_each_side_is_corrected_by_its_own_shift() -> None:
    printer = Printer(front_x=MM, back_x=-MM, front_y=2 * MM, back_y=0)
    front, back = corrected([square(200, 300), square(200, 300, "back")], printer)
    assert front.adjustment.at(0, 0) == pytest.approx((-MM, -2 * MM))
    assert back.adjustment.at(0, 0) == pytest.approx((MM, 0))


def test_a_true_printer_changes_no_byte() -> None:
    sheet = square(200, 300)
    assert corrected([sheet], Printer())[0].adjustment == Adjustment()
    plain, true = (
        write_pdf([s], title="", creator="") for s in (sheet, *corrected([sheet], Printer()))
    )
    assert plain == true


def test_the_finished_page_is_drawn_where_the_correction_says() -> None:
    printer = Printer(front_x=1.5 * MM, front_y=-2 * MM, rule_x=99.5 * MM, rule_y=101 * MM)
    pdf = write_pdf(corrected([square(200, 300)], printer), title="", creator="")
    ((left, top, right, bottom),) = boxes(pdf)
    assert printed(printer, "front", left, top) == pytest.approx((200, 300), abs=0.003)
    assert printed(printer, "front", right, bottom) == pytest.approx(
        (200 + 10 * MM, 300 + 10 * MM), abs=0.003
    )


# --- what cannot be undone --------------------------------------------------------------------

LABEL = label_sheet("a4-3x8-70x37")


def full_sheet() -> list[Sheet]:
    """Return labels that reach to the sheet's edge, printed as far as their inset."""
    inset = LABEL.inset
    outline = rectangle(inset, inset, LABEL.width - 2 * inset, LABEL.height - 2 * inset)
    face = Face("label", LABEL.width, LABEL.height, (Path(outline, fill=0),))
    return list(place_labels([face] * 24, LABEL))


def test_a_shift_that_would_push_labels_off_the_sheet_is_refused_with_what_can_be_undone() -> None:
    # The inset at the left edge is 4.233 mm, a laser's white border.
    with pytest.raises(Refused) as caught:
        corrected(full_sheet(), Printer(front_x=6 * MM))
    assert str(caught.value) == (
        "printer, front_x: made true for this printer, "
        "print would reach 1.77 mm over the sheet's left edge; "
        "a front_x of up to 4.23 mm can be undone here"
    )
    corrected(full_sheet(), Printer(front_x=4.2 * MM))


@pytest.mark.parametrize(
    ("printer", "key", "edge"),
    [
        (Printer(front_x=-6 * MM), "front_x", "right"),
        (Printer(front_y=6 * MM), "front_y", "top"),
        (Printer(front_y=-6 * MM), "front_y", "bottom"),
    ],
)
def test_every_edge_is_watched(printer: Printer, key: str, edge: str) -> None:
    with pytest.raises(Refused) as caught:
        corrected(full_sheet(), printer)
    (fault,) = caught.value.faults
    assert fault.where == f"printer, {key}"
    assert f"over the sheet's {edge} edge" in fault.found
    most = re.search(r"up to (\S+) mm can be undone", fault.instead)
    assert most is not None
    corrected(full_sheet(), Printer(**{key: float(most[1]) * 0.999 * MM}))


def test_a_scale_that_needs_more_paper_than_there_is_is_told() -> None:
    with pytest.raises(Refused, match="bring the printer's scale nearer to 100 %"):
        corrected(full_sheet(), Printer(rule_y=98 * MM))


# --- what people write ------------------------------------------------------------------------


def test_lengths_with_their_units_and_signs_are_read() -> None:
    printer = read_printer(
        {"front_x": "0.8 mm", "front_y": "-1/32 in", "back_x": "−0.05cm", "rule_x": "99.6 mm"}
    )
    found = (printer.front_x, printer.front_y, printer.back_x, printer.back_y, printer.rule_x)
    assert found == pytest.approx((0.8 * MM, -72 / 32, -0.5 * MM, 0, 99.6 * MM))
    assert read_printer({"back_y": "+ 1 mm"}).back_y == pytest.approx(MM)
    assert read_printer({}) == Printer()


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("front_x", "0.8", "front_x: '0.8' has no unit; write a length with its unit"),
        ("front_x", 0.8, "front_x: 0.8 has no unit; write a length with its unit"),
        ("front_x", "--1 mm", "front_x: '-1 mm' is negative; write a length with its unit"),
        ("frontx", "1 mm", "frontx: no such key; did you mean front_"),
        ("scale", "1 mm", "scale: no such key; write one of: front_x, front_y, back_x"),
        ("back_y", "20.8 mm", "back_y: 20.8 mm is more than 10 mm; write how far the mark is off"),
        ("rule_y", "97 mm", "rule_y: 97 mm for 100 mm is off by 3.0 %, more than printers are; "),
        ("rule_x", "102.1 mm", "rule_x: 102.1 mm for 100 mm is off by 2.1 %, more than"),
        ("rule_x", "-99 mm", "rule_x: -99 mm for 100 mm is off by 199.0 %"),
        ("rule_x", "4 in", None),
    ],
)
def test_what_cannot_have_been_measured_is_refused(
    key: str, value: object, words: str | None
) -> None:
    if words is None:  # 101.6 mm
        read_printer({key: value})
        return
    with pytest.raises(Refused) as caught:
        read_printer({key: value})
    assert str(caught.value).startswith(words)


def test_fitting_to_the_page_is_named_as_the_cause() -> None:
    with pytest.raises(Refused, match="print at 100 %, not fitted to the page"):
        read_printer({"rule_x": "96 mm"})


def test_all_faults_are_told_together() -> None:
    with pytest.raises(Refused) as caught:
        read_printer(dict.fromkeys(KEYS, "x"))
    assert [fault.where for fault in caught.value.faults] == list(KEYS)
