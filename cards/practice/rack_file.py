"""A rack file: the spools on a person's bench; TOML in, checked spools out."""

import re
from datetime import date

from cfractions import Fraction
from msgspec import Struct

from tagend.cards.base.file_schema import TableReader, by, table, tables
from tagend.cards.base.toml_file import read_toml
from tagend.cards.base.units import Diameter, Length, Strength, parse_line_length
from tagend.cards.base.value_readers import text_line
from tagend.cards.recipe.values import DATE, DIAMETER, MATERIAL, STRENGTH
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.layouts.base.faults import refused
from tagend.layouts.base.quantities import LENGTH_MM

SPOOLS_MOST = 500


class Spool(Struct, frozen=True):
    """One spool of line and what is left on it."""

    label: str  # what the person calls it
    material: str  # a name in the materials file
    diameter: Diameter
    left: Length
    strength: Strength | None = None
    lot: str | None = None
    bought: date | None = None


class Rack(Struct, frozen=True):
    """The spools in the order of their file, each with a label of its own."""

    spools: tuple[Spool, ...]


def read_rack(data: bytes, words: Vocabulary) -> Rack:
    """Return the spools of a rack file; raises `Refused` with every fault in it."""
    return rack_of(read_toml(data), words)


def rack_of(tables: object, words: Vocabulary) -> Rack:
    """Return the spools of a rack file's tables; raises `Refused` with every fault in them."""
    rack = _read(tables, words)
    seen: set[str] = set()
    for place, spool in enumerate(rack.spools, start=1):
        if spool.label in seen:
            raise refused(
                f"two spools are called {spool.label!r}",
                "give each spool a label of its own",
                f"spool {place}, label",
            )
        seen.add(spool.label)
    return rack


def read_left(written: object) -> Length:
    """Read what is left on a spool; one that is used up may say `0 yd`."""
    empty = _EMPTY.fullmatch(written.strip()) if isinstance(written, str) else None
    if empty is None:
        return parse_line_length(written)
    return Length(Fraction(0), f"0 {empty[1]}", empty[0])


_EMPTY = re.compile(rf"0(?:\.0*)? ?({'|'.join(LENGTH_MM)})")

_SPOOL = table(
    Spool,
    {
        "label": by(text_line(40)),
        "material": MATERIAL,
        "diameter": DIAMETER,
        "left": by(read_left),
        "strength": STRENGTH,
        "lot": by(text_line(40)),
        "bought": DATE,
    },
)
_read: TableReader[Rack] = TableReader(table(Rack, {"spool": tables(_SPOOL, 1, SPOOLS_MOST)}))
