import math
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from itertools import combinations
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM, Face, Path
from tagend.layouts.sheets.cutouts import Card
from tagend.layouts.sheets.imposition import DoesNotFit, place_cards
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.formats import CardSize, Paper
from tagend.layouts.stock.stock import card_size, merge, paper

NEAR = 0.03  # points; the slack with which things fit is 0.01 mm
LETTER, A4 = paper("Letter"), paper("A4")

Box = tuple[float, float, float, float]


def cards(count: int, size: CardSize, backs: bool = False) -> list[Card]:
    return [card(f"{k}", size.width, size.height, backs) for k in range(count)]


def card(name: str, width: float, height: float, back: bool = False) -> Card:
    return Card(
        Face(f"front {name}", width, height, ()),
        Face(f"back {name}", width, height, ()) if back else None,
    )


def names(sheet: Sheet) -> list[str]:
    return [placed.face.name.split()[1] for placed in sheet.placed]


def box(placed: Placed) -> Box:
    width, height = placed.size
    return placed.x, placed.y, placed.x + width, placed.y + height


def boxes(sheet: Sheet) -> list[Box]:
    return [box(placed) for placed in sheet.placed]


def overlap(one: Box, other: Box) -> bool:
    return (
        one[0] + NEAR < other[2]
        and other[0] + NEAR < one[2]
        and one[1] + NEAR < other[3]
        and other[1] + NEAR < one[3]
    )


def cuttable(pieces: list[Box]) -> bool:
    """Say whether cuts from edge to edge, each through what the last one left, part all boxes."""
    if len(pieces) < 2:
        return True
    for low, high in ((0, 2), (1, 3)):
        for cut in sorted(piece[high] for piece in pieces):
            before = [piece for piece in pieces if piece[high] <= cut + NEAR]
            after = [piece for piece in pieces if piece[low] >= cut - NEAR]
            if len(before) + len(after) == len(pieces) and before and after:
                return cuttable(before) and cuttable(after)
    return False


def on_sheet(placed: Placed, u: float, v: float) -> tuple[float, float]:
    """Return where a point of a face, given from its own corner, lies on the sheet."""
    x, y, right, bottom = box(placed)
    du, dv = u - placed.face.width / 2, v - placed.face.height / 2
    cos, sin = math.cos(math.radians(placed.turn)), math.sin(math.radians(placed.turn))
    return (x + right) / 2 + du * cos + dv * sin, (y + bottom) / 2 - du * sin + dv * cos


# --- one grid -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "sheet", "most"),
    [
        # 205.9 × 269.4 mm inside 5 mm: three 54s across, three 85.6s down beat 2 × 4.
        ("ID-1", "Letter", 9),
        # 200 × 287: two 85.6s across, five 54s down.
        ("ID-1", "A4", 10),
        ("business-US", "Letter", 12),  # turned: 4 × 50.8 by 3 × 88.9
        ("index-3x5", "Letter", 4),  # turned: 2 × 76.2 by 2 × 127
        ("index-4x6", "Letter", 2),
        ("A7", "A4", 4),  # eight would need the paper's very edge, like the next
        ("A6", "A4", 2),
        ("trading-card", "Letter", 9),
    ],
)
def test_the_grid_holds_most_cards(size: str, sheet: str, most: int) -> None:
    one = place_cards(cards(most, card_size(size)), paper(sheet))
    two = place_cards(cards(most + 1, card_size(size)), paper(sheet))
    assert [len(sheet.placed) for sheet in one] == [most]
    assert [sum(len(sheet.placed) for sheet in two), len(two)] == [most + 1, 2]


def test_cards_stay_upright_when_turning_saves_no_sheet() -> None:
    (sheet,) = place_cards(cards(8, card_size("ID-1")), LETTER)
    assert {placed.turn for placed in sheet.placed} == {0}
    (sheet,) = place_cards(cards(9, card_size("ID-1")), LETTER)
    assert {placed.turn for placed in sheet.placed} == {90}


