"""One entry of a stock file: its table in, its checked values out, its faults in words."""

from collections.abc import Mapping
from typing import NamedTuple

from tagend.layouts.base.faults import Fault, Refused
from tagend.layouts.paper.lengths import parse_length, parse_pair

_MOST = 1000  # no label sheet has as many rows


class Entry(NamedTuple):
    """The keys written under one name; what is asked of it and not usable raises `Refused`."""

    name: str
    where: str
    values: Mapping[str, object]

    def fault(self, key: str, found: str, instead: str) -> Fault:
        return Fault(f"{self.where}, {key}", found, instead)

    def allow(self, *keys: str) -> None:
        """Refuse every key but these."""
        instead = "write one of: " + ", ".join(keys)
        strange = [key for key in self.values if key not in keys]
        if strange:
            raise Refused(*(self.fault(key, "no such key", instead) for key in strange))

    def text(self, key: str) -> str:
        value = self.values.get(key)
        if value is None:
            raise Refused(self.fault(key, "nothing is written", f"write its {key}"))
        if not isinstance(value, str):
            raise Refused(self.fault(key, f"found {value!r}", "write text in quotes"))
        return value

    def length(self, key: str, default: float) -> float:
        """Return points."""
        if key not in self.values:
            return default
        text = self.text(key)
        try:
            return parse_length(text)
        except ValueError as error:
            instead = 'write a length with its unit, such as "3/16 in" or "1.5 mm"'
            raise Refused(self.fault(key, str(error), instead)) from None

    def pair(self, key: str, default: tuple[float, float]) -> tuple[float, float]:
        """Return points across and down."""
        if key not in self.values:
            return default
        text = self.text(key)
        try:
            return parse_pair(text)
        except ValueError as error:
            instead = 'write two lengths with their unit, such as "63.5 x 38.1 mm"'
            raise Refused(self.fault(key, str(error), instead)) from None

    def count(self, key: str) -> int:
        value = self.values.get(key, 1)
        if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= _MOST:
            instead = f"write a whole number from 1 to {_MOST}"
            raise Refused(self.fault(key, f"found {value!r}", instead))
        return value


def read_entry(group: str, name: str, value: object) -> Entry:
    """Return the entry of a name; text alone is its `size`."""
    where = f"{group} {name!r}"
    if isinstance(value, str):
        return Entry(name, where, {"size": value})
    if not isinstance(value, Mapping):
        raise Refused(Fault(where, f"found {value!r}", 'write a size, such as "210 x 297 mm"'))
    return Entry(name, where, value)
