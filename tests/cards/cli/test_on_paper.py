"""What `cards`, `labels` and `stock` do with a person's own paper, printer and font."""

from io import BytesIO
from pathlib import Path

import pypdf
import pytest

from tagend.layouts.paper.face import MM
from tests.cards.cli.conftest import Tagend
from tests.fonts.made import postscript, truetype
from tests.layouts.drawn import boxes, is_grey_only, text

OWN_STOCK = """
[stock.card]
tag = "70 x 100 mm"

[stock.labels."own roll"]
size = "70 x 40 mm"
"""


@pytest.fixture
def shop(demo: Path) -> Path:
    path = demo / "own.toml"
    path.write_text(OWN_STOCK, encoding="utf-8")
    return path


def media(pdf: Path) -> tuple[float, float]:
    page = pypdf.PdfReader(BytesIO(pdf.read_bytes())).pages[0]
    return float(page.mediabox.width), float(page.mediabox.height)


# --- own stock --------------------------------------------------------------------------------


def test_own_stock_is_listed_and_pictured(tagend: Tagend, demo: Path, shop: Path) -> None:
    listed = tagend("stock", "--shop", shop).out
    assert "  tag                        70 × 100 mm" in listed.splitlines()
    assert "  own roll                   70 × 40 mm" in listed.splitlines()
    out = demo / "picture.pdf"
    run = tagend("stock", "tag", "--shop", shop, "-o", out)
    assert (run.status, run.out) == (0, "")
    sizes = [(right - left, bottom - top) for left, top, right, bottom in boxes(out.read_bytes())]
    assert any(size == pytest.approx((70 * MM, 100 * MM), abs=0.01 * MM) for size in sizes)


def test_own_stock_is_printed_on(tagend: Tagend, demo: Path, shop: Path) -> None:
    out = demo / "labels.pdf"
    recipe = demo / "sandbar-eight.toml"
    assert tagend("labels", recipe, "--stock", "own roll", "--shop", shop, "-o", out).status == 0
    assert media(out) == pytest.approx((70 * MM, 40 * MM), abs=0.001)
    out = demo / "cards.pdf"
    assert tagend("cards", recipe, "--size", "tag", "--shop", shop, "-o", out).status == 0


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_wrong_stock_names_file_key_and_measurement(
    tagend: Tagend, demo: Path, command: str
) -> None:
    shop, out = demo / "wrong.toml", demo / "out.pdf"
    shop.write_text('[stock.labels.mine]\npaper = "A5"\ncolumns = 3\nsize = "63.5 x 38.1 mm"\n')
    run = tagend(command, demo / "sandbar-eight.toml", "--shop", shop, "-o", out)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(
        f"{shop}: stock, labels 'mine', across: left margin 0 mm + 2 × pitch 63.5 mm + label "
        "63.5 mm is 190.5 mm, 42.5 mm more than the paper's 148 mm (A5); "
    )
    assert not out.exists()


def test_a_picture_of_nothing_known_is_refused(tagend: Tagend, demo: Path) -> None:
    run = tagend("stock", "A44", "-o", demo / "x.pdf")
    assert run.status == 2
    assert run.faults[0].startswith("no stock is called 'A44'; did you mean A4")


def test_a_picture_needs_a_file_and_a_file_a_name(tagend: Tagend, demo: Path) -> None:
    assert tagend("stock", "A4").faults == [
        "tagend stock: Missing option '-o' / '--output'. See 'tagend stock --help'."
    ]
    assert tagend("stock", "-o", demo / "x.pdf").faults[0].startswith("tagend stock: Name what")


# --- the printer ------------------------------------------------------------------------------


def test_a_shift_that_pushes_labels_off_the_sheet_is_refused(tagend: Tagend, demo: Path) -> None:
    shop = demo / "far.toml"
    shop.write_text('[printer]\nfront_x = "9 mm"\n')
    run = tagend(
        "labels", demo / "sandbar-eight.toml", "--shop", shop, "-o", demo / "x.pdf",
        "--stock", "a4-2x7-99.1x38.1",
    )  # fmt: skip
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith("printer, front_x: made true for this printer, print would reach ")
    assert "over the sheet's left edge; a front_x of up to " in line