def test_a_full_grid_is_centred_and_its_cards_share_their_cuts() -> None:
    (sheet,) = place_cards(cards(10, card_size("business-US")), LETTER)
    # 2 × 252 of 612 leave 54 at each side; 5 × 144 of 792 leave 36.
    assert boxes(sheet)[0] == pytest.approx((54, 36, 306, 180))
    assert boxes(sheet)[1] == pytest.approx((306, 36, 558, 180))
    assert boxes(sheet)[9] == pytest.approx((306, 612, 558, 756))


def test_a_gutter_parts_the_cards() -> None:
    (sheet,) = place_cards(cards(8, card_size("business-US")), LETTER, gutter=18)
    # Five rows would need 5 × 144 + 4 × 18 = 792; 2 × 252 + 18 of 612 leave 45,
    # 4 × 144 + 3 × 18 of 792 leave 81.
    assert boxes(sheet)[0] == pytest.approx((45, 81, 297, 225))
    assert boxes(sheet)[3] == pytest.approx((315, 243, 567, 387))


def test_a_last_sheet_keeps_the_grid_of_the_others() -> None:
    first, last = place_cards(cards(13, card_size("business-US")), LETTER)
    assert boxes(last) == boxes(first)[:3]


def test_no_cards_make_no_sheet() -> None:
    assert place_cards([], LETTER) == ()


SIZES = st.floats(20 * MM, 300 * MM)
PAPERS = st.sampled_from(["Letter", "A4", "Tabloid", "A3", "A5", "Half-Letter", "Legal"]).map(paper)


@given(
    width=SIZES,
    height=SIZES,
    sheet=PAPERS,
    margin=st.floats(0, 15 * MM),
    gutter=st.sampled_from([0.0, 5.0, 17.3]),
    count=st.integers(1, 30),
    backs=st.booleans(),
)
def test_cards_of_one_size_are_inside_the_margin_apart_and_all_there(
    width: float,
    height: float,
    sheet: Paper,
    margin: float,
    gutter: float,
    count: int,
    backs: bool,
) -> None:
    several = [card(f"{k}", width, height, backs) for k in range(count)]
    try:
        sheets = place_cards(several, sheet, margin=margin, gutter=gutter)
    except DoesNotFit as refusal:
        check_refusal(refusal, several, sheet, margin)
        return
    check_sheets(sheets, several, margin)
    for one in sheets:
        assert cuttable(boxes(one))


@given(width=SIZES, height=SIZES, sheet=PAPERS, gutter=st.sampled_from([0.0, 9.0]))
def test_no_plain_grid_holds_more(width: float, height: float, sheet: Paper, gutter: float) -> None:
    room_x, room_y = sheet.width - 10 * MM, sheet.height - 10 * MM

    def cells(across: float, down: float) -> int:
        columns = sum(n * across + (n - 1) * gutter <= room_x for n in range(1, 40))
        rows = sum(n * down + (n - 1) * gutter <= room_y for n in range(1, 40))
        return columns * rows

    most = max(cells(width, height), cells(height, width))
    if most:
        sheets = place_cards(
            [card(f"{k}", width, height) for k in range(most)], sheet, gutter=gutter
        )
        assert len(sheets) == 1


def check_sheets(sheets: Sequence[Sheet], several: Sequence[Card], margin: float) -> None:
    for sheet in sheets:
        for x, y, right, bottom in boxes(sheet):
            assert x >= margin - NEAR
            assert y >= margin - NEAR
            assert right <= sheet.width - margin + NEAR
            assert bottom <= sheet.height - margin + NEAR
        assert not any(overlap(*pair) for pair in combinations(boxes(sheet), 2))
        assert sheet.placed
    faces = [face for card in several for face in (card.front, card.back) if face]
    printed = [placed.face for sheet in sheets for placed in sheet.placed]
    assert Counter(face.name for face in printed) == Counter(face.name for face in faces)


def check_refusal(
    refusal: DoesNotFit, several: Iterable[Card], sheet: Paper, margin: float
) -> None:
    """Check that the paper holds no such card in any way, and that those named do."""
    folded = str(refusal).startswith("a folded card")
    first = next(
        card
        for card in several
        if (card.front.width, card.front.height) == refusal.size and bool(card.back) == folded
    )
    width, height = refusal.size
    ways = [(2 * width, height), (width, 2 * height)] if first.back else [(width, height)]
    room_x, room_y = sheet.width - 2 * margin, sheet.height - 2 * margin
    for across, down in ways:
        assert not (across <= room_x and down <= room_y)
        assert not (down <= room_x and across <= room_y)
    for name in refusal.would_do:
        assert place_cards([first], paper(name), margin=margin)


