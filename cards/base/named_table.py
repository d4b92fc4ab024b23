"""Named rows of a data file: its tables in, a table out that finds each row by its names."""

import os
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Generic, Protocol, TypeVar

import tomli
from msgspec import Struct

from tagend.cards.base.file_schema import Schema, TableReader, by
from tagend.cards.base.value_readers import list_of, plain_text, text_line
from tagend.layouts.base.faults import Fault, noting, refuse_any, refused, under
from tagend.layouts.base.near_names import suggestion

NAME_MOST = 30
SOURCE_MOST = 120

_CARDS = os.path.dirname(os.path.dirname(__file__))

_SIGNS = str.maketrans("-‐‑–_", "     ", "'’‘ʼ´`′")
_CODE = re.compile(r"[A-Z][A-Z0-9]{0,2}")


class Named(Protocol):
    """What a table needs to know of its rows."""

    @property
    def name(self) -> str: ...
    @property
    def also(self) -> tuple[str, ...]: ...
    @property
    def code(self) -> str: ...


R = TypeVar("R", bound=Named)


class RowReader(TableReader[R]):
    """Reads tables of one schema, each a row whose `name` is the table's heading."""

    def __init__(
        self, word: str, schema: Schema, laws: Callable[[R], Iterable[Fault]] = lambda _: ()
    ) -> None:
        """Take what a row is called, its schema, and what yields its keys' contradictions."""
        super().__init__(schema, given=("name",))
        self.word = word
        self.laws = laws


class NamedTable(Struct, Generic[R], frozen=True):
    """Rows in the order of their file, each under its names and its code."""

    word: str
    rows: tuple[R, ...]
    names: Mapping[str, R]  # by `plain_name`
    codes: Mapping[str, R]

    def __iter__(self) -> Iterator[R]:
        return iter(self.rows)

    def find(self, name: str) -> R:
        """Return the row called `name`; raises `Refused` with the nearest names.

        Capitals, spaces, hyphens, apostrophes and a last word "knot" make no difference.
        """
        row = self.names.get(name) or self.names.get(plain_name(name))
        if row is None:
            instead = suggestion(plain_name(name), {key: r.name for key, r in self.names.items()})
            raise refused(f"no {self.word} is called {name[:40]!r}", instead)
        return row

    def by_code(self, code: str) -> R:
        """Return the row with a label's code; raises `Refused` with the codes there are."""
        row = self.codes.get(code)
        if row is None:
            instead = f"the codes are: {', '.join(self.codes)}"
            raise refused(f"no {self.word} has the code {code[:10]!r}", instead)
        return row


def plain_name(name: str) -> str:
    """Return a name as tables compare it: `Surgeon’s  Loop` is `surgeons loop`."""
    words = " ".join(name.translate(_SIGNS).split()).casefold()
    return words.removesuffix(" knot")


def read_named_table(
    read: RowReader[R], ours: Mapping[str, object], own: Mapping[str, object]
) -> NamedTable[R]:
    """Return the rows of our file's tables with a person's own over them, key by key.

    Raises `Refused` with every fault of every table.
    """
    tables = {name: keys for name, keys in ours.items() if isinstance(keys, dict)}
    spelling = {plain_name(name): name for name in tables}
    own = {spelling.get(plain_name(name), name): keys for name, keys in own.items()}
    rows: list[R] = []
    faults: list[Fault] = []
    for name in dict.fromkeys((*tables, *own)):
        with noting(faults), under(name if name.isprintable() else repr(name)):
            rows.append(_row(read, name, tables.get(name, {}), own.get(name, {})))
    refuse_any(faults)
    # Own rows come last, so that a clash is told of the row that a person can change.
    return _under_names(read.word, rows, sorted(rows, key=lambda row: row.name in own))


def read_our_file(name: str) -> dict[str, object]:
    """Return the tables of a data file, by its path below `cards`: `practice/knots.toml`."""
    # Plainly opened: what importlib.resources imports takes longer than all our files to read.
    with open(os.path.join(_CARDS, name), "rb") as file:
        return tomli.load(file)


def _read_name(value: object) -> str:
    name = plain_text(value, NAME_MOST)
    if plain_name(name) in ("", "knot", "none"):
        raise refused(f"{name!r} cannot be a name", "choose one that tells it from the others")
    return name


def _read_code(value: object) -> str:
    if not isinstance(value, str) or not _CODE.fullmatch(value):
        raise refused(
            f"{str(value)[:40]!r} cannot be a code",
            "write 1 to 3 of A to Z and 0 to 9, a letter first",
        )
    return value


# The keys that every row has.
NAMING: Mapping[str, Schema] = {
    "name": by(_read_name),
    "code": by(_read_code),
    "also": by(list_of(_read_name, "name", 0, 9)),
    "source": by(list_of(text_line(SOURCE_MOST), "source", 0, 9)),
}


def _row(read: RowReader[R], name: str, ours: Mapping[str, object], own: object) -> R:
    if not isinstance(own, Mapping):
        raise refused("this is not a table", f'write its keys under [{read.word}s."{name}"]')
    if "name" in own:
        raise refused("the heading is the name", "leave this key out", "name")
    row = read({**ours, **own, "name": name})
    refuse_any(read.laws(row))
    return row


def _under_names(word: str, rows: Sequence[R], in_turn: Sequence[R]) -> NamedTable[R]:
    """Return the rows under their names, refusing one that takes a name or code of another."""
    names: dict[str, R] = {}
    codes: dict[str, R] = {}
    faults = []
    for row in in_turn:
        if codes.setdefault(row.code, row) is not row:
            found = f"{row.code!r} is the code of {codes[row.code].name}"
            faults.append(Fault(f"{row.name}, code", found, "choose another"))
        for name in (row.name, *row.also):
            owner = names.setdefault(plain_name(name), row)
            if owner is not row:
                found = f"{name!r} already means {owner.name}"
                faults.append(Fault(row.name, found, "choose another name"))
    refuse_any(faults)
    return NamedTable(word, tuple(rows), names, codes)
