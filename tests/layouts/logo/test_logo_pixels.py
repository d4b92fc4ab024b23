"""A PNG or JPEG file is shown on white paper as it is, or refused."""

from collections.abc import Sequence
from io import BytesIO
from random import Random

import pytest
from PIL import Image

from tagend.layouts.logo.logo import BadLogo
from tagend.layouts.logo.logo_pixels import LONGEST_SIDE, read_pixels
from tagend.layouts.paper.face import Face, Picture
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import is_grey_only, page_colours
from tests.pictures import file_of


def page_of(data: bytes, width: float = 40, height: float = 30) -> bytes:
    """Return a PDF of one page that the logo fills."""
    picture = Picture(0, 0, width, height, read_pixels(data))
    sheet = Sheet(width, height, (Placed(Face("face", width, height, (picture,)), 0, 0),))
    return write_pdf([sheet], title="", creator="")


def shown(picture: Image.Image, kind: str = "PNG") -> Image.Image:
    """Return what a printer would set of a picture of 40 × 30 pixels, a dot for each."""
    return page_colours(page_of(file_of(picture, kind)), 72)


def quarters(mode: str, colours: Sequence[object]) -> Image.Image:
    """Return a picture of four colours, row by row."""
    picture = Image.new(mode, (40, 30))
    for place, colour in enumerate(colours):
        x, y = 20 * (place % 2), 15 * (place // 2)
        picture.paste(colour, (x, y, x + 20, y + 15))  # type: ignore[arg-type]
    return picture


def at_quarters(picture: Image.Image) -> Sequence[object]:
    return [picture.getpixel(place) for place in ((10, 7), (30, 7), (10, 22), (30, 22))]


RGB = [(200, 20, 30), (0, 0, 0), (255, 255, 255), (10, 90, 160)]


def test_colours_stand_where_they_do_in_the_file() -> None:
    assert at_quarters(shown(quarters("RGB", RGB))) == RGB


def test_a_jpeg_is_shown_too() -> None:
    for one, other in zip(at_quarters(shown(quarters("RGB", RGB), "JPEG")), RGB, strict=True):
        assert one == pytest.approx(other, abs=8)


def test_what_is_clear_is_white_and_what_is_half_clear_half_as_dark() -> None:
    seen = at_quarters(
        shown(quarters("RGBA", [(0, 0, 0, 255), (0, 0, 0, 0), (0, 0, 0, 128), (255, 0, 0, 128)]))
    )
    assert seen == [(0,) * 3, (255,) * 3, (127,) * 3, (255, 127, 127)]


@pytest.mark.parametrize(
    ("mode", "colours"),
    [
        ("1", [0, 1, 1, 0]),
        ("L", [0, 255, 128, 64]),
        ("LA", [(0, 255), (0, 0), (128, 255), (64, 255)]),
        ("I;16", [0, 65535, 0x8080, 0x4040]),
        ("RGB", [(0,) * 3, (255,) * 3, (128,) * 3, (64,) * 3]),
    ],
)
def test_a_picture_without_colour_takes_black_alone(mode: str, colours: Sequence[object]) -> None:
    data = file_of(quarters(mode, colours))
    expected = [0, 255, 255, 0] if mode == "1" else [0, 255, 128, 64]
    assert at_quarters(page_colours(page_of(data), 72)) == [(grey,) * 3 for grey in expected]
    assert is_grey_only(page_of(data)) or b"/DeviceRGB" not in page_of(data)
    assert b"/DeviceGray" in page_of(data)


def test_a_palette_keeps_its_colours() -> None:
    assert at_quarters(shown(quarters("RGB", RGB).convert("P", palette=Image.Palette.ADAPTIVE)))[
        1:3
    ] == [(0, 0, 0), (255, 255, 255)]


def test_its_proportion_is_that_of_its_pixels() -> None:
    logo = read_pixels(file_of(Image.new("L", (200, 50))))
    assert logo.width / logo.height == 4


def test_a_camera_that_was_turned_is_heeded() -> None:
    out = BytesIO()
    exif = Image.Exif()
    exif[0x0112] = 6  # orientation: a quarter turn
    Image.new("L", (200, 50)).save(out, "JPEG", exif=exif)
    logo = read_pixels(out.getvalue())
    assert (logo.width, logo.height) == (50, 200)


def test_more_pixels_than_print_shows_are_left_out() -> None:
    noise = Image.frombytes("L", (2400, 1200), Random(1).randbytes(2400 * 1200))
    logo = read_pixels(file_of(noise))
    assert (logo.width, logo.height) == (LONGEST_SIDE, LONGEST_SIDE / 2)


def test_the_same_file_gives_the_same_bytes() -> None:
    data = file_of(quarters("RGB", RGB))
    assert read_pixels(data) == read_pixels(bytes(data))
    assert page_of(data) == page_of(data)


def large(side: int) -> bytes:
    return file_of(Image.new("1", (side, side)))


REFUSED = {
    file_of(Image.new("L", (40, 30)))[:-30]: ("this picture is damaged or cut off; save it again"),
    b"\x89PNG\r\n\x1a\n": "this picture is damaged or cut off; save it again",
    file_of(Image.new("RGBA", (9, 9), (0, 0, 0, 0))): (
        "it is all white; give a version that is dark on white paper"
    ),
    file_of(Image.new("L", (9, 9), 253)): (
        "it is all white; give a version that is dark on white paper"
    ),
    large(4500): "it has 4500 × 4500 pixels; make it smaller: 1600 a side are plenty",
    large(10_000): "it has 10000 × 10000 pixels; make it smaller: 1600 a side are plenty",
    large(14_000): "it has more than 20,000,000 pixels; make it smaller: 1600 a side are plenty",
}


@pytest.mark.parametrize(("data", "told"), REFUSED.items(), ids=range(len(REFUSED)))
def test_a_picture_that_cannot_serve_is_refused(data: bytes, told: str) -> None:
    with pytest.raises(BadLogo) as refusal:
        read_pixels(data)
    assert str(refusal.value) == told
