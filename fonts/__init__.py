"""Fonts: found, checked for coverage, measured and registered. They come as dependencies."""

from tagend.fonts.coverage import NoGlyph, Run, runs, text_width
from tagend.fonts.faces import ASCENT, CAP_HEIGHT, DESCENT, X_HEIGHT, register
from tagend.fonts.files import FontMissing
from tagend.fonts.fonts import OURS, Chain, Fonts, fonts_with

__all__ = [
    "ASCENT",
    "CAP_HEIGHT",
    "DESCENT",
    "OURS",
    "X_HEIGHT",
    "Chain",
    "FontMissing",
    "Fonts",
    "NoGlyph",
    "Run",
    "fonts_with",
    "register",
    "runs",
    "text_width",
]
