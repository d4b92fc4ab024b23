"""Rules and crosses stand in free margins, and meet from side to side."""

from itertools import combinations
from typing import Literal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Box, Face, Path, rectangle
from tagend.layouts.paper.rulers import true_size_rules
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.imposition import DoesNotFit, place_cards, place_labels
from tagend.layouts.sheets.ink import apart, ink
from tagend.layouts.sheets.margins import registered, with_rules
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.formats import LabelSheet, Paper
from tagend.layouts.stock.stock import card_size, label_sheet, paper, shipped

LETTER, A4 = paper("Letter"), paper("A4")
RULES = true_size_rules("100 % print: this is 50 mm", "and this is 2 in", OURS.medium)
FULL, SLIM = RULES
EDGES: tuple[Literal["long-edge", "short-edge"], ...] = ("long-edge", "short-edge")
NEAR = 0.03


def cards(count: int, name: str = "ID-1", *, backs: bool = False) -> list[Card]:
    size = card_size(name)
    front, back = (Face(side, size.width, size.height, ()) for side in ("front", "back"))
    return [Card(front, back if backs else None)] * count


def rule_of(sheet: Sheet) -> Placed | None:
    return next((p for p in sheet.placed if p.face in (FULL, SLIM)), None)


def check_clear(sheet: Sheet, kept: tuple[Box, ...] = ()) -> None:
    """Check that the rule is on the sheet and hides nothing."""
    rule = rule_of(sheet)
    assert rule is not None
    left, top, right, bottom = rule.box
    assert min(left, top) >= 5 * MM - NEAR
    assert max(right - sheet.width, bottom - sheet.height) <= -5 * MM + NEAR
    marks = [box for mark in sheet.marks if (box := ink((mark,))) is not None]
    others = [placed.box for placed in sheet.placed if placed is not rule]
    for box in (*kept, *others, *marks):
        assert apart(rule.box, box, 1 * MM)


# --- the rule of true size --------------------------------------------------------------------


@pytest.mark.parametrize("stock", shipped().labels.values(), ids=lambda stock: stock.name)
def test_a_rule_on_a_label_sheet_stays_off_every_label(stock: LabelSheet) -> None:
    label = Face("label", stock.width, stock.height, ())
    (sheet,) = with_rules(place_labels([label], stock), RULES, stock.boxes)
    margins = (stock.left, stock.top)
    if rule_of(sheet) is None:
        # 5 mm to the sheet's edge, 3 mm for a slim rule, and 2.5 mm to the labels.
        assert max(margins) < 10.6 * MM
    else:
        check_clear(sheet, stock.boxes)


def test_the_commonest_label_sheets_have_a_rule() -> None:
    for name in ("letter-3x10-66.7x25.4", "a4-3x7-63.5x38.1", "letter-2x5-101.6x50.8"):
        stock = label_sheet(name)
        label = Face("label", stock.width, stock.height, ())
        (sheet,) = with_rules(place_labels([label] * 4, stock), RULES, stock.boxes)
        assert rule_of(sheet) is not None


@settings(max_examples=60)
@given(
    count=st.integers(1, 9),
    name=st.sampled_from(["ID-1", "A7", "trading-card", "index-3x5", "business-EU"]),
    backs=st.sampled_from(["fold", "separate", "long-edge"]),
    gutter=st.sampled_from([0.0, 12.0]),
    margin=st.sampled_from([0.0, 5 * MM, 12 * MM]),
)
def test_a_rule_on_a_card_sheet_hides_no_card_and_no_mark(
    count: int,
    name: str,
    backs: Literal["fold", "separate", "long-edge"],
    gutter: float,
    margin: float,
) -> None:
    try:
        placed = place_cards(
            cards(count, name, backs=True), A4, backs=backs, gutter=gutter, margin=margin
        )
    except DoesNotFit:
        return
    for sheet in with_rules(placed, RULES):
        if sheet.side == "front" and rule_of(sheet) is not None:
            check_clear(sheet)


def test_only_fronts_have_a_rule() -> None:
    sheets = place_cards(cards(3, backs=True), LETTER, backs="long-edge")
    assert [rule_of(sheet) is not None for sheet in with_rules(sheets, RULES)] == [True, False]


def test_a_sheet_with_little_room_has_the_slim_rule_or_none() -> None:
    def sheet(bottom_mm: float) -> Sheet:
        height = LETTER.height - bottom_mm * MM
        face = Face("face", LETTER.width, height, ())
        (ruled,) = with_rules([Sheet(LETTER.width, LETTER.height, (Placed(face, 0, 0),))], RULES)
        return ruled

    # 5 mm at the edge and 2.5 mm to the card leave 6.5, 4.5 and 2.5 mm.
    rules = [rule_of(sheet(bottom)) for bottom in (14, 12, 10)]
    assert [rule and rule.face for rule in rules] == [FULL, SLIM, None]


