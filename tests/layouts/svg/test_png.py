"""A picture of a card says how large it is, and its code reads back from the pixels."""

import sys
from io import BytesIO

import pytest
import zxingcpp
from PIL import Image

from tagend.layouts.base.faults import Refused
from tagend.layouts.codes.code import DESIGN_MODULE, symbol
from tagend.layouts.paper.face import MM, Code, Face
from tagend.layouts.svg.png import png_of
from tagend.layouts.svg.svg import write_svg

TEXT = "T1 SANDBAR 30/.023/HN 25*B"
FACE = Face("face", 50.8 * MM, 38.1 * MM, (Code(20, 20, DESIGN_MODULE, symbol(TEXT)),))


@pytest.mark.parametrize("dpi", [150, 300])
def test_a_picture_is_true_to_size_and_its_code_reads_back(dpi: int) -> None:
    pytest.importorskip("resvg_py")
    with Image.open(BytesIO(png_of(write_svg(FACE, title="Card"), dpi))) as picture:
        assert picture.size == (2 * dpi, 1.5 * dpi)
        assert picture.info["dpi"] == pytest.approx((dpi, dpi), rel=1e-4)  # whole pixels a metre
        assert picture.mode == "RGB"
        (found,) = zxingcpp.read_barcodes(picture)
    assert found.text == TEXT


def test_without_the_library_it_is_said_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "resvg_py", None)
    with pytest.raises(Refused, match=r"pip install 'tagend\[logo\]'"):
        png_of(write_svg(FACE, title="Card"), 300)
