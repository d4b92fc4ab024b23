from dataclasses import replace

import pytest

from tagend.cards.faces.key import key
from tagend.cards.faces.plot import plot
from tagend.cards.leader.leader import Leader
from tagend.layouts.paper.face import Face
from tests.seen import faults, paths, points, runs
from tests.told import scale, told
from tests.written import leader, recipe, section

WIDTH = 226.0
NOTE = "thickness × 150"

THREE = recipe(
    section("40 in", "0.020 in"),
    section("20 in", "0.015 in"),
    section("20 in", "0.010 in", "fluorocarbon"),
    butt="none",
    fly="none",
)
GUARDED = recipe(
    section("60 in", "0.024 in", "hard nylon"),
    section("20 in", "0.015 in", "fluorocarbon", part="tippet"),
    section("12 in", "0.024 in", "fluorocarbon", part="bite guard"),
)


def drawn(of: Leader, width: float = WIDTH, factor: float = 1.0) -> Face:
    plotted = plot(told(of), scale(factor), width, 9.0)
    block = key(plotted, NOTE)
    return Face("key", width, block.height, block.items)


def names(of: Leader, width: float = WIDTH) -> list[str]:
    return [run.text for run in runs(drawn(of, width)) if run.text != NOTE]


def test_each_material_is_named_once_from_the_butt_to_the_fly() -> None:
    assert names(leader(THREE)) == ["nylon", "fluorocarbon"]
    back_again = replace(THREE, sections=(*THREE.sections, section("9 in", "4X")))
    assert names(leader(back_again)) == ["nylon", "fluorocarbon"]


def test_each_material_has_a_swatch_before_its_word() -> None:
    face = drawn(leader(THREE))
    swatches = [path for path in paths(face) if path.steps[-1] == ("close",)]
    assert len(swatches) == 2
    for swatch, run in zip(swatches, runs(face), strict=False):
        right = max(x for x, _ in points(swatch))
        assert run.x - 4 < right < run.x


def test_a_bite_guard_is_named_and_its_swatch_is_underlined() -> None:
    of = leader(GUARDED)
    assert names(of) == ["hard nylon", "fluorocarbon", "bite guard"]
    *strokes, line = paths(drawn(of))
    swatch = [path for path in strokes if path.steps[-1] == ("close",)][-1]
    assert line.dash
    (left, y), (right, _) = points(line)
    assert y == pytest.approx(max(y for _, y in points(swatch)) + 1.0)
    assert right - left == pytest.approx(max(x for x, _ in points(swatch)) - left)


def test_a_bite_guard_of_another_material_names_it() -> None:
    of = leader(replace(GUARDED, sections=(*GUARDED.sections[:2], section("6 in", "4X", "wire"))))
    assert names(of) == ["hard nylon", "fluorocarbon", "bite guard wire"]


def test_what_is_no_material_stands_at_the_right() -> None:
    *_, note = runs(drawn(leader(THREE)))
    assert note.x + note.width == pytest.approx(WIDTH)
    assert note.text == NOTE


def test_materials_stand_by_their_pieces_where_there_is_room() -> None:
    wide = 560.0
    nylon, _, _ = runs(drawn(leader(THREE), wide))
    swatch = 1.5 * 7.6  # and the space behind it
    # nylon is 60 of 80 in; 557 pt of the width are the leader's
    assert nylon.x + (nylon.width - swatch) / 2 == pytest.approx(1.5 + 557 * 30 / 80)


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_a_narrow_key_takes_more_lines(factor: float) -> None:
    narrow = drawn(leader(GUARDED), 127, factor)
    assert faults(narrow, 0) == []
    assert len({run.y for run in runs(narrow)}) >= 2
    assert {"hard nylon", "fluorocarbon"} <= {run.text for run in runs(narrow)}
