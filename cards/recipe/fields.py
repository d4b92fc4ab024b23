"""The fields of a recipe, one table of them: what each is called, how it is read, what it means.

The schema of recipe files, their text, the columns of a spreadsheet and the JSON derive from it; a
code's grammar is its own, and a test holds it against the table. Whether a field may be left out,
and what it is then, its class says.
"""

from collections.abc import Mapping
from keyword import iskeyword
from typing import Any

from msgspec import NODEFAULT, Struct
from msgspec.structs import replace

from tagend.cards.base.file_schema import FLAG, Schema, usual
from tagend.cards.recipe import values
from tagend.cards.recipe.recipe import (
    SECTIONS_MOST,
    VARIANTS_MOST,
    Butt,
    Fly,
    Reach,
    Recipe,
    Section,
    Variant,
)
from tagend.cards.recipe.values import DIAMETER, LENGTH, SHORT_LENGTH, STRAND


class Field(Struct, frozen=True):
    """One key of a recipe file, and where else it is found."""

    key: str
    told: str  # to a person, of what it means
    reads: Schema | None = None  # None: tables of their own, with the fields of `part`
    column: str = ""  # in a spreadsheet, where it isn't the key
    part: type | None = None
    count: tuple[int, int] | None = None  # least and most of a part's tables; None: a single one
    heading: str = ""  # of the table that it stands in, where fields are known by one name each
    needed: bool = False  # in each such table

    @property
    def name(self) -> str:
        """What it is called in its class."""
        if iskeyword(self.key):
            return f"{self.key}_"
        return f"{self.key}s" if self.count else self.key

    @property
    def path(self) -> str:
        """Where it stands, as faults say it: `reach, rod`."""
        return f"{self.heading}, {self.key}" if self.heading else self.key

    def value(self, whole: object) -> object:
        """Return its value in a recipe or a section, None where its table is left out."""
        home = getattr(whole, self.heading) if self.heading else whole
        return None if home is None else getattr(home, self.name)


_USE = Field("use", "the fish, the water, the wind", values.USE)
_LINE_WEIGHT = Field("line_weight", "the fly line's, from 1 to 15", values.LINE_WEIGHT)

# By class, in the order in which files and spreadsheets are written.
FIELDS: Mapping[type, tuple[Field, ...]] = {
    Recipe: (
        Field("name", "what the leader is called", values.NAME),
        _USE,
        _LINE_WEIGHT,
        Field("line_tip", "the diameter of the fly line's tip", DIAMETER),
        Field("total", "the finished length that it should have", LENGTH),
        Field("lengths", "finished: knot to knot, as if left out", values.LENGTHS_MEAN),
        Field("note", "anything else to know", values.NOTE),
        Field("tied", "the day it was tied", values.DATE),
        Field("record_lengths", "to hold it against record lengths", FLAG),
        Field("class", "the record class that its tippet is for", values.STRENGTH),
        Field("butt", "the end at the fly line", part=Butt),
        Field(
            key="section",
            told="one piece of line, from the butt to the fly",
            part=Section,
            count=(1, SECTIONS_MOST),
        ),
        Field("fly", "the end at the fly", part=Fly),
        Field("reach", "what adds to the leader between hand and fly", part=Reach),
        Field("variant", "what one variant changes", part=Variant, count=(0, VARIANTS_MOST)),
    ),
    Butt: (
        Field("end", "the loop, or none for a bare end", values.BUTT_KNOT, "butt_end"),
        Field("loop", "the loop's finished length", SHORT_LENGTH, "butt_loop"),
    ),
    Section: (
        Field("length", "with its unit, or a range", values.SPAN),
        Field("diameter", "with its unit, or 0X to 8X", DIAMETER),
        Field("tapers_to", "the diameter at the fly end of a knotless taper", DIAMETER),
        Field("material", "what the line is", values.MATERIAL),
        Field("strength", "as the spool says", values.STRENGTH),
        Field("part", "the part of the leader that it is", values.PART),
        Field("knot", "the knot to the next section", values.JOINT_KNOT),
        Field("dropper", "the tag left long at that knot", SHORT_LENGTH),
        Field("bought", "for what is bought at its length", FLAG),
    ),
    Fly: (Field("knot", "the knot, or none for a bare end", values.FLY_KNOT, "fly_knot"),),
    Reach: (
        Field("line_out", "fly line outside the tip ring", LENGTH),
        Field("rod", "the rod's length", LENGTH),
    ),
    Variant: (
        Field("name", "what follows the leader's own name", values.NAME),
        _USE,
        _LINE_WEIGHT,
        Field("replace", "line by section, the first at the butt is 1", values.REPLACEMENTS),
        Field("stop_after", "the last section to keep", values.SECTION_NUMBER),
        Field("tippet", "another tippet", STRAND),
        Field("guard", "a bite guard at the end", STRAND),
        Field("butt", "another length of the butt, the taper cut down", LENGTH),
        Field("total", "another finished length", LENGTH),
    ),
}


def said(whole: Any) -> dict[str, Any]:
    """Return the fields of a recipe, or of a part of one, that say other than when left out."""
    return {
        name: getattr(whole, name)
        for name, left_out in usual(type(whole)).items()
        if getattr(whole, name) != left_out
    }


def _flat(cls: type, heading: str = "") -> dict[str, Field]:
    left_out = usual(cls)
    return {
        field.column or field.key: replace(
            field, heading=heading, needed=left_out[field.name] is NODEFAULT
        )
        for field in FIELDS[cls]
        if field.part is None
    }


# The fields of a leader and of a section by one name each, for what knows no tables in tables.
OF_RECIPE: Mapping[str, Field] = _flat(Recipe) | {
    name: field
    for table in FIELDS[Recipe]
    if table.part and table.count is None
    for name, field in _flat(table.part, table.key).items()
}
OF_SECTION: Mapping[str, Field] = _flat(Section)
