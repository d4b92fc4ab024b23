from tagend.cards.faces.band import Band
from tests.seen import points


def test_the_outline_tapers_from_one_thickness_to_the_other() -> None:
    edge = Band(10, 50, 100, 8, 4).outline
    assert points(edge) == [(10, 46), (110, 48), (110, 52), (10, 54)]  # 50 ± 8 / 2, 50 ± 4 / 2
    assert (edge.fill, edge.grey) == (1.0, 0.0)
