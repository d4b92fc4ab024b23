"""Names and notes in the characters of a code: any text in, capitals and signs out, and back."""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from itertools import groupby, pairwise
from string import ascii_uppercase
from typing import NamedTuple

from tagend.cards.code.cursor import COMPARE, Cursor

# Each escape is `$` and one character. These put a mark on the letter before them, so that
# CAFE$1 still reads; the commonest marks have the digits.
_MARKS = {
    "1": "\N{COMBINING ACUTE ACCENT}",
    "2": "\N{COMBINING GRAVE ACCENT}",
    "3": "\N{COMBINING CIRCUMFLEX ACCENT}",
    "4": "\N{COMBINING DIAERESIS}",
    "5": "\N{COMBINING TILDE}",
    "6": "\N{COMBINING CARON}",
    "7": "\N{COMBINING RING ABOVE}",
    "8": "\N{COMBINING CEDILLA}",
    "9": "\N{COMBINING OGONEK}",
    "0": "\N{COMBINING DOT ABOVE}",
    "B": "\N{COMBINING BREVE}",
    "J": "\N{COMBINING DOUBLE ACUTE ACCENT}",
    "K": "\N{COMBINING COMMA BELOW}",
    "M": "\N{COMBINING MACRON}",
}
_SIGNS = dict(
    zip(
        "./-*+$%CFGHINPQRSVWXYZ",
        ',:–’+$%);°#ı&(?*ß¼¾!"½',
        strict=True,
    )
)
_BARE = "0123456789 ./-"

# What is written, and the small letter, or the sign or mark, that it means.
_LETTER = {char: char.lower() for char in ascii_uppercase} | {
    f"${code}": char for code, char in zip("ADELOT", "æđœłøþ", strict=True)
}
_SIGN = (
    {char: char for char in _BARE}
    | {"*": "'"}  # a star looks like an apostrophe
    | {f"${code}": char for code, char in (_SIGNS | _MARKS).items()}
)
_LETTER_WRITTEN = {char: written for written, char in _LETTER.items()}
_SIGN_WRITTEN = {char: written for written, char in _SIGN.items()}

_FLIP = "+"  # before a letter: a capital instead of a small one, or the other way round
_CAPITALS = "++"  # before a text: every letter is a capital, not only the first


def _any_of(written: Iterable[str]) -> str:
    one, two = ("".join(re.escape(w[-1]) for w in written if len(w) == long) for long in (1, 2))
    return rf"[{one}]|\$[{two}]"


_TOKEN = re.compile(
    rf"(?P<flip>\+?)(?P<letter>{_any_of(_LETTER)})"
    rf"|(?P<sign>{_any_of(_SIGN)})|\$U(?P<units>(?:[0-9A-F]{{4}})+)/"
)


class _Escaped(NamedTuple):
    written: str
    capital: bool | None  # None: what is written is no letter, or one without a case


def escape(text: str, *, capital: bool = True) -> str:
    """Return the text in capitals, digits and signs.

    A letter is small unless it is marked; `capital` says that the first of the text is not. A text
    that is shorter so is written with all letters capital unless they are marked.
    """
    pieces = list(_pieces(text))
    usual = _flipped(pieces[:1], capital) + _flipped(pieces[1:], False)
    return min(usual, _CAPITALS + _flipped(pieces, True), key=len)


def unescape(cursor: Cursor, *, capital: bool = True) -> str:
    """Return the text that the rest of the cursor writes, in composed form (NFC).

    Raises `Refused` at the character that writes nothing. The grammar, each line an alternative:

        text  = ["++"] {token}
        token = ["+"] (A-Z | "$" one of ADELOT)      a letter; + changes its case
                "$" one of 0-9 BJKM                  a mark on the letter before
                "$" a sign or another letter         a sign
                "$U" {four of 0-9 A-F} "/"           any characters, in UTF-16
                0-9, space, ".", "/", "-"            themselves
                "*"                                  an apostrophe
    """
    capitals = cursor.takes(_CAPITALS)
    chars: list[str] = []
    while cursor:
        token = cursor.take(_TOKEN)
        if token is None:
            raise cursor.fault(f"{cursor.rest[:2]!r} writes nothing", COMPARE)
        chars.append(_unescaped(token, cursor, capital=capitals or (capital and not chars)))
    return unicodedata.normalize("NFC", "".join(chars))


def _pieces(text: str) -> Iterator[_Escaped]:
    """Yield a piece for each character, and one for each run that has to be numbered."""
    # Of spaces that a person copies only one is sure to arrive.
    written = [
        (char, None if before == char == " " else _piece(char))
        for before, char in pairwise(f"\0{text}")
    ]
    for numbered, run in groupby(written, lambda pair: pair[1] is None):
        if numbered:
            units = "".join(char for char, _ in run).encode("utf-16-be")
            yield _Escaped(f"$U{units.hex().upper()}/", None)
        else:
            yield from (piece for _, piece in run if piece)


def _piece(char: str) -> _Escaped | None:
    """Return a character as written, or None where it has to be numbered."""
    if char in _SIGN_WRITTEN:
        return _Escaped(_SIGN_WRITTEN[char], None)
    letter, *marks = tuple(unicodedata.normalize("NFD", char))
    small = letter.lower()
    if small not in _LETTER_WRITTEN or not _SIGN_WRITTEN.keys() >= {*marks}:
        return None
    written = _LETTER_WRITTEN[small] + "".join(_SIGN_WRITTEN[mark] for mark in marks)
    return _Escaped(written, letter != small)


def _flipped(pieces: list[_Escaped], usual: bool) -> str:
    return "".join(
        written if capital in (None, usual) else _FLIP + written for written, capital in pieces
    )


def _unescaped(token: re.Match[str], cursor: Cursor, *, capital: bool) -> str:
    if token["letter"]:
        letter = _LETTER[token["letter"]]
        return letter.upper() if capital != bool(token["flip"]) else letter
    if token["sign"]:
        return _SIGN[token["sign"]]
    try:
        return bytes.fromhex(token["units"]).decode("utf-16-be")
    except UnicodeDecodeError:
        found = f"{token[0][:12]!r} numbers no character"
        raise cursor.fault(found, COMPARE, token.start()) from None
