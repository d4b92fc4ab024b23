"""A picture in, the same out as greys of black ink where it has no colour."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

_GREY = 8  # of 255; colours that lie no farther apart are a grey with a rounding of its own
_PRESS_BLACK = 32  # of 255, about: how pdfium shows the full black of a press (CMYK), …
_PRESS_GREY = 5  # … and how far the colours of such greys lie apart


def without_colour(picture: "Image.Image") -> "Image.Image":
    """Return greys as grey, so that a printer takes black alone for them."""
    return picture.convert("L") if _spread(picture) <= _GREY else picture


def press_black(picture: "Image.Image") -> "Image.Image":
    """Return a page drawn in a press's black as greys of full black."""
    if not 0 < _spread(picture) <= _PRESS_GREY:
        return picture
    span = 255 - _PRESS_BLACK
    return picture.convert("L").point(lambda value: max(value - _PRESS_BLACK, 0) * 255 / span)


def _spread(picture: "Image.Image") -> int:
    """Return how far the colours of a pixel lie apart at most, of 255."""
    from PIL import ImageChops

    first, *others = picture.split()
    counted = [ImageChops.difference(first, other).histogram() for other in others]
    return max((by for counts in counted for by, count in enumerate(counts) if count), default=0)
