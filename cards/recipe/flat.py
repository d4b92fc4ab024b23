"""The fields of a leader and of a section by one name each, for what knows no tables in tables."""

from collections.abc import Mapping
from dataclasses import MISSING, dataclass

from tagend.cards.recipe.fields import FIELDS, Field, usual
from tagend.cards.recipe.recipe import Recipe, Section


@dataclass(frozen=True, slots=True)
class FlatField:
    """Where a field stands in the tables of a recipe file."""

    heading: str  # of its table, empty for the whole file
    field: Field
    needed: bool  # in each table of that heading

    def value(self, whole: object) -> object:
        """Return its value in a recipe or a section, None where its table is left out."""
        home = getattr(whole, self.heading) if self.heading else whole
        return None if home is None else getattr(home, self.field.name)


def _flat(cls: type, heading: str = "") -> dict[str, FlatField]:
    left_out = usual(cls)
    return {
        field.column or field.key: FlatField(heading, field, left_out[field.name] is MISSING)
        for field in FIELDS[cls]
        if field.part is None
    }


OF_RECIPE: Mapping[str, FlatField] = _flat(Recipe) | {
    name: flat
    for table in FIELDS[Recipe]
    if table.part and table.count is None
    for name, flat in _flat(table.part, table.key).items()
}
OF_SECTION: Mapping[str, FlatField] = _flat(Section)
