"""A person's TOML file and texts for one of its tables in; the file with them in it out."""

from collections.abc import Mapping

from msgspec import Struct

from tagend.cards.base.toml_edit import with_value
from tagend.cards.base.toml_file import read_toml
from tagend.layouts.base.faults import Fault, refuse_any


class Stored(Struct, frozen=True):
    """The file after it, and what is told of that: `[lap] blood = '8 in' (was '7 in')`."""

    data: bytes
    told: str


def stored(data: bytes, table: str, texts: Mapping[str, str], *, replace: bool) -> Stored:
    """Return the file with the texts set, of which all else stays as it is, byte for byte.

    Raises `Refused` where it says something else already, unless that may be replaced.
    """
    was = _others(read_toml(data).get(table), texts)
    if not replace:
        refuse_any(
            Fault(f"[{table}] {key}", f"was {old}, now {texts[key]!r}", "say --replace")
            for key, old in was.items()
        )
    for key in reversed(list(texts)):  # each new one goes first
        data = with_value(data, table, key, texts[key])
    told = (
        f"{key} = {text!r}" + (f" (was {was[key]})" if key in was else "")
        for key, text in texts.items()
    )
    return Stored(data, f"[{table}] {', '.join(told)}")


def _others(there: object, texts: Mapping[str, str]) -> dict[str, str]:
    """Return what the table says under these keys and is not their text, as it is told."""
    values = there if isinstance(there, Mapping) else {}
    return {key: _told(values[key]) for key in texts if key in values and values[key] != texts[key]}


def _told(value: object) -> str:
    if isinstance(value, Mapping):
        return " and ".join(f"{key} {_told(inner)}" for key, inner in value.items())
    return repr(value)
