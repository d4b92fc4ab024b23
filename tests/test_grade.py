"""Printed codes hold grade A on every stock, as `grade.py` computes it; and the grader can fail."""

from functools import cache

import numpy as np
import pytest
import zxingcpp
from msgspec.structs import replace
from PIL import Image, ImageFilter

from tagend.cards.leader.leader import work_out
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.printing.labels import LabelWishes, labels_sheets
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tagend.layouts.codes.code import QUIET, symbol
from tagend.layouts.paper.face import MM, Code, Symbol
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.stock.formats import LabelSheet
from tagend.layouts.stock.stock import shipped
from tests.grade import grade, modules, printed
from tests.layouts.drawn import page_image
from tests.qr_layout import blocks, codewords, corrected_at_most
from tests.told import JOB
from tests.tree import SAMPLES
from tests.written import PRACTICE

WORDED = work_out(read_recipe((SAMPLES / "sandbar-eight.toml").read_bytes(), PRACTICE), PRACTICE)
PRINTED = [
    (stock, dpi)
    for stock in shipped().labels.values()
    for dpi in ((stock.dpi,) if stock.dpi else (300, 600))
]


@cache
def label(stock: str) -> Sheet | None:
    """Return a sheet with one label, None where the stock is too small for it."""
    try:
        (sheet,) = labels_sheets(JOB, [Worksheet(WORDED, ())], LabelWishes(stock))
    except Refused:
        return None
    return sheet


def seen(sheet: Sheet, dpi: int) -> tuple[Image.Image, Code]:
    """Return the dots of the first code on a sheet with a little more than its border."""
    placed = sheet.placed[0]
    (code,) = [item for item in placed.face.items if isinstance(item, Code)]
    face = replace(placed.face, items=(code,))
    alone = Sheet(sheet.width, sheet.height, (replace(placed, face=face),))
    picture = page_image(write_pdf([alone], title="A code", creator="tests"), dpi)
    dot, quiet = 72 / dpi, QUIET * code.module
    side = code.symbol.side * code.module
    starts = [round((at - quiet) / dot) - 1 for at in (placed.x + code.x, placed.y + code.y)]
    ends = [round((at + side + quiet) / dot) + 1 for at in (placed.x + code.x, placed.y + code.y)]
    white = Image.new("L", (ends[0] - starts[0], ends[1] - starts[1]), 255)
    white.paste(picture, (-starts[0], -starts[1]))  # a light border may end with the label
    return white, code


@pytest.mark.parametrize(("stock", "dpi"), PRINTED, ids=[f"{s.name}-{d}" for s, d in PRINTED])
def test_a_code_has_grade_a_on_every_stock(stock: LabelSheet, dpi: int) -> None:
    sheet = label(stock.name)
    if sheet is None:
        pytest.skip("no label of this stock holds the sample")
    picture, code = seen(sheet, dpi)
    light = printed(picture, dpi)
    found = grade(light, code.symbol)
    assert found.overall == "A", (found, code.module / MM)


MADE = symbol("TAG3:SANDBAR EIGHT:W8:BUTT PL*3/4:30*23*HN*25-B:24*13*FC*14-NS:O2")


def drawn(made: Symbol, dots: int) -> Image.Image:
    rows = np.pad(modules(made), QUIET + 1)
    large = rows.repeat(dots, axis=0).repeat(dots, axis=1)
    return Image.fromarray(np.where(large, 0, 255).astype(np.uint8))


def test_a_faded_a_blurred_and_a_stretched_code_lose_their_points() -> None:
    light = printed(drawn(MADE, 4), 203)
    assert grade(light, MADE).overall == "A"
    assert grade(0.5 + light / 2, MADE).contrast == 1  # 0.395 of light between ink and paper
    blurred = np.asarray(
        Image.fromarray((light * 255).astype(np.uint8)).filter(ImageFilter.BoxBlur(30))
    )
    assert grade(blurred / 255, MADE).modulation < 4
    stretched = Image.fromarray(light)
    stretched = stretched.resize((stretched.width * 109 // 100, stretched.height))
    assert grade(np.asarray(stretched), MADE).axial == 2  # 0.086


def test_codewords_stand_where_an_unrelated_reader_finds_them() -> None:
    of, most = blocks(MADE), corrected_at_most(MADE)
    for more, is_read in ((0, True), (1, False)):
        rows = modules(MADE)
        spoiled = [place for place, block in enumerate(of) if block == 0][: most[0] + more]
        rows[np.isin(codewords(MADE.version), spoiled)] ^= True
        bits = np.pad(rows, ((0, 0), (0, 1))).astype(int).flat
        made = replace(MADE, dark=int("".join(map(str, bits)), 2))
        found = zxingcpp.read_barcodes(drawn(made, 4), try_invert=False)
        assert [code.text for code in found] == ([MADE.text] if is_read else [])
        assert grade(printed(drawn(made, 4), 203), MADE).unused_correction == 0
