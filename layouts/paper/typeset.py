"""A person's text in, the characters to set out: composed, with spaces, hyphens and fractions."""

import re
import unicodedata

# Spaces at which a line may be broken, and those that hold what stands beside them together.
BREAKING = "\t\n\v\f\r \x85\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2008\u2028\u2029\u3000"
HOLDING = "\u00a0\u2007\u2009\u200a\u202f"

_UNSEEN = "\u00ad\u200b\u200c\u200d\u200e\u200f\u2060\ufe0e\ufe0f\ufeff"

# What the fonts lack, written with what they have. Each pair looks alike and means the same.
_SIGNS = str.maketrans(
    dict.fromkeys(BREAKING + HOLDING, " ")
    | dict.fromkeys(_UNSEEN, "")
    | {"\u2010": "-", "\u2011": "-", "\u2012": "–", "\u2015": "—"}
    | {"⌀": "Ø", "∅": "Ø", "⅟": "¹⁄", "μ": "µ"}
)

_APOSTROPHE = re.compile(r"(?<=[^\W\d_])'")  # after a letter; after a number it means feet

# A fraction in one character or in small figures, and the whole number that it stands by.
_DRAWN = re.compile(r"([0-9] ?)?([¼½¾⅐-⅞]|[⁰¹²³⁴-⁹]+⁄[₀-₉]+)")


def prepare(text: str) -> str:
    """Return the text as it is to be set, fractions in figures of its own size: `1½` as 1 1/2.

    The small figures of fonts are half as high as what stands beside them, and 3/8 looks like 5/8.
    """
    signs = _APOSTROPHE.sub("’", unicodedata.normalize("NFC", text).translate(_SIGNS))
    return _DRAWN.sub(_fraction, signs)


def _fraction(drawn: re.Match[str]) -> str:
    whole, fraction = drawn.groups()
    plain = unicodedata.normalize("NFKC", fraction).replace("⁄", "/")
    return f"{whole.strip()} {plain}" if whole else plain
