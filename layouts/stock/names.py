"""Names of stock as people type them: folded for looking up, and the nearest ones known."""

from collections.abc import Iterable

_MOST = 12  # names in one message


def folded(name: str) -> str:
    """Return a name without what doesn't matter in it: capitals, blanks, hyphens."""
    return "".join(name.casefold().replace("-", " ").replace("_", " ").split())


def nearest(found: str, known: Iterable[str]) -> tuple[str, ...]:
    """Return the known names most like the one found, the nearest first."""
    from difflib import get_close_matches  # only a slip of the pen pays for it

    names = {folded(name): name for name in known}
    return tuple(names[near] for near in get_close_matches(folded(found), names, n=4))


def listed(names: Iterable[str]) -> str:
    """Return names as words, the first dozen when they are more."""
    shown = list(names)
    return ", ".join(shown[:_MOST]) + (", …" if len(shown) > _MOST else "")
