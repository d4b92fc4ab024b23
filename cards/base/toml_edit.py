"""A person's TOML file with values set; all else, comments too, stays as it was written."""

import json
import re
from collections.abc import Callable, Mapping

import tomli

from tagend.layouts.base.faults import refused

_BYTE_ORDER_MARK = "\ufeff"
_LONE_END = r"(?<!\r)\n"


def with_value(data: bytes, table: str, key: str, value: str | None) -> bytes:
    """Return the file with `key` under `[table]` set, or for None taken out.

    Raises `Refused` for what is no table.
    """
    return edited(data, lambda text: _set(text, table, key, value))


def with_keys(data: bytes, values: Mapping[str, str | None]) -> bytes:
    """Return the file with texts set outside of any table; one that is None is taken out."""

    def edit(text: str) -> str:
        import tomlkit

        document = tomlkit.parse(text)
        new = ""
        for key, value in values.items():
            if value is None:
                document.pop(key, None)
            elif key not in document:
                new += _line(key, value)
            elif document[key] != value:
                document[key] = value
        return new + tomlkit.dumps(document)  # new ones first, since at the end is a table's place

    return edited(data, edit)


def edited(data: bytes, edit: Callable[[str], str]) -> bytes:
    """Return a file after an edit of its text, with the byte order mark and line ends it had."""
    written = data.decode()
    text = written.removeprefix(_BYTE_ORDER_MARK)
    after = edit(text)
    if "\r\n" in text and not re.search(_LONE_END, text):
        after = re.sub(_LONE_END, "\r\n", after)  # which are those that came in
    return (written[: len(written) - len(text)] + after).encode()


def _set(text: str, table: str, key: str, value: str | None) -> str:
    import tomlkit
    from tomlkit.items import Table

    document = tomlkit.parse(text)
    home = document.get(table)
    if value is None:
        if isinstance(home, dict):
            home.pop(key, None)
        return tomlkit.dumps(document)
    if home is None:
        end = "" if text.endswith("\n") or not text else "\n"
        return f"{text}{end}\n[{table}]\n{_line(key, value)}"
    if not isinstance(home, Table):
        raise refused("this is not a table", f"write it as [{table}]", table)
    if key not in home:
        # At its end a comment may already speak of the next table, so it goes in first.
        heading = rf"""^[ \t]*\[[ \t]*["']?{re.escape(table)}["']?[ \t]*\][^\n]*\n"""
        for found in re.finditer(heading, text, re.MULTILINE):
            after = text[: found.end()] + _line(key, value) + text[found.end() :]
            if key in tomli.loads(after)[table]:  # else the heading was a line of some text
                return after
    home[key] = value
    return tomlkit.dumps(document)


def _line(key: str, value: str) -> str:
    # JSON's strings are TOML's too; a quoted key may hold any character.
    bare = re.fullmatch(r"[A-Za-z0-9_-]+", key)
    name = key if bare else json.dumps(key, ensure_ascii=False)
    return f"{name} = {json.dumps(value, ensure_ascii=False)}\n"
