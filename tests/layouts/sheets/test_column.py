"""Faces stand one below the other on a sheet as large as they are, each with its edge."""

import pytest

from tagend.layouts.paper.face import MM, Face
from tagend.layouts.sheets.column import BETWEEN, column
from tagend.layouts.sheets.ink import ink

WIDE, HIGH = Face("wide", 240, 150, ()), Face("high", 150, 240, ())


def test_a_sheet_is_as_wide_as_the_widest_and_as_high_as_all() -> None:
    sheet = column([WIDE, HIGH, WIDE])
    assert (sheet.width, sheet.height) == pytest.approx((240, 150 + 240 + 150 + 2 * BETWEEN))
    assert [placed.face for placed in sheet.placed] == [WIDE, HIGH, WIDE]
    tops = [placed.y for placed in sheet.placed]
    assert tops == pytest.approx([0, 150 + BETWEEN, 150 + 240 + 2 * BETWEEN])


def test_one_face_is_the_whole_sheet() -> None:
    sheet = column([WIDE])
    assert (sheet.width, sheet.height) == (240, 150)


@pytest.mark.parametrize("corner", [0.0, 3 * MM])
def test_the_whole_of_an_edge_lies_within_its_face(corner: float) -> None:
    sheet = column([WIDE, HIGH], corner)
    for edge, placed in zip(sheet.marks, sheet.placed, strict=True):
        assert ink([edge]) == pytest.approx(placed.box)