# --- several sizes --------------------------------------------------------------------------


def test_rows_stand_one_below_the_other_the_highest_first() -> None:
    several = [card("a", 200, 100), card("b", 150, 150), card("c", 200, 100), card("d", 150, 150)]
    (sheet,) = place_cards(several, LETTER)
    assert {placed.turn for placed in sheet.placed} == {0}
    assert names(sheet) == ["b", "d", "a", "c"]
    # Rows of 300 and 400 begin at (612 - 400) / 2 = 106; 6 mm between them hold their marks:
    # 150 + 17.01 + 100 of 792 leave 262.50 above.
    top = (792 - 250 - 6 * MM) / 2
    assert boxes(sheet)[0] == pytest.approx((106, top, 256, top + 150))
    assert boxes(sheet)[2][:2] == pytest.approx((106, top + 150 + 6 * MM))
    assert boxes(sheet)[3][:2] == pytest.approx((306, top + 150 + 6 * MM))


def test_rows_cut_alike_share_a_cut() -> None:
    (sheet,) = place_cards([card(f"{k}", 250, 100) for k in range(3)] + [card("x", 90, 90)], LETTER)
    rows = sorted({round(y, 3) for _, y, _, _ in boxes(sheet)})
    assert rows[1] - rows[0] == pytest.approx(100, abs=0.001)
    assert rows[2] - rows[1] == pytest.approx(100 + 6 * MM, abs=0.001)


def test_cards_of_several_sizes_are_turned_where_that_saves_a_sheet() -> None:
    # 120 × 50 mm upright go one below the other, five a sheet; turned, four a row in two rows.
    several = [card(f"{k}", 120 * MM, 50 * MM) for k in range(8)] + [card("x", 40 * MM, 15 * MM)]
    (sheet,) = place_cards(several, LETTER)
    assert {placed.turn for placed in sheet.placed if placed.face.width > 50 * MM} == {90}


def test_folded_and_plain_cards_share_a_sheet() -> None:
    (sheet,) = place_cards([card("a", 240, 150), card("b", 240, 150, back=True)], A4)
    assert sorted(names(sheet)) == ["a", "b", "b"]
    assert cuttable(boxes(sheet))


@given(
    sizes=st.lists(
        st.tuples(SIZES, SIZES, st.integers(1, 4), st.booleans()), min_size=1, max_size=6
    ),
    sheet=PAPERS,
    margin=st.floats(0, 15 * MM),
    gutter=st.sampled_from([0.0, 5.0, 30.0]),
)
def test_cards_of_any_sizes_come_apart_by_cuts_from_edge_to_edge(
    sizes: list[tuple[float, float, int, bool]], sheet: Paper, margin: float, gutter: float
) -> None:
    several = [
        card(f"{k}.{n}", width, height, back)
        for k, (width, height, count, back) in enumerate(sizes)
        for n in range(count)
    ]
    try:
        sheets = place_cards(several, sheet, margin=margin, gutter=gutter)
    except DoesNotFit as refusal:
        check_refusal(refusal, several, sheet, margin)
        return
    check_sheets(sheets, several, margin)
    for one in sheets:
        assert cuttable(boxes(one))


def test_the_cutter_of_these_tests_knows_what_cannot_be_cut() -> None:
    # Four boxes around a fifth, each reaching past the next: no cut from edge to edge.
    pinwheel = [(0.0, 0.0, 2.0, 1.0), (2.0, 0.0, 3.0, 2.0), (1.0, 2.0, 3.0, 3.0)]
    pinwheel += [(0.0, 1.0, 1.0, 3.0), (1.0, 1.0, 2.0, 2.0)]
    assert not cuttable(pinwheel)
    assert cuttable(pinwheel[:3])


# --- backs ----------------------------------------------------------------------------------


