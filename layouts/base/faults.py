"""What a person wrote and the tool cannot use: where it stands, what was found, what to write."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import NamedTuple


class Fault(NamedTuple):
    """One thing to put right.

    `where` is the key and section, empty for the whole input; `instead` is empty where what was
    found already says what to do.
    """

    where: str
    found: str
    instead: str

    def __str__(self) -> str:
        place = f"{self.where}: " if self.where else ""
        line = f"{place}{self.found}" + (f"; {self.instead}" if self.instead else "")
        return one_line(line)


def one_line(text: str) -> str:
    """Return a text as one line, whatever the names of files in it hold."""
    return text.replace("\n", "\\n")


TOLD = 20  # faults, a screen of them


class Refused(ValueError):
    """The input cannot be used; holds every fault found, so that all can be mended in one go."""

    def __init__(self, *faults: Fault) -> None:
        self.faults = faults
        super().__init__()

    def __str__(self) -> str:
        """Return the first faults, a line each, and how many more there are."""
        more = len(self.faults) - TOLD
        beyond = [f"and {more:,} more"] if more > 0 else []
        return "\n".join([*map(str, self.faults[:TOLD]), *beyond])


def refused(found: str, instead: str, where: str = "") -> Refused:
    """Return the refusal of one fault."""
    return Refused(Fault(where, found, instead))


def refuse_any(faults: Iterable[Fault]) -> None:
    """Raise `Refused` with these faults, if there are any."""
    if all_of_them := tuple(faults):
        raise Refused(*all_of_them)


def below(place: str, fault: Fault, mark: str = ", ") -> Fault:
    """Return the fault with the place that holds it written first."""
    return fault._replace(where=mark.join(filter(None, (place, fault.where))))


@contextmanager
def under(place: str, mark: str = ", ") -> Iterator[None]:
    """Write the place before every fault that is found inside."""
    try:
        yield
    except Refused as error:
        raise Refused(*(below(place, fault, mark) for fault in error.faults)) from None


@contextmanager
def noting(faults: list[Fault]) -> Iterator[None]:
    """Add the faults that are found inside to a list, and go on behind, so that all are told."""
    try:
        yield
    except Refused as error:
        faults += error.faults
