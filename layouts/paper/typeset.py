"""A person's text in, the characters to set out: composed, with spaces, hyphens and fractions."""

import re
import unicodedata

GAP = "\u200a"  # in prepared text only: room between a whole number and its fraction
GAP_WIDTH = 0.1  # em; without it 1⅞ reads as 17/8

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

_COARSE = {"1/2": "½", "1/3": "⅓", "2/3": "⅔", "1/4": "¼", "3/4": "¾"}
_EIGHTHS = {"1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"}
_APOSTROPHE = re.compile(r"(?<=[^\W\d_])'")  # after a letter; after a number it means feet

_READY = _COARSE | _EIGHTHS
_SUPERSCRIPT = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_SUBSCRIPT = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")

# The divisions of a rule and the thirds. Any other pair is more likely a date or a ratio.
_DENOMINATORS = {2, 3, 4, 8, 16, 32, 64}
_PLAIN = re.compile(r"(?<![\w/.,⁄])([1-9][0-9]?)/([1-9][0-9]?)(?![0-9/⁄]|[.,][0-9])")
_MIXED = re.compile(r"(?<![\w/.,-])([0-9]+)[ -]?(?=[¼½¾⅐-⅞]|[⁰¹²³⁴-⁹]+⁄)")


def prepare(text: str) -> str:
    """Return the text as it is to be set: `1 1/2` as 1½ and `5/16` as ⁵⁄₁₆, with GAP within 1½."""
    signs = _APOSTROPHE.sub("’", unicodedata.normalize("NFC", text).translate(_SIGNS))
    return _MIXED.sub(rf"\1{GAP}", _PLAIN.sub(_fraction, signs))


def _fraction(plain: re.Match[str]) -> str:
    above, below = plain.groups()
    if int(below) not in _DENOMINATORS or int(above) >= int(below):
        return plain[0]
    drawn = f"{above.translate(_SUPERSCRIPT)}⁄{below.translate(_SUBSCRIPT)}"
    return _READY.get(plain[0], drawn)
