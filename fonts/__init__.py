"""Fonts: found, checked for coverage, measured and registered. They come as dependencies."""

from tagend.fonts.coverage import NoGlyph, Run, runs, text_width
from tagend.fonts.faces import ASCENT, CAP_HEIGHT, DESCENT, X_HEIGHT, register
from tagend.fonts.files import FontMissing, Weight
from tagend.fonts.own import chain, own_font

__all__ = [
    "ASCENT",
    "CAP_HEIGHT",
    "DESCENT",
    "X_HEIGHT",
    "FontMissing",
    "NoGlyph",
    "Run",
    "Weight",
    "chain",
    "own_font",
    "register",
    "runs",
    "text_width",
]
