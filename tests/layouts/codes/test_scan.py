import struct
import sys
import zlib

import pytest
import zxingcpp
from PIL import Image, ImageFilter
from reportlab.graphics.barcode.code128 import Code128
from reportlab.pdfgen.canvas import Canvas

from tagend.layouts.codes import scan
from tagend.layouts.codes.scan import (
    MOST_PAGES,
    is_picture,
    page_texts,
    picture_texts,
    texts_in_pages,
    texts_in_picture,
)
from tagend.layouts.strangers.unreadable import Unreadable
from tests.pictures import beside, code_picture, file_of, pages

TEXT = "TAG3:SANDBAR EIGHT:30*23*HN:"
OTHER = "TAG3:REEDBED SIX:22*21*N:"


def png_head(width: int, height: int) -> bytes:
    """Return a grey PNG that promises a size and holds next to nothing."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    pixels = zlib.compress(bytes(100))
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP"])
def test_a_code_is_read_in_each_kind_of_picture(kind: str) -> None:
    data = file_of(code_picture(TEXT), kind)
    assert is_picture(data)
    assert texts_in_picture(data) == (TEXT,)


@pytest.mark.parametrize("mode", ["1", "L", "P", "RGB", "RGBA", "CMYK"])
def test_colours_make_no_difference(mode: str) -> None:
    kind = "JPEG" if mode == "CMYK" else "PNG"
    assert texts_in_picture(file_of(code_picture(TEXT).convert(mode), kind)) == (TEXT,)


def test_what_shines_through_counts_as_paper() -> None:
    code = code_picture(TEXT)
    ink = Image.new("RGBA", code.size, (0, 0, 0, 0))
    ink.paste((0, 0, 0, 255), mask=Image.eval(code, lambda value: 255 - value))
    assert texts_in_picture(file_of(ink)) == (TEXT,)


@pytest.mark.parametrize("angle", [33, 90, 180, 271])
def test_a_code_may_lie_at_any_angle(angle: int) -> None:
    turned = code_picture(TEXT).rotate(angle, Image.Resampling.BICUBIC, expand=True, fillcolor=255)
    assert texts_in_picture(file_of(turned)) == (TEXT,)


def test_several_codes_are_read_and_equal_ones_once() -> None:
    picture = beside(code_picture(TEXT), code_picture(OTHER), code_picture(TEXT))
    assert sorted(texts_in_picture(file_of(picture))) == sorted((TEXT, OTHER))


def test_a_small_blurred_code_is_looked_at_again_larger() -> None:
    # A blur of 0.44 modules, and 1.8 pixels to a module.
    small = code_picture(TEXT, 8).filter(ImageFilter.GaussianBlur(3.5))
    small = small.resize((round(small.width * 1.8 / 8),) * 2, Image.Resampling.BICUBIC)
    assert scan._texts_in(small) == []
    assert texts_in_picture(file_of(small)) == (TEXT,)


def test_a_picture_without_a_code_gives_nothing() -> None:
    assert texts_in_picture(file_of(Image.new("RGB", (300, 200), "orange"))) == ()


def test_bars_are_not_looked_for() -> None:
    canvas = Canvas("", pagesize=(300, 100))
    Code128("4006381333931", barHeight=50, barWidth=1.5).drawOn(canvas, 20, 20)
    (picture,) = pages(bytes(canvas.getpdfdata()))
    assert zxingcpp.read_barcodes(picture)
    assert texts_in_picture(file_of(picture)) == ()


@pytest.mark.parametrize(
    ("width", "height", "fault"),
    [
        (8000, 8001, "it has 8000 × 8001 pixels; make it smaller"),
        (12_000, 9_000, "it has 12000 × 9000 pixels; make it smaller"),
        (60_000, 60_000, "it has more than 64,000,000 pixels; make it smaller"),
    ],
)
def test_a_bomb_is_refused_by_its_head(width: int, height: int, fault: str) -> None:
    with pytest.raises(Unreadable) as refusal:
        texts_in_picture(png_head(width, height))
    assert str(refusal.value).startswith(fault)


@pytest.mark.parametrize("kept", [8, 20, 60, 200])
@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP"])
def test_a_picture_cut_short_is_damaged(kind: str, kept: int) -> None:
    data = file_of(code_picture(TEXT), kind)[:kept]
    with pytest.raises(Unreadable, match=r"^it is damaged or cut off"):
        texts_in_picture(data + b"\x00" * 4)


def test_more_codes_than_a_sheet_holds_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(scan, "MOST_CODES", 1)
    with pytest.raises(Unreadable, match=r"^it shows 2 codes, more than 1;"):
        picture_texts(file_of(beside(code_picture(TEXT), code_picture(OTHER))))


def test_heic_is_told_apart_and_needs_its_own_library(monkeypatch: pytest.MonkeyPatch) -> None:
    data = b"\x00\x00\x00\x18ftypheic" + bytes(40)
    assert is_picture(data)
    monkeypatch.setitem(sys.modules, "pillow_heif", None)
    with pytest.raises(Unreadable, match="write: pip install 'pillow-heif'"):
        picture_texts(data)


def test_heic_is_read_where_its_library_is() -> None:
    pytest.importorskip("pillow_heif").register_heif_opener()
    assert texts_in_picture(file_of(code_picture(TEXT).convert("RGB"), "HEIF")) == (TEXT,)


@pytest.mark.parametrize("data", [b"", b"RIFF", b"RIFF1234WAVE", b"TAG3:", b"%PDF-1.7", bytes(99)])
def test_other_data_is_no_picture(data: bytes) -> None:
    assert not is_picture(data)


def test_without_the_extra_pages_say_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pypdfium2", None)
    with pytest.raises(Unreadable, match=r"write: pip install 'tagend\[scan\]'$"):
        page_texts(blank_pdf(1))


def test_a_picture_is_read_without_numpy(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "numpy", None)
    assert picture_texts(file_of(code_picture(TEXT))) == [TEXT]


def test_codes_on_pages_are_read() -> None:
    pdf = file_of(beside(code_picture(TEXT, 3), code_picture(OTHER, 3)), "PDF")
    assert sorted(texts_in_pages(pdf)) == sorted((TEXT, OTHER))


def test_a_page_larger_than_any_paper_is_drawn_smaller() -> None:
    # 3,600 points are 50 in, which at 300 dpi would be 225 million pixels.
    picture = Image.new("L", (3600, 3600), 255)
    picture.paste(code_picture(TEXT, 20), (400, 1700))
    assert texts_in_pages(file_of(picture, "PDF")) == (TEXT,)


def blank_pdf(pages: int) -> bytes:
    canvas = Canvas("", pagesize=(200, 200))
    for _ in range(pages):
        canvas.showPage()
    return bytes(canvas.getpdfdata())


def test_a_page_without_a_code_gives_nothing() -> None:
    assert texts_in_pages(blank_pdf(MOST_PAGES)) == ()


@pytest.mark.parametrize(
    ("pdf", "fault"),
    [
        (blank_pdf(41), "it has 41 pages, more than 40;"),
        (b"%PDF-1.4\nnothing", "it is damaged"),
    ],
)
def test_a_pdf_that_is_too_much_is_refused(pdf: bytes, fault: str) -> None:
    with pytest.raises(Unreadable) as refusal:
        texts_in_pages(pdf)
    assert str(refusal.value).startswith(fault)
