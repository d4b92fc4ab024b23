"""TOML files: bytes in, tables out, or one fault with its line."""

import tomllib

from cards.errors import refused

LARGEST = 1_000_000  # bytes; a recipe has some hundred


def read_toml(data: bytes) -> dict[str, object]:
    """Return the tables of a TOML file; raises `Refused` when it is none."""
    if len(data) > LARGEST:
        raise refused("this file is too large", "give a TOML file of at most 1 MB")
    try:
        written = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("this is not a text file", "give a TOML file in UTF-8") from None
    if not written.strip():
        raise refused("this file is empty", "start from one that `tagend samples` writes")
    try:
        return tomllib.loads(written)
    except RecursionError:
        raise refused("this file is nested too deep", "write tables and texts only") from None
    except tomllib.TOMLDecodeError as error:
        raise _at_line(error) from None


def _at_line(error: tomllib.TOMLDecodeError) -> Exception:
    message, _, place = str(error).rpartition(" (at ")
    where = place.rstrip(")")
    instead = 'write keys as name = "text", and headings as [butt] or [[section]]'
    return refused(message[:1].lower() + message[1:], instead, where)
