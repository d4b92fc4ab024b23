"""A name or a size in, the format of that name or size out, or the names that are like it."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.base.near_names import suggestion
from tagend.layouts.paper.lengths import parse_size
from tagend.layouts.stock.formats import AnyFormat, folded

Format = TypeVar("Format", bound=AnyFormat)


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
