"""What a file holds in; out, the same with a checksum in it, or whether that still fits.

The checksum stands in a comment of the file's own format, and is taken with zeros in its place. By
it a file that tagend made and nobody changed is told from what would be lost if it were replaced.
"""

import hashlib
from io import BytesIO
from typing import Literal, TypeAlias

import tomli

Origin: TypeAlias = Literal["ours", "changed", "not ours"]

_DIGITS = 16
_WORD = b"tagend-sum "
_BLANK = _WORD + b"0" * _DIGITS
_IN_TOML = b"# %s: while this fits the rest, tagend may write this file anew\n"


def sealed(data: bytes) -> bytes:
    """Return a PDF, SVG, ZIP or TOML file with its checksum; anything else as it is."""
    blank = _with_place(data)
    return data if blank is None else _filled(blank, blank.rindex(_BLANK))


def origin(data: bytes) -> Origin:
    """Say whether a file was written by tagend, and whether it was changed since."""
    place = data.rfind(_WORD)
    if place < 0:
        return "not ours"
    return "ours" if _filled(data, place) == data else "changed"


def _filled(data: bytes, place: int) -> bytes:
    """Return the file with the right digits behind the word at this place."""
    filled = bytearray(data)
    digits = slice(place + len(_WORD), place + len(_BLANK))
    filled[digits] = b"0" * _DIGITS
    filled[digits] = hashlib.sha256(filled).hexdigest()[:_DIGITS].encode()
    return bytes(filled)


def _with_place(data: bytes) -> bytes | None:
    """Return the file with a place for its checksum, or None where it can hold no comment."""
    if data.startswith(b"%PDF-"):
        # Behind all that the table of objects points at, so that nothing it says moves.
        before, word, after = data.rpartition(b"startxref")
        return b"".join((before, b"%", _BLANK, b"\n", word, after))  # a run's PDF is large
    if data.startswith((b"<?xml", b"<svg")):
        return data + b"<!-- " + _BLANK + b" -->\n"
    if data.startswith(b"PK\x03\x04"):
        return _commented(data)
    return data + _IN_TOML % _BLANK if _is_toml(data) else None


def _commented(data: bytes) -> bytes:
    from zipfile import ZipFile

    file = BytesIO(data)
    with ZipFile(file, "a") as archive:
        archive.comment = _BLANK
    return file.getvalue()


def _is_toml(data: bytes) -> bool:
    try:
        tomli.loads(data.decode())
    except ValueError:  # no text, or no TOML
        return False
    return True
