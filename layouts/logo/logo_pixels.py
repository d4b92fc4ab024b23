"""The bytes of a PNG or JPEG file in, a logo of grey or RGB pixels out."""

import warnings
from io import BytesIO
from typing import TYPE_CHECKING

from tagend.layouts.logo.logo import BadLogo, Logo, Object, drawn, stream

if TYPE_CHECKING:
    from PIL import Image

MOST_PIXELS = 20_000_000
LONGEST_SIDE = 1600  # pixels that are kept: at 600 dpi they print 68 mm

_FAINTEST = 250  # of 255; what is no darker than this shows as bare paper


def read_pixels(data: bytes) -> Logo:
    """Return what a picture shows on white paper. Raises BadLogo."""
    from PIL import Image

    # Pillow has limits of its own: what it warns of is over ours, and told in our words.
    with warnings.catch_warnings(action="ignore", category=Image.DecompressionBombWarning):
        try:
            picture = Image.open(BytesIO(data), formats=["PNG", "JPEG"])
        except Image.DecompressionBombError:
            raise _too_large(f"more than {MOST_PIXELS:,}") from None
        except Exception as fault:  # whatever the library meets in a stranger's bytes
            raise _damaged() from fault
    if picture.width * picture.height > MOST_PIXELS:
        raise _too_large(f"{picture.width} × {picture.height}")
    try:
        shown = _without_colour(_on_white(picture))
    except Exception as fault:
        raise _damaged() from fault
    if min(shown.convert("L").tobytes()) >= _FAINTEST:
        raise BadLogo("it is all white", "give a version that is dark on white paper")
    shown.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    operators = f"{shown.width} 0 0 {shown.height} 0 0 cm /Image Do"
    return drawn(shown.width, shown.height, operators.encode(), _image(shown))


def _on_white(picture: "Image.Image") -> "Image.Image":
    from PIL import Image, ImageOps

    picture = ImageOps.exif_transpose(picture)
    if picture.mode.startswith("I"):  # 16 bits of grey, of which the conversion keeps the lower
        picture = picture.point(lambda value: value / 256)
    if not picture.has_transparency_data:
        return picture.convert("L" if picture.mode in ("1", "L", "I") else "RGB")
    layer = picture.convert("RGBA")
    white = Image.new("RGB", picture.size, "white")
    return Image.composite(layer.convert("RGB"), white, layer.getchannel("A"))


def _without_colour(picture: "Image.Image") -> "Image.Image":
    """Return a picture that has no colour as grey, so that a printer takes black alone for it."""
    channels = picture.split()
    if len({channel.tobytes() for channel in channels}) == 1:
        return channels[0]
    return picture


def _image(picture: "Image.Image") -> Object:
    entries: dict[str, Object] = {
        "Type": (b"/XObject",),
        "Subtype": (b"/Image",),
        "Width": (b"%d" % picture.width,),
        "Height": (b"%d" % picture.height,),
        "ColorSpace": (b"/DeviceGray" if picture.mode == "L" else b"/DeviceRGB",),
        "BitsPerComponent": (b"8",),
    }
    return stream(entries, picture.tobytes())


def _too_large(found: str) -> BadLogo:
    return BadLogo(f"it has {found} pixels", f"make it smaller: {LONGEST_SIDE} a side are plenty")


def _damaged() -> BadLogo:
    return BadLogo("this picture is damaged or cut off", "save it again")