def lies_behind(front: Placed, back: Placed, through: Callable[[float, float], object]) -> None:
    """Check that a back lies behind its front, upright when the card turns like a book's leaf.

    `through` takes a place on the back's page to where it lies, seen from the front.
    """
    width, height = front.face.width, front.face.height
    for u, v in ((0.0, 0.0), (width / 2, height / 2), (width, height / 3)):
        assert through(*on_sheet(back, u, v)) == pytest.approx(
            on_sheet(front, width - u, v), abs=0.003
        )


@pytest.mark.parametrize("edge", ["long-edge", "short-edge"])
@pytest.mark.parametrize("sheet", [LETTER, A4, Paper("wide", 800, 500)])
@given(
    width=st.floats(60, 480),
    height=st.floats(60, 480),
    count=st.integers(1, 9),
    margin=st.floats(0, 9),
)
def test_backs_land_on_their_fronts(
    edge: Literal["long-edge", "short-edge"],
    sheet: Paper,
    width: float,
    height: float,
    count: int,
    margin: float,
) -> None:
    several = [card(f"{k}", width, height, back=True) for k in range(count)]
    sheets = place_cards(several, sheet, backs=edge, margin=margin)

    def through(x: float, y: float) -> tuple[float, float]:
        # Turned about an upright line what was right is left; about a level one, top is bottom.
        upright = (edge == "long-edge") == (sheet.height > sheet.width)
        return (sheet.width - x, y) if upright else (x, sheet.height - y)

    for front, back in zip(sheets[::2], sheets[1::2], strict=True):
        assert names(front) == names(back)
        for one, other in zip(front.placed, back.placed, strict=True):
            assert one.face.name.startswith("front")
            assert other.face.name.startswith("back")
            lies_behind(one, other, through)
        assert back.marks == ()


@pytest.mark.parametrize("sheet", [LETTER, paper("A6"), paper("A5"), Paper("long", 260, 900)])
@given(width=st.floats(60, 250), height=st.floats(60, 250))
def test_backs_fold_onto_their_fronts(sheet: Paper, width: float, height: float) -> None:
    try:
        (placed,) = place_cards([card("a", width, height, back=True)], sheet)
    except DoesNotFit:
        return
    back, front = placed.placed
    left, top, right, bottom = box(front)
    beside = abs(box(back)[1] - top) < NEAR and abs(box(back)[0] - left) > NEAR

    def through(x: float, y: float) -> tuple[float, float]:
        # The fold is the edge they share.
        if beside:
            fold = left if box(back)[0] < left else right
            return 2 * fold - x, y
        fold = top if box(back)[1] < top else bottom
        return x, 2 * fold - y

    lies_behind(front, back, through)


def test_folding_is_the_default_and_needs_no_second_sheet() -> None:
    (sheet,) = place_cards(cards(4, card_size("ID-1"), backs=True), LETTER)
    assert len(sheet.placed) == 8
    front, back = sheet.placed[:2]
    assert (back.face.name, front.face.name) == ("back 0", "front 0")
    assert front.x - back.x == pytest.approx(85.6 * MM)
    assert front.y == back.y


def test_a_card_too_wide_to_fold_sideways_folds_at_its_top() -> None:
    (sheet,) = place_cards([card("a", 200 * MM, 130 * MM, back=True)], A4)
    front, back = sheet.placed
    assert (back.turn, front.turn) == (180, 0)
    assert front.y - back.y == pytest.approx(130 * MM)


def test_every_front_has_its_back_page_even_an_empty_one() -> None:
    size = card_size("index-3x5")
    several = [*cards(1, size, backs=True), *cards(4, size)]
    sheets = place_cards(several, LETTER, backs="long-edge")
    assert [len(sheet.placed) for sheet in sheets] == [3, 1, 2, 0]


def test_without_any_back_there_are_only_fronts() -> None:
    assert len(place_cards(cards(9, card_size("index-3x5")), LETTER, backs="long-edge")) == 3


def test_separate_backs_are_cards_of_their_own() -> None:
    (sheet,) = place_cards(cards(2, card_size("ID-1"), backs=True), LETTER, backs="separate")
    assert [placed.face.name for placed in sheet.placed] == [
        "front 0",
        "back 0",
        "front 1",
        "back 1",
    ]


