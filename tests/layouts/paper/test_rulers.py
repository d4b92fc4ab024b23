"""Rulers measure what they say, on the page too."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.fonts import OURS
from tagend.layouts.paper.face import MM, Face, Item, Path, TextRun
from tagend.layouts.paper.legible import FLOOR
from tagend.layouts.paper.rulers import Unit, edge_ruler, true_size_rules
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import ink
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import page_image, text

ID_1 = 85.6 * MM
UNITS: tuple[Unit, ...] = ("mm", "in")
WORDS = ("100 % print: this is 50 mm", "and this is 2 in")


def ruler(length: float, unit: Unit) -> Face:
    made = edge_ruler(length, unit, OURS.medium)
    assert made is not None
    return made


def ticks(item: Item) -> list[tuple[float, float]]:
    """Return where each tick stands and how long it is, down from its line or up (below 0)."""
    assert isinstance(item, Path)
    ends = [(step[1], step[2]) for step in item.steps if len(step) == 3]
    pairs = zip(ends[::2], ends[1::2], strict=True)
    return [(x, bottom - top) for (x, top), (other, bottom) in pairs if x == other]


def page(face: Face) -> bytes:
    sheet = Sheet(300, 100, (Placed(face, 20, 30),))
    return write_pdf([sheet], title="", creator="layouts")


def inked_runs(pdf: bytes, dpi: int, y: float) -> list[float]:
    """Return the middles of all dark runs along one row of the rendered page, in points."""
    image = page_image(pdf, dpi)
    row = image.crop((0, round(y * dpi / 72), image.width, round(y * dpi / 72) + 1)).tobytes()
    edges = [x for x in range(1, len(row)) if (row[x] < 128) != (row[x - 1] < 128)]
    return [(a + b) / 2 * 72 / dpi for a, b in zip(edges[::2], edges[1::2], strict=True)]


def test_a_ruler_along_a_bank_card_holds_eight_centimetres_or_three_inches() -> None:
    assert ruler(ID_1, "mm").width == pytest.approx(80 * MM)
    assert ruler(ID_1, "in").width == pytest.approx(3 * 72)


def test_there_is_a_tick_at_every_millimetre_the_longer_ones_at_fives_and_tens() -> None:
    found = ticks(ruler(ID_1, "mm").items[0])
    assert [x / MM for x, _ in found] == pytest.approx(list(range(81)))
    one, five, ten = (found[k][1] for k in (1, 5, 10))
    assert one < five < ten
    assert [tall for _, tall in found] == [
        ten if k % 10 == 0 else five if k % 5 == 0 else one for k in range(81)
    ]


def test_sixteenths_eighths_quarters_halves_and_inches_differ_in_length() -> None:
    found = ticks(ruler(ID_1, "in").items[0])
    assert [16 * x / 72 for x, _ in found] == pytest.approx(list(range(49)))
    lengths = [found[k][1] for k in (1, 2, 4, 8, 16)]
    assert lengths == sorted(set(lengths))
    assert found[24][1] == found[8][1]  # 1 1/2 in is a half


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("dpi", [300, 600])
def test_the_ticks_stand_in_their_places_on_the_rendered_page(unit: Unit, dpi: int) -> None:
    made = ruler(ID_1, unit)
    pdf = page(Face("ruler", made.width, made.height, made.items))
    step = MM if unit == "mm" else 72 / 16
    # 0.5 mm below the card's edge there are ticks and no figures.
    found = inked_runs(pdf, dpi, 30 + 0.5 * MM)
    expected = [20 + step * k for k in range(len(found))]
    assert len(found) == (81 if unit == "mm" else 49)
    assert found == pytest.approx(expected, abs=0.75 * 72 / dpi)  # a dot is whole: 0.06 mm


def test_figures_stand_beside_their_ticks_and_the_first_tells_the_unit() -> None:
    made = ruler(ID_1, "in")
    runs = [item for item in made.items if isinstance(item, TextRun)]
    assert [run.text for run in runs] == ["0 in", "1", "2", "3"]
    for k, run in enumerate(runs):
        assert 72 * k < run.x < 72 * k + MM
        assert run.size == FLOOR


def test_the_last_figure_is_left_out_where_the_card_ends() -> None:
    runs = [item.text for item in ruler(80 * MM, "mm").items if isinstance(item, TextRun)]
    assert runs == ["0 mm", "10", "20", "30", "40", "50", "60", "70"]


def test_a_length_of_less_than_one_unit_has_no_ruler() -> None:
    assert edge_ruler(25.3 * MM, "in", OURS.medium) is None
    assert edge_ruler(9.9 * MM, "mm", OURS.medium) is None
    assert ruler(25.4 * MM, "in").width == 72


@given(length=st.floats(0, 1000), unit=st.sampled_from(UNITS))
def test_a_ruler_keeps_inside_its_length_and_its_height(length: float, unit: Unit) -> None:
    made = edge_ruler(length, unit, OURS.medium)
    if made is None:
        assert length < (72 if unit == "in" else 10 * MM)
        return
    box = ink(made.items)
    assert box is not None
    left, top, right, bottom = box
    assert left >= -0.2  # half a tick
    assert top >= -0.2
    assert right <= length + 0.2
    descent = 0.3 * FLOOR  # of the figures, which have no descenders
    assert bottom <= made.height + descent


def test_figures_stand_below_the_short_ticks() -> None:
    for unit in UNITS:
        items = ruler(ID_1, unit).items
        for run in items[1:]:
            assert isinstance(run, TextRun)
            top = run.y - 0.698 * run.size
            beside = [tall for x, tall in ticks(items[0]) if run.x - 0.3 < x < run.x + run.width]
            assert all(tall < top for tall in beside)


def test_the_true_size_rule_measures_fifty_millimetres_and_two_inches() -> None:
    full, slim = true_size_rules(*WORDS, OURS.medium)
    above = [x for x, tall in ticks(full.items[0]) if tall < 0]
    below = [x for x, tall in ticks(full.items[0]) if tall > 0]
    assert [x / MM for x in above] == pytest.approx(list(range(51)))
    assert [8 * x / 72 for x in below] == pytest.approx(list(range(17)))
    assert [x / MM for x, _ in ticks(slim.items[0])] == pytest.approx(list(range(51)))


@pytest.mark.parametrize("words", [WORDS, ("50 mm", "and this is 2 in")])
def test_the_true_size_rule_says_what_it_is_and_keeps_to_its_box(words: tuple[str, str]) -> None:
    full, slim = true_size_rules(*words, OURS.medium)
    assert words[1] in text(page(full))
    for face in (full, slim):
        assert words[0] in text(page(face))
        box = ink(face.items)
        assert box is not None
        assert min(box[:2]) >= -0.2
        assert box[2] <= face.width + 0.2
        assert box[3] <= face.height + 0.3 * FLOOR


def test_the_true_size_rule_is_fifty_millimetres_on_the_rendered_page() -> None:
    found = inked_runs(page(true_size_rules(*WORDS, OURS.medium)[0]), 600, 30 + 0.5 * MM)
    # The tens: nothing else reaches so high.
    assert [x - 20 for x in found[:6]] == pytest.approx([10 * MM * k for k in range(6)], abs=0.1)
