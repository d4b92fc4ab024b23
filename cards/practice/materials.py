"""Materials: the materials file and a person's own tables in, materials by name or code out."""

from collections.abc import Mapping
from functools import cache
from typing import Literal, get_args

from cfractions import Fraction
from msgspec import Struct
from msgspec.structs import force_setattr

from tagend.cards.base.file_schema import FLAG, by, table
from tagend.cards.base.named_table import (
    NAMING,
    NamedTable,
    RowReader,
    read_named_table,
    read_our_file,
)
from tagend.cards.base.value_readers import list_of, one_of
from tagend.layouts.base.faults import refused

MaterialKind = Literal["nylon", "fluorocarbon", "wire", "stranded wire", "thread"]
Strand = Literal["line", "wire", "stranded wire", "thread"]  # what a knot is tied in
Range = tuple[Fraction, Fraction]  # lowest and highest


class Material(Struct, frozen=True):
    """One material of the materials file; its head says what each key means."""

    name: str
    code: str
    kind: MaterialKind
    also: tuple[str, ...] = ()
    hard: bool = False
    density: Range | None = None  # g/cm3; None where the name does not settle it
    modulus: Range | None = None  # GPa
    source: tuple[str, ...] = ()
    strand: Strand = "line"  # what a knot finds it to be; nylon and fluorocarbon alike

    def __post_init__(self) -> None:
        if self.kind not in ("nylon", "fluorocarbon"):
            force_setattr(self, "strand", self.kind)

    @property
    def is_wire(self) -> bool:
        """Whether it is wire, single or stranded: too stiff to wind round line."""
        return self.kind in ("wire", "stranded wire")

    @property
    def drawn(self) -> bool:
        """Whether it is a single strand of nylon or fluorocarbon, as tapers are made of."""
        return self.strand == "line"


Materials = NamedTable[Material]


@cache
def load_materials() -> Materials:
    """Return the materials of our file."""
    return materials_with_own({})


def materials_with_own(own: Mapping[str, object]) -> Materials:
    """Return the materials of our file with a person's own over them, key by key.

    Raises `Refused` with every fault.
    """
    return read_named_table(_read_material, read_our_file("practice/materials.toml"), own)


def _read_number(value: object) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0.1 <= value <= 1000:
        raise refused(f"{value!r} is no likely figure", "write a number such as 1.14")
    return Fraction(str(value))


def _read_density(value: object) -> tuple[Fraction, ...]:
    return _read_range(value) if isinstance(value, list) else (_read_number(value),) * 2


def _read_range(value: object) -> tuple[Fraction, ...]:
    low_high = list_of(_read_number, "number", 2, 2)(value)
    if low_high[0] > low_high[1]:
        raise refused("this range does not grow", "write the lower figure first")
    return low_high


_read_material: RowReader[Material] = RowReader(
    "material",
    table(
        Material,
        {
            **NAMING,
            "kind": by(one_of(*get_args(MaterialKind))),
            "hard": FLAG,
            "density": by(_read_density),
            "modulus": by(_read_range),
        },
    ),
)
