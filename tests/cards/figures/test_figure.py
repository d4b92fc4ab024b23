import zlib
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tagend.cards.figures.figure import Stage, knot_figure
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Path
from tests.cards.figures.stages import CASES, KNOTS, every_figure

POCKET = (85.0, 30.0)  # points: as wide as a column of a pocket card
WANTED = [
    "blood",
    "double surgeon's",
    "triple surgeon's",
    "uni to uni",
    "perfection loop",
    "improved clinch",
    "clinch",
    "non-slip loop",
    "albright",
    "loop to loop",
    "palomar",
    "haywire twist",
]


def figure(
    name: str, thick: int, thin: int, width: float = 85, height: float = 30
) -> tuple[Stage, ...]:
    stages = knot_figure(KNOTS.find(name), thick, thin, width, height)
    assert stages is not None
    return stages


def bytes_of(stages: tuple[Stage, ...]) -> int:
    """Return what the drawing takes in a file: its operators and numbers, deflated."""
    words = [
        " ".join(map(str, (*step[1:], step[0][0])))
        for stage in stages
        for path in stage.items
        for step in path.steps
    ]
    return len(zlib.compress("\n".join(words).encode()))


@pytest.mark.parametrize("name", WANTED)
def test_the_most_used_knots_have_two_stages(name: str) -> None:
    assert len(figure(name, 4, 5)) == 2


@every_figure
def test_figure_fits_a_pocket_card(knot: Knot, thick: int, thin: int) -> None:
    stages = knot_figure(knot, thick, thin, *POCKET)
    assert stages is not None
    for stage in stages:
        assert stage.width <= POCKET[0] + 1e-9
        assert stage.height <= POCKET[1] + 1e-9


@every_figure
def test_everything_is_drawn_within_its_stage(knot: Knot, thick: int, thin: int) -> None:
    for stage in knot_figure(knot, thick, thin, *POCKET) or ():
        for path in stage.items:
            for step in path.steps:
                assert all(-1 <= x <= stage.width + 1 for x in step[1::2])
                assert all(-1 <= y <= stage.height + 1 for y in step[2::2])


@every_figure
def test_figure_is_black_and_white_strokes(knot: Knot, thick: int, thin: int) -> None:
    for stage in knot_figure(knot, thick, thin, *POCKET) or ():
        for path in stage.items:
            assert isinstance(path, Path)
            assert path.grey in (0.0, 1.0)
            assert path.fill is None
            assert path.line >= (0.39 if path.grey else 1.0)


@every_figure
def test_figure_is_small_in_a_file(knot: Knot, thick: int, thin: int) -> None:
    assert bytes_of(knot_figure(knot, thick, thin, *POCKET) or ()) < 12_000


def test_stages_of_a_figure_have_one_scale() -> None:
    laid, drawn = figure("blood", 4, 5)
    assert {path.line for path in laid.items} & {path.line for path in drawn.items}


def test_larger_box_makes_a_larger_figure() -> None:
    small, large, huge = (
        figure("perfection loop", 0, 0, *box)[0] for box in ((140, 30), (140, 40), (280, 80))
    )
    assert small.width < large.width
    assert huge.width == pytest.approx(2 * large.width)


def test_a_strand_is_never_thicker_than_the_type_beside_it() -> None:
    low, high = (figure("perfection loop", 0, 0, *box)[0] for box in ((400, 36), (4000, 36)))
    assert low == high  # however wide the box is


def test_box_too_small_to_be_read_gets_no_figure() -> None:
    assert knot_figure(KNOTS.find("blood"), 7, 7, 40, 12) is None


@pytest.mark.parametrize(
    "knot", [knot for knot in KNOTS.rows if knot.turns], ids=lambda of: of.name
)
def test_too_many_turns_for_the_box_get_no_figure(knot: Knot) -> None:
    assert knot_figure(knot, 60, 60, *POCKET) is None  # the most that a knots file may ask


def test_knot_without_a_figure_gets_none() -> None:
    assert knot_figure(KNOTS.find("bimini twist"), 0, 20, *POCKET) is None
    own = replace(KNOTS.find("blood"), name="grandfather's")
    assert knot_figure(own, 4, 5, *POCKET) is None


def test_every_knot_of_ours_has_a_figure_or_says_that_it_has_none() -> None:
    drawn = {knot.name for knot, _, _ in CASES}
    assert {knot.name for knot in KNOTS.rows if knot.figure} == drawn


def test_a_person_may_do_without_a_figure() -> None:
    own = replace(KNOTS.find("blood"), figure=False)
    assert knot_figure(own, 4, 5, *POCKET) is None


def test_knot_that_wants_turns_gets_no_figure_without_them() -> None:
    assert knot_figure(KNOTS.find("blood"), 0, 5, *POCKET) is None
    assert knot_figure(KNOTS.find("blood"), 4, 0, *POCKET) is None
    assert knot_figure(KNOTS.find("clinch"), 0, 5, *POCKET) is not None  # it has no thick side


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(CASES), st.floats(60, 120), st.floats(18, 40))
def test_figure_fits_any_box_or_is_left_out(
    case: tuple[Knot, int, int], width: float, height: float
) -> None:
    for stage in knot_figure(*case, width, height) or ():
        assert stage.width <= width + 1e-9
        assert stage.height <= height + 1e-9


def test_same_knot_gives_the_same_drawing() -> None:
    assert figure("uni to uni", 5, 6) == figure("uni to uni", 5, 6)
