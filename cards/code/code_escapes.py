"""Names and notes in the characters of a code: any text in, capitals and signs out, and back."""

import re
import unicodedata
from collections.abc import Iterator
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
_LETTERS = {"A": "æ", "D": "đ", "E": "œ", "L": "ł", "O": "ø", "T": "þ"}
_SIGNS = {
    ".": ",",
    "/": ":",
    "-": "–",
    "*": "’",
    "+": "+",
    "$": "$",
    "%": "%",
    "C": ")",
    "F": ";",
    "G": "°",
    "H": "#",
    "I": "ı",
    "N": "&",
    "P": "(",
    "Q": "?",
    "R": "*",
    "S": "ß",
    "V": "¼",
    "W": "¾",
    "X": "!",
    "Y": '"',
    "Z": "½",
}
_BARE = {char: char for char in "0123456789 ./-"} | {"*": "'"}  # a star looks like an apostrophe

_FLIP = "+"  # before a letter: a capital instead of a small one, or the other way round
_CAPITALS = "++"  # before a text: every letter is a capital, not only the first

_MARK_WRITTEN = {char: f"${code}" for code, char in _MARKS.items()}
_SIGN_WRITTEN = (
    {char: code for code, char in _BARE.items()}
    | {char: f"${code}" for code, char in _SIGNS.items()}
    | _MARK_WRITTEN
)
_LETTER_WRITTEN = {char: f"${code}" for code, char in _LETTERS.items()}
_TOKEN = re.compile(
    r"(?P<flip>\+?)(?:(?P<letter>[A-Z])|\$(?P<special>[ADELOT]))"
    r"|\$(?P<mark>[0-9BJKM])|\$(?P<sign>[-./*+$%CFGHINPQRSVWXYZ])"
    r"|\$U(?P<units>(?:[0-9A-F]{4})+)/|(?P<bare>[0-9 ./*-])"
)


class _Piece(NamedTuple):
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


def _pieces(text: str) -> Iterator[_Piece]:
    """Yield a piece for each character, and one for each run that has to be numbered."""
    numbered = ""
    for before, char in zip(f"\0{text}", text, strict=False):
        # Of spaces that a person copies only one is sure to arrive.
        piece = None if before == char == " " else _piece(char)
        if piece is None:
            numbered += char
            continue
        if numbered:
            yield _numbered(numbered)
            numbered = ""
        yield piece
    if numbered:
        yield _numbered(numbered)


def _piece(char: str) -> _Piece | None:
    if char in _SIGN_WRITTEN:
        return _Piece(_SIGN_WRITTEN[char], None)
    letter, *marks = tuple(unicodedata.normalize("NFD", char))
    small = letter.lower()
    base = letter.upper() if letter.isascii() else _LETTER_WRITTEN.get(small)
    if base is None or not letter.isalpha() or not _MARK_WRITTEN.keys() >= {*marks}:
        return None
    return _Piece(base + "".join(_MARK_WRITTEN[mark] for mark in marks), letter != small)


def _numbered(run: str) -> _Piece:
    return _Piece(f"$U{run.encode('utf-16-be').hex().upper()}/", None)


def _flipped(pieces: list[_Piece], usual: bool) -> str:
    return "".join(
        written if capital in (None, usual) else _FLIP + written for written, capital in pieces
    )


def _unescaped(token: re.Match[str], cursor: Cursor, *, capital: bool) -> str:
    match token.lastgroup:
        case "letter" | "special":
            letter = token["letter"] or _LETTERS[token["special"]]
            return letter.upper() if capital != bool(token["flip"]) else letter.lower()
        case "mark":
            return _MARKS[token["mark"]]
        case "sign":
            return _SIGNS[token["sign"]]
        case "units":
            return _utf_16(token, cursor)
    return _BARE[token["bare"]]


def _utf_16(token: re.Match[str], cursor: Cursor) -> str:
    try:
        return bytes.fromhex(token["units"]).decode("utf-16-be")
    except UnicodeDecodeError:
        found = f"{token[0][:12]!r} numbers no character"
        raise cursor.fault(found, COMPARE, token.start()) from None
