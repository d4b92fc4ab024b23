"""The bytes of an SVG that was written here in, the bytes of a PNG of it out."""

from io import BytesIO

from tagend.layouts.base.faults import refused


def png_of(svg: bytes, dpi: int) -> bytes:
    """Return a picture of so many pixels to an inch, which says so itself: it prints true to size.

    Raises `Refused` without the library that draws it.
    """
    from PIL import Image

    try:
        from resvg_py import svg_to_bytes
    except ImportError:
        found = "no picture can be made yet: resvg_py is not installed"
        raise refused(found, "write: pip install 'tagend[logo]'") from None
    drawn = svg_to_bytes(svg_string=svg.decode(), dpi=dpi, skip_system_fonts=True)
    out = BytesIO()
    with Image.open(BytesIO(drawn), formats=["PNG"]) as picture:
        picture.convert("RGB").save(out, "PNG", dpi=(dpi, dpi))
    return out.getvalue()