def test_a_rule_stands_upright_where_only_the_sides_have_room() -> None:
    face = Face("face", LETTER.width - 40 * MM, LETTER.height, ())
    (sheet,) = with_rules([Sheet(LETTER.width, LETTER.height, (Placed(face, 20 * MM, 0),))], RULES)
    rule = rule_of(sheet)
    assert rule is not None
    assert rule.turn == 90
    check_clear(sheet)


def test_sheets_laid_out_alike_have_their_rule_in_one_place() -> None:
    first, second, last = with_rules(place_cards(cards(20), LETTER), RULES)
    assert rule_of(first) == rule_of(second)
    assert rule_of(last) is not None


# --- the crosses of both sides ----------------------------------------------------------------


def crosses(sheet: Sheet) -> list[tuple[float, float]]:
    """Return the middles of the crosses: two lines of 6 mm each."""
    found = []
    for mark in sheet.marks:
        box = ink((mark,))
        assert box is not None
        width, height = box[2] - box[0], box[3] - box[1]
        if isinstance(mark, Path) and len(mark.steps) == 4 and abs(width - height) < NEAR:
            assert width == pytest.approx(6 * MM, abs=0.3)
            found.append(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2))
    return found


@pytest.mark.parametrize("edge", EDGES)
@pytest.mark.parametrize("page", [LETTER, A4])
@pytest.mark.parametrize("count", [1, 4, 9, 13])
def test_crosses_of_front_and_back_meet(
    page: Paper, edge: Literal["long-edge", "short-edge"], count: int
) -> None:
    sheets = registered(place_cards(cards(count, backs=True), page, backs=edge), edge)
    for front, back in zip(sheets[::2], sheets[1::2], strict=True):
        seen = [
            # Both papers stand upright: turned at the long edge, left and right change over.
            (page.width - x, y) if edge == "long-edge" else (x, page.height - y)
            for x, y in crosses(back)
        ]
        assert len(seen) == 2
        for place, opposite in zip(sorted(seen), sorted(crosses(front)), strict=True):
            assert place == pytest.approx(opposite)


@pytest.mark.parametrize("edge", EDGES)
def test_crosses_that_had_to_give_way_meet_too(
    edge: Literal["long-edge", "short-edge"],
) -> None:
    size = (LETTER.width, LETTER.height)
    face = Face("face", size[0] - 60 * MM, size[1] - 60 * MM, ())
    # Lines across the middle of both side margins push the crosses up or down, and sideways.
    lines = (
        Path(rectangle(0, 380, 14 * MM, 40), line=1),
        Path(rectangle(size[0] - 9 * MM, 300, 9 * MM, 140), line=1),
    )
    front = Sheet(*size, (Placed(face, 30 * MM, 30 * MM),), lines)
    front, back = registered([front, Sheet(*size, (), side="back")], edge)
    for (x, y), (behind_x, behind_y) in zip(crosses(front), crosses(back), strict=True):
        assert abs(y - size[1] / 2) > 20
        through = (size[0] - x, y) if edge == "long-edge" else (x, size[1] - y)
        assert (behind_x, behind_y) == pytest.approx(through)


def test_crosses_stand_clear_at_opposite_edges() -> None:
    front, _ = registered(place_cards(cards(8, backs=True), LETTER, backs="long-edge"), "long-edge")
    (x1, y1), (x2, y2) = crosses(front)
    assert (x1 + x2, y1) == pytest.approx((LETTER.width, y2))
    for x, y in ((x1, y1), (x2, y2)):
        box = (x - 3 * MM, y - 3 * MM, x + 3 * MM, y + 3 * MM)
        assert all(apart(box, placed.box, MM) for placed in front.placed)


def test_fronts_alone_need_no_cross() -> None:
    sheets = place_cards(cards(3), LETTER, backs="long-edge")
    assert registered(sheets, "long-edge") == sheets


def test_without_room_there_is_no_cross() -> None:
    sheets = place_cards(cards(4, "A6", backs=True), A4, backs="long-edge", margin=0)
    assert registered(sheets, "long-edge") == sheets


def test_cut_marks_crosses_and_rule_keep_apart() -> None:
    sheets = place_cards(cards(8, backs=True), LETTER, backs="long-edge")
    front, _ = with_rules(registered(sheets, "long-edge"), RULES)
    check_clear(front)
    boxes = [box for mark in front.marks if (box := ink((mark,))) is not None]
    rings_and_crosses = 2
    touching = [pair for pair in combinations(boxes, 2) if not apart(*pair)]
    assert len(touching) == rings_and_crosses
