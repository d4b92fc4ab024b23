"""A name that nothing has in, what may have been meant out, as words for a fault."""

from collections.abc import Iterable, Mapping
from functools import lru_cache

_LIKE = 0.6  # difflib's own cut-off: how much of both names must be the same
_NEAREST = 3
_LISTED = 30  # more than there are of anything but label sheets, which a command lists


def suggestion(found: str, known: Iterable[str] | Mapping[str, str], beyond: str = "") -> str:
    """Return `did you mean a or b?`, or where nothing is like it `write one of: …`.

    `known` are the names there are, or how each is shown, by what `found` is compared with.
    `beyond` is what may be written besides.
    """
    shown = known if isinstance(known, Mapping) else {name: name for name in known}
    near = _near(found, tuple(shown))
    names = list(dict.fromkeys(shown[name] for name in near))[:_NEAREST]
    if names:
        *first, last = (*names, beyond) if beyond else names
        return f"did you mean {' or '.join(filter(None, (', '.join(first), last)))}?"
    names = list(dict.fromkeys(shown.values()))
    if len(names) == 1 and not beyond:
        return f"write {names[0]!r}"
    cut = ", …" if len(names) > _LISTED else ""
    besides = f", or {beyond}" if beyond else ""
    return f"write one of: {', '.join(names[:_LISTED])}{cut}{besides}"


@lru_cache  # a table may have one slip in each of its rows
def _near(found: str, known: tuple[str, ...]) -> list[str]:
    from difflib import get_close_matches  # only a slip of the pen pays for it

    return get_close_matches(found, known, n=2 * _NEAREST, cutoff=_LIKE)
