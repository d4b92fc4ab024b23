"""The bytes of a picture's file in, the picture out: bounded, and on white paper."""

import warnings
from io import BytesIO
from typing import TYPE_CHECKING

from tagend.layouts.strangers.unreadable import Unreadable

if TYPE_CHECKING:
    from PIL import Image


def opened(data: bytes, formats: list[str], most_pixels: int, instead: str) -> "Image.Image":
    """Return a picture of which no more than its head is read yet. Raises `Unreadable`."""
    from PIL import Image

    # Pillow has limits of its own: what it warns of is over ours, and told in our words.
    with warnings.catch_warnings(action="ignore", category=Image.DecompressionBombWarning):
        try:
            picture = Image.open(BytesIO(data), formats=formats)
        except Image.DecompressionBombError:
            raise Unreadable(f"it has more than {most_pixels:,} pixels", instead) from None
    if picture.width * picture.height > most_pixels:
        raise Unreadable(f"it has {picture.width} × {picture.height} pixels", instead)
    return picture


def on_white(picture: "Image.Image", mode: str) -> "Image.Image":
    """Return a picture in a mode of Pillow's, white where it is clear."""
    from PIL import Image

    if not picture.has_transparency_data:
        return picture.convert(mode)
    layer = picture.convert("RGBA")
    white = Image.new(mode, picture.size, "white")
    return Image.composite(layer.convert(mode), white, layer.getchannel("A"))
