"""One leader as a table has it, cell by cell; and one row of a table."""

from collections.abc import Mapping

from msgspec import Struct

from tagend.cards.recipe.fields import OF_RECIPE
from tagend.cards.tables.meaning import STRAND, Meaning
from tagend.cards.tables.sheet import SheetColumn
from tagend.layouts.base.faults import Fault

MAKES = frozenset(("length", "diameter", "strength", STRAND))  # what a section is known by


class Spot(Struct, frozen=True):
    """What one cell says, and where it stands."""

    text: str
    where: str  # B7
    meaning: Meaning
    comma: bool = False


Said = Mapping[str, Spot]  # by column of our own tables


class Written(Struct, frozen=True):
    """One leader as a table has it."""

    row: str  # where it begins: A7
    whole: Said
    sections: tuple[Said, ...]
    empty: tuple[Mapping[str, str], ...] = ()  # where the cells stand that a section lacks
    faults: tuple[Fault, ...] = ()
    own: bool = False  # in a table of our own, which is read to the letter


class SheetRow(Struct, frozen=True):
    """One row with what its cells say, by their columns."""

    row: int
    spots: tuple[tuple[SheetColumn, Spot], ...]
    empty: tuple[tuple[Meaning, str], ...]  # what has an empty cell, and where

    def without(self, label: tuple[str, int]) -> dict[str, str]:
        """Return where the empty cells of a section stand, by their columns."""
        return {meaning.field: where for meaning, where in self.empty if meaning.label == label}

    @property
    def whole(self) -> dict[str, Spot]:
        return {s.meaning.field: s for _, s in self.spots if s.meaning.field in OF_RECIPE}

    @property
    def section(self) -> dict[str, Spot]:
        return {s.meaning.field: s for _, s in self.spots if s.meaning.of_section}

    @property
    def name(self) -> str | None:
        said = self.whole.get("name")
        return None if said is None else said.text
