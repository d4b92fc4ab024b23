"""What cannot be read of a stranger's file, and the libraries that may be missing for it."""

from importlib import import_module
from types import ModuleType


class Unreadable(ValueError):
    """A file that cannot be read; holds what was found and what to do instead."""

    def __init__(self, found: str, instead: str) -> None:
        self.found = found
        self.instead = instead
        super().__init__(f"{found}; {instead}")


def library(name: str, package: str) -> ModuleType:
    """Return a library that comes with an optional package; without it, say what to install."""
    try:
        return import_module(name)
    except ImportError:
        found = f"it cannot be read yet: {name} is not installed"
        raise Unreadable(found, f"write: pip install '{package}'") from None
