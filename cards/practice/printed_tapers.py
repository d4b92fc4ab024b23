"""Tapers in print: our file of them in, their diameters from the butt to the fly out."""

from functools import cache

from msgspec import Struct

from tagend.cards.base.file_schema import TableReader, by, table, tables
from tagend.cards.base.named_table import SOURCE_MOST, read_our_file
from tagend.cards.base.units import Diameter, parse_diameter
from tagend.cards.base.value_readers import list_of, text_line


class PrintedTaper(Struct, frozen=True):
    """The diameters of a leader in print, of one material, and where it is printed."""

    diameters: tuple[Diameter, ...]
    source: str


class _PrintedTapers(Struct, frozen=True):
    tapers: tuple[PrintedTaper, ...]


@cache
def printed_tapers() -> tuple[PrintedTaper, ...]:
    """Return the tapers of our file."""
    return _read(read_our_file("practice/printed_tapers.toml")).tapers


_TAPER = table(
    PrintedTaper,
    {
        "diameters": by(list_of(parse_diameter, "diameter", 2, 30)),
        "source": by(text_line(SOURCE_MOST)),
    },
)
_read: TableReader[_PrintedTapers] = TableReader(
    table(_PrintedTapers, {"taper": tables(_TAPER, 1, 99)})
)
