import zlib

from msgspec.structs import replace

from tagend.cards.figures.frames import Frame, knot_frames
from tagend.cards.figures.ink import inked
from tagend.cards.practice.knots import Knot
from tagend.layouts.paper.face import Path
from tests.cards.figures.stages import CASES, KNOTS, every_figure

UNIT = 1.8  # points a thickness


def frames(name: str, thick: int, thin: int) -> tuple[Frame, ...]:
    return knot_frames(KNOTS.find(name), thick, thin)


def ink(frame: Frame) -> tuple[Path, ...]:
    return inked(frame.strands, UNIT, frame.arrows)


def bytes_of(paths: tuple[Path, ...]) -> int:
    """Return what the drawing takes in a file: its operators and numbers, deflated."""
    words = [
        " ".join((*(f"{number:.3f}" for number in step[1:]), step[0][0]))
        for path in paths
        for step in path.steps
    ]
    return len(zlib.compress("\n".join(words).encode()))


def test_every_knot_of_ours_has_a_figure() -> None:
    assert {knot.name for knot in KNOTS.rows} == {knot.name for knot, _, _ in CASES}


@every_figure
def test_a_knot_has_two_to_four_steps_before_it_is_finished(
    knot: Knot, thick: int, thin: int
) -> None:
    assert 2 <= len(knot_frames(knot, thick, thin)[:-1]) <= 4


@every_figure
def test_everything_is_drawn_within_its_frame(knot: Knot, thick: int, thin: int) -> None:
    for frame in knot_frames(knot, thick, thin):
        width, height = frame.box.width * UNIT, frame.box.height * UNIT
        for path in ink(frame):
            for step in path.steps:
                assert all(-1 <= x <= width + 1 for x in step[1::2])
                assert all(-1 <= y <= height + 1 for y in step[2::2])


@every_figure
def test_frame_is_strokes_in_black_and_white_and_arrows(knot: Knot, thick: int, thin: int) -> None:
    for frame in knot_frames(knot, thick, thin):
        paths = ink(frame)
        strokes = [path for path in paths if path.fill is None]
        assert len(paths) - len(strokes) == len(frame.arrows)
        for path in strokes:
            assert path.grey in (0.0, 1.0)
            assert path.line >= (0.39 if path.grey else 1.0)


@every_figure
def test_figure_is_small_in_a_file(knot: Knot, thick: int, thin: int) -> None:
    assert sum(bytes_of(ink(frame)) for frame in knot_frames(knot, thick, thin)) < 40_000


def test_edges_of_a_small_figure_are_no_thinner_than_a_printer_draws() -> None:
    (frame, *_) = frames("perfection loop", 0, 0)
    for unit in (1.3, 1.8, 2.6):
        black, white = (
            next(path.line for path in inked(frame.strands, unit) if path.grey == grey)
            for grey in (0.0, 1.0)
        )
        assert (black - white) / 2 >= 0.3
        assert white >= 0.39


def test_a_persons_own_knot_has_no_frames() -> None:
    own = replace(KNOTS.find("blood"), name="grandfather's")
    assert knot_frames(own, 4, 5) == ()


def test_a_person_may_do_without_a_figure() -> None:
    own = replace(KNOTS.find("blood"), figure=False)
    assert knot_frames(own, 4, 5) == ()


def test_knot_that_wants_turns_gets_no_figure_without_them() -> None:
    assert not frames("blood", 0, 5)
    assert not frames("blood", 4, 0)
    assert frames("clinch", 0, 5)  # it has no thick side


def test_same_knot_gives_the_same_drawing() -> None:
    one, other = ([ink(frame) for frame in frames("uni to uni", 5, 6)] for _ in range(2))
    assert one == other
