"""The kind of a logo's file is told from its bytes."""

from importlib.resources import files
from io import BytesIO

import pypdf
import pytest
from PIL import Image

from tagend.layouts.logo.logo import BadLogo, Logo
from tagend.layouts.logo.logo_file import LARGEST, read_logo
from tagend.layouts.paper.face import Face, Path, Picture, rectangle, shifted
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.ink import ink
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.layouts.drawn import is_grey_only, page_image
from tests.pictures import file_of

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><path d="M0 0h40v30H0z"/></svg>'


def filled() -> bytes:
    face = Face("face", 40, 30, (Path(rectangle(0, 0, 40, 30), fill=0),))
    return write_pdf([Sheet(40, 30, (Placed(face, 0, 0),))], title="", creator="")


KINDS = {
    "png": file_of(Image.new("L", (40, 30))),
    "jpeg": file_of(Image.new("RGB", (40, 30)), "JPEG"),
    "svg": SVG,
    "svg with a byte order mark": b"\xef\xbb\xbf" + SVG,
    "svg after its declaration": b"<?xml version='1.0' encoding='UTF-8'?>\n" + SVG,
    "pdf": filled(),
}


def page_of(logo: Logo, times: int = 1) -> bytes:
    pictures = tuple(Picture(20 + 5 * n, 15, 80, 60, logo) for n in range(times))
    sheet = Sheet(200, 120, (Placed(Face("face", 200, 120, pictures), 0, 0),))
    return write_pdf([sheet], title="", creator="")


@pytest.mark.parametrize("data", KINDS.values(), ids=KINDS.keys())
def test_each_kind_fills_its_box_and_no_more(data: bytes) -> None:
    logo = read_logo(data)
    assert logo.within(100, 300) == pytest.approx((100, 75))
    assert logo.within(400, 75) == pytest.approx((100, 75))
    dark = page_image(page_of(logo), 288).point(lambda value: 255 * (value < 128)).getbbox()
    assert dark is not None
    assert [edge / 4 for edge in dark] == pytest.approx((20, 15, 100, 75), abs=0.26)  # a dot


@pytest.mark.parametrize("data", KINDS.values(), ids=KINDS.keys())
def test_a_logo_that_is_shown_often_is_stored_once(data: bytes) -> None:
    logo = read_logo(data)
    once, often = (len(pypdf.PdfReader(BytesIO(page_of(logo, n))).xref[0]) for n in (1, 50))
    assert once == often


def test_two_logos_of_equal_objects_are_one() -> None:
    one, other = read_logo(SVG), read_logo(bytes(SVG))
    assert one == other
    assert hash(one) == hash(other)


@pytest.mark.parametrize("times", [1, 3])  # often enough, a face is a form that holds the logo's
def test_it_shows_on_every_face(times: int) -> None:
    face = Face("face", 60, 40, (Picture(10, 10, 40, 20, read_logo(SVG)),))
    placed = tuple(Placed(face, 60 * n, 0) for n in range(times))
    page = page_image(write_pdf([Sheet(180, 40, placed)], title="", creator=""), 72)
    assert [page.getpixel((60 * n + 30, 20)) for n in range(times)] == [0] * times


def test_a_picture_is_moved_with_its_face_and_has_the_ink_of_its_box() -> None:
    (moved,) = shifted([Picture(1, 2, 40, 30, read_logo(SVG))], 10, 20)
    assert moved == Picture(11, 22, 40, 30, read_logo(SVG))
    assert ink([moved]) == (11, 22, 51, 52)


def test_the_sample_is_black_alone() -> None:
    logo = read_logo((files("samples") / "wrack-line.svg").read_bytes())
    assert is_grey_only(page_of(logo))
    shades = page_image(page_of(logo), 600).histogram()
    assert shades[0] > 0.9 * sum(shades[:200])


REFUSED = {
    b"GIF89a": "this is no picture of a kind known here; give a PNG, JPEG, SVG or PDF file",
    b"": "this is no picture of a kind known here; give a PNG, JPEG, SVG or PDF file",
    b"%PDF-" + b" " * LARGEST: "it has 5,000,005 bytes; make it smaller: 5,000,000 at most",
}


@pytest.mark.parametrize(("data", "told"), REFUSED.items(), ids=range(len(REFUSED)))
def test_any_other_file_is_refused(data: bytes, told: str) -> None:
    with pytest.raises(BadLogo) as refusal:
        read_logo(data)
    assert str(refusal.value) == told
