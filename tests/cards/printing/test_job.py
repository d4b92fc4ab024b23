"""What a shop file says of stock, printer and font is checked key by key, and used."""

import pathlib

import pytest
from msgspec.structs import replace

from tagend.cards.leader.audit import audit
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.shop_file import Shop, read_shop
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.printing.job import job_of, pdf_of
from tagend.fonts import OURS, runs
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import MM, Face, Path, rectangle
from tagend.layouts.sheets.sheet import Placed, Sheet
from tagend.layouts.stock.stock import paper, shipped
from tests.fonts.made import truetype
from tests.layouts.drawn import page_image
from tests.told import JOB
from tests.written import leader, recipe, section

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
        job_of(read_shop(shop.encode()))
    return str(caught.value).splitlines()


def test_own_stock_stands_beside_ours() -> None:
    job = job_of(read_shop(OWN))
    assert job.paper("ledger").height == pytest.approx(330 * MM)
    assert job.card_size("tag").corner == pytest.approx(4 * MM)
    assert job.label_sheet("Wallet-Roll").on_roll
    assert job.paper("A4") == paper("A4")


def test_the_usual_is_what_is_asked_for_first() -> None:
    assert job_of(read_shop(OWN)).paper(None).name == "Ledger"
    assert job_of(read_shop(b'paper = "A5"\n' + OWN)).paper(None).name == "A5"
    assert job_of(read_shop(OWN)).card_size(None).name == "ID-1"


def test_the_printer_is_as_measured() -> None:
    printer = job_of(read_shop(OWN)).printer
    assert printer.front_x == pytest.approx(0.8 * MM)
    assert printer.rule_y == pytest.approx(99.6 * MM)


def test_what_is_to_be_true_is_corrected_each_side_by_its_own_shift() -> None:
    job = job_of(Shop(printer={"front_x": "1 mm", "back_x": "2 mm"}))
    dot = Face("dot", 200, 200, (Path(rectangle(100, 100, 72, 72), fill=0.0),))
    front = Sheet(200, 200, (Placed(dot, 0, 0),))
    sheets = [front, replace(front, side="back")]
    true = pdf_of(job, lambda: sheets, title="dots")
    plain = pdf_of(job, lambda: sheets, title="dots", true=False)

    def left(pdf: bytes, page: int) -> float:
        dark = page_image(pdf, 720, page).point(lambda value: 255 * (value < 128)).getbbox()
        assert dark is not None
        return dark[0] / 10

    assert [left(plain, 0) - left(true, 0), left(plain, 1) - left(true, 1)] == pytest.approx(
        [MM, 2 * MM], abs=0.1
    )


def test_without_a_shop_file_all_is_as_shipped() -> None:
    job = job_of(Shop())
    assert job.stock == shipped()
    assert job.printer.rule_x == pytest.approx(100 * MM)
    assert job.fonts == OURS


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


def test_a_job_sets_what_no_other_font_has_in_its_own(tmp_path: pathlib.Path) -> None:
    font = truetype(tmp_path / "own.ttf", "毛", "Ours-Regular")
    assert runs("毛", job_of(Shop(font=str(font))).fonts.bold)


def test_a_font_that_is_not_there_is_refused(tmp_path: pathlib.Path) -> None:
    path = tmp_path / "none.ttf"
    with pytest.raises(Refused) as caught:
        job_of(Shop(font=str(path)))
    assert str(caught.value) == (
        f"font: {path}: there is no such file; give the path of a TrueType font"
    )


def test_what_was_found_reaches_the_faces() -> None:
    steep = leader(recipe(section("5 ft", "0.023 in"), section("3 ft", "0.009 in")))
    sheet = Worksheet(steep, audit(steep, JOB.practice))
    assert sheet.findings
    (told,) = JOB.told([sheet])
    assert told.findings == sheet.findings
    assert card_text(JOB, sheet, CardWishes()).told.findings == sheet.findings
