import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.faces.plot import plot
from tagend.cards.leader.leader import Leader
from tests.drawable import leaders
from tests.told import scale, told
from tests.written import leader, recipe, section

WIDTH = 226.0  # points, of an ID-1 card within its inset: (85.6 - 6) mm
LOOP, FLY_LOOP, BARE = 9.0, 6.5, 1.5  # points in front of the first piece, and behind the last

THREE = (
    section("40 in", "0.020 in"),
    section("20 in", "0.015 in"),
    section("20 in", "0.010 in", "fluorocarbon"),
)


def test_lengths_are_to_scale() -> None:
    # 80 in over 226 - 2 × 1.5 pt: 111.5, 55.75 and 55.75
    plotted = plot(told(leader(recipe(*THREE, butt="none", fly="none"))), scale(), WIDTH, 9.0)
    assert [band.length for band in plotted.bands] == pytest.approx([111.5, 55.75, 55.75])
    assert [band.x for band in plotted.bands] == pytest.approx([1.5, 113, 168.75])


def test_thickness_is_exaggerated_by_a_round_factor_that_keeps_it_within_its_room() -> None:
    plotted = plot(told(leader(recipe(*THREE, butt="none", fly="none"))), scale(), WIDTH, 9.0)
    # 223 pt for 80 in is 2.7875 pt/in; 0.020 in is 0.05575 pt: 150 times that is 8.3625, 200 is 11
    assert plotted.factor == 150
    assert [band.from_thick for band in plotted.bands] == pytest.approx([8.3625, 6.271875, 4.18125])


def test_a_loop_is_no_length_of_the_leader() -> None:
    looped = recipe(*THREE, butt="perfection loop", fly="non-slip loop")
    plotted = plot(told(leader(looped)), scale(2.0), WIDTH, 9.0)
    assert (plotted.start, WIDTH - plotted.end) == pytest.approx((2 * LOOP, 2 * FLY_LOOP))


@pytest.mark.parametrize("end", ["nail knot", "none"])
def test_an_end_without_a_loop_keeps_no_room_for_one(end: str) -> None:
    assert plot(told(leader(recipe(*THREE, butt=end))), scale(), WIDTH, 9.0).start == BARE


def test_a_knotless_taper_slopes() -> None:
    tapered = recipe(section("7 ft", "0.021 in", tapers_to="0.009 in"), section("20 in", "4X"))
    first, _ = plot(told(leader(tapered)), scale(), WIDTH, 9.0).bands
    assert first.to_thick / first.from_thick == pytest.approx(9 / 21)


def test_a_piece_that_grows_keeps_within_its_room() -> None:
    growing = leader(recipe(section("9 ft", "0.010 in", tapers_to="0.040 in"), butt="none"))
    assert 4.5 < plot(told(growing), scale(), WIDTH, 9.0).bands[0].to_thick <= 9.0


def test_where_two_pieces_meet_the_thicker_counts() -> None:
    plotted = plot(told(leader(recipe(*THREE, butt="none", fly="none"))), scale(), WIDTH, 9.0)
    assert plotted.half(plotted.bands[1].x) == plotted.bands[0].from_thick / 2


@given(leaders(), st.floats(127, 540), st.floats(5, 20), st.sampled_from([1.0, 1.5, 2.0]))
def test_every_leader_is_to_scale(of: Leader, width: float, room: float, size: float) -> None:
    plotted = plot(told(of), scale(size), width, room)
    ends = sum(
        loop if end.loop_mm > 0 else BARE for end, loop in ((of.butt, LOOP), (of.fly, FLY_LOOP))
    )
    assert plotted.end - plotted.start == pytest.approx(width - size * ends)
    for band, piece in zip(plotted.bands, of.pieces, strict=True):
        assert band.length == pytest.approx(float(piece.finished.high_mm) * plotted.per_mm)
        thick = float(piece.section.diameter.mm) * plotted.per_mm * plotted.factor
        assert band.from_thick == pytest.approx(thick)
        assert max(band.from_thick, band.to_thick) <= room + 1e-9 or plotted.factor == 1
