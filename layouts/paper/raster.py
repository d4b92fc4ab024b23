"""A raster: rows of black, grey or coloured pixels, as they are stored in a PDF."""

from typing import Literal, TypeAlias

from msgspec import Struct

Bits: TypeAlias = Literal[1, 8, 24]


class Raster(Struct, frozen=True):
    """A picture on white paper; its proportion is that of its pixels."""

    width: int  # pixels
    height: int
    bits: Bits  # a pixel: black or white, grey, or red, green and blue
    packed: bytes  # the rows from the top, each from a whole byte on, compressed as by zlib

    def within(self, width: float, height: float) -> tuple[float, float]:
        """Return the largest width and height, in its proportion, that a box holds."""
        factor = min(width / self.width, height / self.height)
        return factor * self.width, factor * self.height
