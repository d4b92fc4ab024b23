"""TOML files: bytes in, tables out, or one fault with its line."""

import tomli

from tagend.layouts.base.faults import Refused, refused

LARGEST = 1_000_000  # bytes; a recipe has some hundred
LONGEST = 3000  # characters in a line: Python reads no number of more than 4300 digits
DEEPEST = 20  # tables in tables; a shop file has five


def read_toml(data: bytes) -> dict[str, object]:
    """Return the tables of a TOML file; raises `Refused` when it is none."""
    if len(data) > LARGEST:
        raise refused("this file is too large", "give a TOML file of at most 1 MB")
    try:
        written = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("this is not a text file in UTF-8", "save it as UTF-8") from None
    if not written.strip():
        raise refused("this file is empty", "start from one that `tagend samples` writes")
    if len(written) > LONGEST:
        _check_lines(written)
    try:
        tables = tomli.loads(written)
        shallow = _is_shallow(tables, DEEPEST - 1)
    except RecursionError:
        shallow = False
    except tomli.TOMLDecodeError as error:
        from tagend.cards.base.toml_slips import slip  # most files have none

        raise Refused(slip(written, error)) from None
    if not shallow:
        raise refused("this file is nested too deep", "write tables and texts only")
    return tables


def _check_lines(written: str) -> None:
    for number, line in enumerate(written.split("\n"), start=1):
        if len(line) > LONGEST:
            found = f"this line has {len(line)} characters"
            raise refused(found, f"write at most {LONGEST} in a line", f"line {number}")


def _is_shallow(table: dict[str, object] | list[object], levels: int) -> bool:
    """Whether tables lie in so many levels, of which this is one; what they hold is one more."""
    items = table.values() if isinstance(table, dict) else table
    return levels > 0 and all(
        _is_shallow(item, levels - 1) for item in items if isinstance(item, (dict, list))
    )
