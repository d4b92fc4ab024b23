"""One entry of a stock file in, its checked values out, or faults under their keys; names found."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from msgspec import Struct

from tagend.layouts.base.faults import Fault, Refused, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion
from tagend.layouts.paper.lengths import parse_length, parse_pair, parse_size
from tagend.layouts.stock.formats import AnyFormat, Paper, folded

Format = TypeVar("Format", bound=AnyFormat)

_MOST = 1000  # no label sheet has as many rows


class Entry(Struct, frozen=True):
    """The keys written under one name; what is asked of it and not usable raises `Refused`."""

    name: str
    values: Mapping[str, object]

    def allow(self, *keys: str) -> None:
        """Refuse every key but these."""
        strange = [key for key in self.values if key not in keys]
        refuse_any(Fault(key, "no such key", suggestion(key, keys)) for key in strange)

    def text(self, key: str) -> str:
        value = self.values.get(key)
        if value is None:
            raise refused("nothing is written", f"write its {key}", key)
        if not isinstance(value, str):
            raise refused(f"found {value!r}", "write text in quotes", key)
        return value

    def length(self, key: str, default: float) -> float:
        """Return points."""
        with under(key):
            return parse_length(self.values[key]) if key in self.values else default

    def pair(self, key: str, default: tuple[float, float]) -> tuple[float, float]:
        """Return points across and down."""
        with under(key):
            return parse_pair(self.values[key]) if key in self.values else default

    def size(self, papers: Mapping[str, Paper]) -> tuple[float, float]:
        """Return points across and down; the name of a paper stands for its size."""
        written = self.text("size")
        if (named := papers.get(folded(written))) is not None:
            return named.width, named.height
        with under("size"):
            return parse_size(written)

    def count(self, key: str) -> int:
        value = self.values.get(key, 1)
        if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= _MOST:
            raise refused(f"found {value!r}", f"write a whole number from 1 to {_MOST}", key)
        return value


def read_entry(name: str, value: object) -> Entry:
    """Return the entry of a name; text alone is its `size`."""
    if isinstance(value, str):
        return Entry(name, {"size": value})
    if not isinstance(value, Mapping):
        raise refused(f"found {value!r}", 'write a size, such as "210 x 297 mm"')
    return Entry(name, value)


def find(
    kind: str,
    name: str,
    known: Mapping[str, Format],
    of_size: Callable[[str, float, float], Format],
) -> Format:
    """Return what is known by a name, or made of a size; raises `Refused`."""
    if (found := known.get(folded(name))) is not None:
        return found
    try:
        return of_size(name, *parse_size(name))
    except Refused:
        names = {key: each.name for key, each in known.items()}
        instead = suggestion(folded(name), names, "a size with its unit, such as 85x54mm")
        raise refused(f"no {kind} is called {name!r}", instead) from None
