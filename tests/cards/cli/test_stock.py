import pytest

from tagend.layouts.stock.stock import shipped
from tests.cards.cli.conftest import Tagend


def test_every_paper_card_and_label_is_listed(tagend: Tagend) -> None:
    run = tagend("stock")
    assert (run.status, run.err) == (0, "")
    stock = shipped()
    shelves = (stock.papers, stock.cards, stock.labels)
    known = {item.name for shelf in shelves for item in shelf.values()}
    listed = [line.split()[0] for line in run.out.splitlines() if line.startswith("  ")]
    assert set(listed) == known


@pytest.mark.parametrize(
    "line",
    [
        "  ID-1                       85.6 × 53.98 mm",
        "  index-3x5                  127 × 76.2 mm",
        "  A4                         210 × 297 mm",
        "  Letter                     215.9 × 279.4 mm",
        "  letter-3x10-66.7x25.4      3 × 10 labels of 66.67 × 25.4 mm",
    ],
)
def test_a_measure_stands_beside_each_name(tagend: Tagend, line: str) -> None:
    assert line in tagend("stock").out.splitlines()
