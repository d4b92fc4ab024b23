"""Pictures for tests: a code's text or a PDF in, what a camera would see of it out."""

from io import BytesIO

import pypdfium2
from PIL import Image, ImageChops

from tagend.layouts.codes.code import QUIET, symbol

_SQUARE = 4


def code_picture(text: str, module: int = 4) -> Image.Image:
    """Return a code and its quiet zone, `module` pixels to a module."""
    made = symbol(text)
    picture = Image.new("L", (made.side + 2 * QUIET,) * 2, 255)
    for y, row in enumerate(made.rows):
        for x, dark in enumerate(row):
            picture.putpixel((x + QUIET, y + QUIET), 0 if dark else 255)
    return picture.resize((picture.width * module,) * 2, Image.Resampling.NEAREST)


def beside(*pictures: Image.Image) -> Image.Image:
    """Return pictures side by side on a grey table."""
    height = max(picture.height for picture in pictures)
    table = Image.new("L", (sum(p.width + 40 for p in pictures), height + 40), 160)
    at = 20
    for picture in pictures:
        table.paste(picture, (at, 20))
        at += picture.width + 40
    return table


def pages(pdf: bytes, dpi: int = 300) -> list[Image.Image]:
    """Return the pages of a PDF as a printer would set them."""
    return [
        page.render(scale=dpi / 72, grayscale=True).to_pil() for page in pypdfium2.PdfDocument(pdf)
    ]


def file_of(picture: Image.Image, kind: str = "PNG") -> bytes:
    """Return the bytes of a picture's file; kind `PDF` is a scanner's."""
    out = BytesIO()
    picture.save(out, kind)
    return out.getvalue()


def differ(one: Image.Image, other: Image.Image) -> int:
    """Return how much two pictures differ where they differ most, from 0 to 255.

    Squares of `_SQUARE` pixels are compared, which levels the soft edges of lines.
    """
    if one.size != other.size:
        return 255
    greys = (picture.convert("L").reduce(_SQUARE) for picture in (one, other))
    counts = ImageChops.difference(*greys).histogram()
    return max(grey for grey, count in enumerate(counts) if count)