# --- a font -----------------------------------------------------------------------------------


def recipe_named(demo: Path, name: str) -> Path:
    path = demo / "named.toml"
    sample = (demo / "sandbar-eight.toml").read_text(encoding="utf-8")
    path.write_text(sample.replace("Sandbar eight", name, 1), encoding="utf-8")
    return path


def test_a_font_beside_the_shop_file_sets_what_ours_lack(tagend: Tagend, demo: Path) -> None:
    (demo / "type").mkdir()
    truetype(demo / "type" / "own.ttf", "毛鈎", "OwnBrush-Regular")
    shop, out = demo / "own.toml", demo / "card.pdf"
    shop.write_text('font = "type/own.ttf"\n')
    recipe = recipe_named(demo, "毛鈎 eight")
    run = tagend("cards", recipe, "-o", out)
    assert run.status == 2
    assert "no font has the character 毛" in run.faults[0]
    assert tagend("cards", recipe, "--shop", shop, "-o", out).status == 0
    assert "毛鈎" in text(out.read_bytes())
    assert tagend("labels", recipe, "--shop", shop, "-o", out).status == 0
    assert "毛鈎" in text(out.read_bytes())


def test_a_font_of_the_wrong_kind_is_refused_with_the_file(tagend: Tagend, demo: Path) -> None:
    postscript(demo / "own.otf", "毛", "OwnBrushCff-Regular")
    shop = demo / "own.toml"
    shop.write_text('font = "own.otf"\n')
    run = tagend("cards", demo / "sandbar-eight.toml", "--shop", shop, "-o", demo / "x.pdf")
    assert run.faults == [
        f"{shop}: font: {demo / 'own.otf'}: its outlines are PostScript (CFF); give its TrueType "
        "version, a .ttf"
    ]


# --- options of cards -------------------------------------------------------------------------


def test_cards_for_a_print_shop_have_their_boxes(tagend: Tagend, demo: Path) -> None:
    out = demo / "press.pdf"
    assert tagend("cards", demo / "sandbar-eight.toml", "--press", "-o", out).status == 0
    for page in pypdf.PdfReader(BytesIO(out.read_bytes())).pages:
        trim = page.trimbox
        size = sorted((float(trim.width), float(trim.height)))
        assert size == pytest.approx([53.98 * MM, 85.6 * MM], abs=0.002)
        assert float(page.bleedbox.width) == pytest.approx(float(trim.width) + 6 * MM, abs=0.002)
    assert is_grey_only(out.read_bytes())


@pytest.mark.parametrize(
    ("option", "value"),
    [("--paper", "A4"), ("--gutter", "5mm"), ("--order", "stack"), ("--backs", "fold")],
)
def test_on_a_press_no_sheet_is_shared(tagend: Tagend, demo: Path, option: str, value: str) -> None:
    run = tagend(
        "cards", demo / "sandbar-eight.toml", "--press", option, value, "-o", demo / "x.pdf"
    )
    assert run.faults == [
        f"tagend cards: With --press each side is a page of its own; leave out {option}. "
        "See 'tagend cards --help'."
    ]


def test_a_gutter_without_a_unit_is_refused(tagend: Tagend, demo: Path) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "--gutter", "5", "-o", demo / "x.pdf")
    assert run.status == 2
    assert "'5' has no unit; write a length with its unit" in run.faults[0]


def test_wet_cards_come_with_a_sheet_for_their_pouches(tagend: Tagend, demo: Path) -> None:
    out = demo / "wet.pdf"
    assert tagend("cards", demo / "sandbar-eight.toml", "--wet", "-o", out).status == 0
    pages = len(pypdf.PdfReader(BytesIO(out.read_bytes())).pages)
    assert "5 mm of film stay around each card" in text(out.read_bytes(), pages - 1)


def test_a_margin_that_leaves_no_room_is_refused(tagend: Tagend, demo: Path) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "--margin", "100 mm", "-o", demo / "x.pdf")
    assert run.status == 2
    assert "does not fit Letter, which has room for 15.9 × 79.4 mm" in run.faults[0]
