"""A person's TOML file with values set; all else, comments too, stays as it was written."""

import json
import re

from tagend.layouts.base.faults import refused


def with_value(data: bytes, table: str, key: str, value: str) -> bytes:
    """Return the file with `key` under `[table]` set; raises `Refused` for what is no table."""
    import tomlkit
    from tomlkit.items import Table

    text = data.decode("utf-8-sig")
    document = tomlkit.parse(text)
    home = document.get(table)
    if home is None:
        end = "" if text.endswith("\n") or not text else "\n"
        return f"{text}{end}\n[{table}]\n{_line(key, value)}".encode()
    if not isinstance(home, Table):
        raise refused("this is not a table", f"write it as [{table}]", table)
    heading = re.search(rf"^[ \t]*\[{re.escape(table)}\][^\n]*\n", text, re.MULTILINE)
    if key not in home and heading is not None:
        # At its end a comment may already speak of the next table, so it goes in first.
        return (text[: heading.end()] + _line(key, value) + text[heading.end() :]).encode()
    home[key] = value
    return tomlkit.dumps(document).encode()


def _line(key: str, value: str) -> str:
    # JSON's strings are TOML's too; a quoted key may hold any character.
    bare = re.fullmatch(r"[A-Za-z0-9_-]+", key)
    name = key if bare else json.dumps(key, ensure_ascii=False)
    return f"{name} = {json.dumps(value, ensure_ascii=False)}\n"
