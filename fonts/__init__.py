"""Fonts: found, checked for coverage, measured and registered. They come as dependencies."""

from fonts.coverage import NoGlyph, Run, runs, text_width
from fonts.faces import ASCENT, CAP_HEIGHT, DESCENT, X_HEIGHT, register
from fonts.files import FontMissing, Weight

__all__ = [
    "ASCENT",
    "CAP_HEIGHT",
    "DESCENT",
    "X_HEIGHT",
    "FontMissing",
    "NoGlyph",
    "Run",
    "Weight",
    "register",
    "runs",
    "text_width",
]