# --- order ----------------------------------------------------------------------------------


@pytest.mark.parametrize(("count", "pages"), [(12, 1), (24, 2), (17, 2), (84, 7), (74, 7), (3, 1)])
def test_stacks_cut_from_the_cells_and_laid_together_are_in_order(count: int, pages: int) -> None:
    sheets = place_cards(cards(count, card_size("business-US")), LETTER, order="stack")
    assert len(sheets) == pages
    cells = boxes(sheets[0])
    # A stack is what lies in one cell, sheet upon sheet.
    stacks = [
        placed.face.name
        for cell in cells
        for sheet in sheets
        for placed in sheet.placed
        if box(placed) == cell
    ]
    assert stacks == [f"front {k}" for k in range(count)]


def test_order_of_stacks_keeps_the_backs_with_their_fronts() -> None:
    sheets = place_cards(
        cards(10, card_size("index-3x5"), backs=True), A4, backs="short-edge", order="stack"
    )
    # Three sheets of four.
    assert [names(sheet) for sheet in sheets[:2]] == [["0", "3", "6", "9"]] * 2
    assert [names(sheet) for sheet in sheets[2:4]] == [["1", "4", "7"]] * 2
    assert [names(sheet) for sheet in sheets[4:]] == [["2", "5", "8"]] * 2


def test_cards_of_several_sizes_cannot_be_stacked() -> None:
    with pytest.raises(Refused, match="print each size by itself"):
        place_cards([card("a", 200, 100), card("b", 150, 150)], LETTER, order="stack")


# --- refusals and marks ---------------------------------------------------------------------


def test_a_card_too_large_for_its_paper_is_met_with_papers_that_would_do() -> None:
    with pytest.raises(DoesNotFit) as caught:
        place_cards(cards(1, card_size("150 x 210 mm"), backs=True), LETTER)
    assert str(caught.value) == (
        "a folded card of 150 × 210 mm does not fit Letter, which has room for "
        "205.9 × 269.4 mm; use B4 or Tabloid or A3"
    )
    assert caught.value.size == pytest.approx((150 * MM, 210 * MM))
    assert caught.value.would_do == ("B4", "Tabloid", "A3")


def test_a_card_larger_than_any_paper_is_refused_too() -> None:
    with pytest.raises(DoesNotFit, match="nothing known here is large enough"):
        place_cards([card("a", 5000, 5000)], LETTER)


def test_a_margin_that_leaves_nothing_is_refused() -> None:
    with pytest.raises(DoesNotFit, match="which has room for 0 × 0 mm"):
        place_cards([card("a", 100, 100)], LETTER, margin=400)


def test_marks_stay_off_the_cards() -> None:
    several = [card("a", 200, 100), card("b", 150, 150, back=True), card("c", 90, 300)]
    for sheet in (
        *place_cards(several, LETTER),
        *place_cards(cards(9, card_size("ID-1")), LETTER),
        *place_cards(cards(2, card_size("trading-card"), backs=True), A4, gutter=20),
    ):
        assert sheet.marks
        for mark in sheet.marks:
            assert isinstance(mark, Path)
            xs = [x for step in mark.steps for x in step[1:2]]
            ys = [y for step in mark.steps for y in step[2:3]]
            reach = (min(xs) - MM / 2, min(ys) - MM / 2, max(xs) + MM / 2, max(ys) + MM / 2)
            assert not any(overlap(reach, card) for card in boxes(sheet))


def test_corners_are_marked_when_they_are_to_be_rounded() -> None:
    size = card_size("ID-1")
    (plain,) = place_cards(cards(2, size), LETTER)
    (rounded,) = place_cards(cards(2, size), LETTER, corner=size.corner)
    assert len(rounded.marks) == len(plain.marks) + 2


def test_own_paper_does_as_well() -> None:
    own = merge({"paper": {"Bench": "200 x 100 mm"}})
    (sheet,) = place_cards(cards(2, card_size("ID-1")), paper("bench", own))
    assert (sheet.width, sheet.height) == (200 * MM, 100 * MM)
