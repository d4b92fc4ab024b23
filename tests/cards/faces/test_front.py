import pytest

from tagend.cards.faces.front import front
from tagend.cards.faces.panel import INSET, Panel
from tagend.cards.words.leader_words import Told
from tagend.layouts.paper.face import Face
from tagend.layouts.stock.stock import card_size
from tests.seen import faults, runs, words
from tests.told import scale, told
from tests.written import leader, recipe, section

ID_1 = Panel(card_size("ID-1"), scale())


def of_sections(count: int) -> Told:
    """Return a leader of so many sections, of 10, 20, 30 in and so on from the fly upwards."""
    lengths = range(10 * count, 0, -10)
    pieces = [section(f"{length} in", f"0.0{10 + length // 10} in") for length in lengths]
    return told(leader(recipe(*pieces, butt="none")))


def drawn(count: int) -> Face | None:
    side = front(of_sections(count), ID_1, drawn=True)
    return side.face("front") if side else None


def figures(face: Face) -> list[str]:
    """Return what stands on the first line of figures: lengths, or runs from the fly."""
    small = [run for run in runs(face) if run.size == ID_1.scale.small and run.text.isdigit()]
    return [run.text for run in small if run.y == min(run.y for run in small)]


@pytest.mark.parametrize(
    ("count", "first_line"),
    [(4, ["40", "30", "20", "10"])],
)
def test_a_card_has_the_fullest_drawing_that_fits(count: int, first_line: list[str]) -> None:
    face = drawn(count)
    assert face is not None
    assert "thickness ×" in words(face)
    assert figures(face) == first_line
    assert faults(face, INSET) == []


def test_a_table_that_leaves_no_room_has_no_drawing_above_it() -> None:
    assert drawn(7) is None
    side = front(of_sections(7), ID_1, drawn=False)
    assert side is not None
    assert "thickness ×" not in words(side.face("front"))
