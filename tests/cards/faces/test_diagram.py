import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.faces.block import Scale
from cards.faces.diagram import diagram
from cards.leader import Leader
from layouts.face import Face, Path
from tests.seen import faults, glyphs, paths, points, runs, words
from tests.tieable import counts, seeds, tieable
from tests.written import PRACTICE, leader, recipe, section

SCALE = Scale(1.0)
WIDTH = 226.0  # points, of an ID-1 card within its inset: (85.6 - 6) mm
LOOP = 9.0  # points, in front of the first piece where the butt has a loop

THREE = recipe(
    section("40 in", "0.020 in"),
    section("20 in", "0.015 in"),
    section("20 in", "0.010 in", "fluorocarbon"),
    butt="none",
    fly="none",
)


def drawn(of: Leader, width: float = WIDTH, scale: Scale = SCALE) -> Face:
    block = diagram(of, PRACTICE.materials, scale, width)
    return Face("diagram", width, block.height, block.items)


def bands(card: Face) -> list[Path]:
    """Return the outlines of the pieces: closed, of four corners, with one side upright."""
    return [
        path
        for path in paths(card)
        if len(path.steps) == 5 and path.steps[-1] == ("close",) and path.fill is not None
    ]


def span(band: Path) -> tuple[float, float]:
    xs = [x for x, _ in points(band)]
    return min(xs), max(xs)


def thicknesses(band: Path) -> tuple[float, float]:
    (_, top), (_, far_top), (_, far_bottom), (_, bottom) = points(band)
    return bottom - top, far_bottom - far_top


def stated_factor(card: Face) -> int:
    stated = re.search(r"thickness × (\d+)", words(card))
    assert stated
    return int(stated[1])


def test_lengths_are_to_scale() -> None:
    # 80 in over 226 pt: 113, 56.5 and 56.5
    ends = [span(band) for band in bands(drawn(leader(THREE)))]
    assert ends == [pytest.approx(pair) for pair in ((0, 113), (113, 169.5), (169.5, 226))]


def test_thickness_is_exaggerated_by_the_stated_factor() -> None:
    card = drawn(leader(THREE))
    # 226 pt for 80 in is 2.825 pt/in; 0.020 in is 0.0565 pt, and 9 pt hold it 150 times (8.475 pt)
    assert stated_factor(card) == 150
    assert [thicknesses(band) for band in bands(card)] == [
        pytest.approx((thick, thick)) for thick in (8.475, 6.35625, 4.2375)
    ]


def test_a_loop_at_the_butt_stands_before_the_first_piece() -> None:
    looped = drawn(leader(replace(THREE, butt=replace(THREE.butt, end="perfection loop"))))
    ends = [span(band) for band in bands(looped)]
    assert ends[0][0] == pytest.approx(LOOP)
    assert ends[-1][1] == pytest.approx(WIDTH)


def test_a_knotless_taper_slopes() -> None:
    tapered = recipe(section("7 ft", "0.021 in", tapers_to="0.009 in"), section("20 in", "4X"))
    first, _ = bands(drawn(leader(tapered)))
    near, far = thicknesses(first)
    assert far / near == pytest.approx(9 / 21)


def test_each_length_stands_over_its_piece() -> None:
    card = drawn(leader(THREE))
    lengths = [run for run in runs(card) if run.text in ("40", "20")]
    middles = [run.x + run.width / 2 for run in lengths]
    assert middles == pytest.approx([113 / 2, 113 + 56.5 / 2, 169.5 + 56.5 / 2])


def test_each_run_of_a_material_is_named_once() -> None:
    names = [
        run.text for run in runs(drawn(leader(THREE))) if run.text in ("nylon", "fluorocarbon")
    ]
    assert names == ["nylon", "fluorocarbon"]


def test_the_base_is_told_where_a_tippet_is_replaced() -> None:
    assert "base 5 ft ·" in words(drawn(leader(THREE)))  # 40 + 20 in
    level = recipe(section("9 ft", "4X"), butt="none")
    assert "base" not in words(drawn(leader(level)))


def test_a_label_that_had_to_move_is_led_back_to_its_piece() -> None:
    short = recipe(*(section("1 1/16 in", f"0.0{20 - k} in") for k in range(3)),
                   section("12 ft", "0.010 in"), butt="none")  # fmt: skip
    card = drawn(leader(short))
    labels = [run for run in runs(card) if run.text == "1"]
    leads = [path for path in paths(card) if path.line == 0.25]
    assert len(labels) == 3
    assert len(leads) >= 2
    centres = [sum(span(band)) / 2 for band in bands(card)[:3]]
    tips = [points(lead)[1][0] for lead in leads]
    for tip in tips:
        assert any(tip == pytest.approx(centre, abs=0.01) for centre in centres)


def test_a_thickness_grows_with_what_it_tapers_to() -> None:
    growing = recipe(section("9 ft", "0.010 in", tapers_to="0.040 in"), butt="none")
    card = drawn(leader(growing))
    assert max(thicknesses(bands(card)[0])) <= 9.0


@given(seeds, counts, st.sampled_from([150.0, 226.0, 350.0, 560.0]), st.sampled_from([1.0, 1.5]))
@settings(max_examples=60, deadline=None)
def test_every_diagram_is_to_scale_and_inside(
    seed: int, count: int | None, width: float, factor: float
) -> None:
    of = tieable(seed, count)
    card = drawn(of, width, Scale(factor))
    assert faults(card, 0) == []
    pieces = bands(card)
    assert len(pieces) == len(of.pieces)
    left, right = span(pieces[0])[0], span(pieces[-1])[1]
    assert right == pytest.approx(width)
    per_mm = (right - left) / float(of.finished.high_mm)
    exaggeration = stated_factor(card)
    for band, piece in zip(pieces, of.pieces, strict=True):
        start, end = span(band)
        assert end - start == pytest.approx(float(piece.finished.high_mm) * per_mm, abs=1e-6)
        thick = float(piece.section.diameter.mm) * per_mm * exaggeration
        assert thicknesses(band)[0] == pytest.approx(thick)
        assert thick <= 9 * factor + 1e-9 or exaggeration == 1


@given(seeds, counts)
@settings(max_examples=30, deadline=None)
def test_no_length_stands_off_its_order(seed: int, count: int | None) -> None:
    of = tieable(seed, count)
    tops = [run for run in runs(drawn(of, 400)) if run.y == pytest.approx(0.8 * SCALE.small)]
    boxes = [glyphs(run) for run in tops]
    assert boxes == sorted(boxes)
