"""What a shop file says of stock, printer and font is checked key by key, and used."""

from pathlib import Path

import pytest

from tagend.cards.practice.shop_file import Shop, read_shop
from tagend.cards.printing.own_paper import check_paper, own_paper
from tagend.fonts import NoGlyph, runs
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM
from tagend.layouts.stock.stock import card_size, label_sheet, paper, shipped
from tests.fonts.made import truetype

OWN = b"""
[stock.paper]
Ledger = "200 x 330 mm"

[stock.card]
tag = { size = "40 x 90 mm", corner = "4 mm" }

[stock.labels."wallet roll"]
size = "60 x 38 mm"

[stock.defaults]
paper = "Ledger"

[printer]
front_x = "0.8 mm"
rule_y = "99.6 mm"
"""


def refusal(shop: str) -> list[str]:
    with pytest.raises(Refused) as caught:
        check_paper(read_shop(shop.encode()))
    return str(caught.value).splitlines()


def test_own_stock_stands_beside_ours() -> None:
    with own_paper(read_shop(OWN)) as own:
        assert paper("ledger", own.stock).height == pytest.approx(330 * MM)
        assert card_size("tag", own.stock).corner == pytest.approx(4 * MM)
        assert label_sheet("Wallet-Roll", own.stock).on_roll
        assert own.stock.defaults["paper"] == "Ledger"
        assert own.stock.defaults["card"] == "ID-1"
        assert paper("A4", own.stock) == paper("A4")


def test_the_printer_is_as_measured() -> None:
    with own_paper(read_shop(OWN)) as own:
        assert own.printer.front_x == pytest.approx(0.8 * MM)
        assert own.printer.rule_y == pytest.approx(99.6 * MM)


def test_without_a_shop_file_all_is_as_shipped() -> None:
    with own_paper(Shop()) as own:
        assert own.stock == shipped()
        assert own.printer.rule_x == pytest.approx(100 * MM)


def test_labels_that_leave_their_sheet_are_refused_with_key_and_measurement() -> None:
    faults = refusal(
        '[stock.labels.mine]\npaper = "A4"\ncolumns = 3\nsize = "63.5 x 38.1 mm"\n'
        'margin = "7.25 x 15.15 mm"\npitch = "70 x 38.1 mm"'
    )
    assert faults == [
        "stock, labels 'mine', across: left margin 7.25 mm + 2 × pitch 70 mm + label 63.5 mm is "
        "210.75 mm, 0.75 mm more than the paper's 210 mm (A4); measure margin, pitch and label "
        "again"
    ]


def test_labels_that_overlap_are_refused_by_how_much() -> None:
    (fault,) = refusal(
        '[stock.labels.mine]\npaper = "A4"\ncolumns = 3\nsize = "63.5 x 38.1 mm"\n'
        'pitch = "60 x 38.1 mm"'
    )
    assert fault.startswith(
        "stock, labels 'mine', pitch: 60 mm across is 3.5 mm less than the label's 63.5 mm, so "
        "labels overlap; "
    )


def test_faults_of_stock_and_printer_are_told_together() -> None:
    faults = refusal('[stock.card]\ntag = "40 x 90"\n[printer]\nrule_x = "96 mm"\nback_z = "1 mm"')
    places = [fault.split(": ")[0] for fault in faults]
    assert places == ["stock, card 'tag', size", "printer, rule_x", "printer, back_z"]


def test_a_table_that_is_none_is_refused() -> None:
    with pytest.raises(Refused, match="stock: this is not a table"):
        read_shop(b'stock = "A4"')
    with pytest.raises(Refused, match="printer: this is not a table"):
        read_shop(b"printer = 3")


def test_an_own_font_is_in_use_inside_only(tmp_path: Path) -> None:
    font = truetype(tmp_path / "own.ttf", "毛", "Ours-Regular")
    with own_paper(Shop(font=str(font))):
        assert runs("毛", "bold")
    with pytest.raises(NoGlyph):
        runs("毛", "bold")


def test_a_font_that_is_not_there_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "none.ttf"
    with pytest.raises(Refused) as caught:
        check_paper(Shop(font=str(path)))
    assert str(caught.value) == (
        f"font: {path}: there is no such file; give the path of a TrueType font"
    )
