"""The bytes of a logo's file in, the logo out."""

from tagend.layouts.logo.logo import BadLogo, Logo
from tagend.layouts.logo.logo_page import read_page
from tagend.layouts.logo.logo_pixels import read_pixels
from tagend.layouts.logo.logo_svg import read_svg

LARGEST = 5_000_000  # bytes


def read_logo(data: bytes) -> Logo:
    """Return the logo that a PNG, JPEG, SVG or PDF file shows; the kind is told from its bytes.

    It keeps its proportions and colours, and is meant for white paper. Raises BadLogo.
    """
    if len(data) > LARGEST:
        raise BadLogo(f"it has {len(data):,} bytes", f"make it smaller: {LARGEST:,} at most")
    if data.startswith((b"\x89PNG", b"\xff\xd8\xff")):
        return read_pixels(data)
    if data.startswith(b"%PDF-"):
        return read_page(data)
    if data.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"<"):
        return read_svg(data)
    raise BadLogo("this is no picture of a kind known here", "give a PNG, JPEG, SVG or PDF file")
