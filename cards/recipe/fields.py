"""The fields of a recipe, one table of them: what each is called, how it is read, what it means.

The schema of recipe files, their text, the columns of a spreadsheet and the JSON derive from it; a
code's grammar is its own, and a test holds it against the table. Whether a field may be left out,
and what it is then, its class says.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import get_args

from tagend.cards.base.file_schema import FLAG, Schema, choice, whole_number
from tagend.cards.recipe.recipe import (
    SECTIONS_MOST,
    VARIANTS_MOST,
    Butt,
    Fly,
    LengthsMean,
    Part,
    Reach,
    Recipe,
    Section,
    Variant,
)
from tagend.cards.recipe.values import (
    BUTT_KNOT,
    DATE,
    DIAMETER,
    FLY_KNOT,
    JOINT_KNOT,
    LENGTH,
    MATERIAL,
    NAME,
    NOTE,
    REPLACEMENTS,
    SPAN,
    STRAND,
    STRENGTH,
)


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a recipe file, and where else it is found."""

    key: str
    told: str  # to a person, of what it means
    reads: Schema | None = None  # None: tables of their own, with the fields of `part`
    examples: tuple[object, ...] = ()  # as they may stand in a recipe file
    column: str | None = ""  # in a spreadsheet, where it isn't the key; None: not there
    code: str | None = ""  # the word in a code, where its place doesn't say it; None: not there
    part: type | None = None
    count: tuple[int, int] | None = None  # least and most of a part's tables; None: a single one
    attribute: str = ""  # where it isn't the key

    @property
    def name(self) -> str:
        """What it is called in its class."""
        return self.attribute or self.key


_USE = Field("use", "the fish, the water, the wind", NOTE, ("bonefish on sand",), code="USE")
_LINE_WEIGHT = Field(
    "line_weight", "the fly line's weight, 1 to 15", whole_number(1, 15), (8,), code="W"
)
_STRAND_EXAMPLES = ("0.028 in fluorocarbon 60 lb 12 in",)

# By class, in the order that files and tables are written in.
FIELDS: Mapping[type, tuple[Field, ...]] = {
    Recipe: (
        Field("name", "what the leader is called", NAME, ("Sandbar eight",)),
        _USE,
        _LINE_WEIGHT,
        Field(
            "line_tip", "the fly line's diameter at its tip", DIAMETER, ("0.036 in",), code="TIP"
        ),
        Field("total", "the finished length it should have", LENGTH, ("9 ft",), code="TOTAL"),
        Field(
            "lengths",
            "what the lengths mean, finished (knot to knot) where nothing is said",
            choice(*get_args(LengthsMean)),
            ("cut",),
            code="CUT",
        ),
        Field("note", "anything else to know", NOTE, ("For a stiff crosswind.",), code="NOTE"),
        Field("tied", "the day it was tied", DATE, ("2026-05-31",), code="TIED"),
        Field(
            "record_lengths",
            "to hold it against the published lengths for records",
            FLAG,
            (True,),
            code="RECORD",
        ),
        Field("butt", "the end at the fly line", part=Butt),
        Field(
            "section",
            "a piece of line; from the butt to the fly",
            part=Section,
            count=(1, SECTIONS_MOST),
            attribute="sections",
        ),
        Field("fly", "the end at the fly", part=Fly),
        Field("reach", "what adds to the leader between hand and fly", part=Reach),
        Field(
            "variant",
            "what a variant of the leader changes",
            part=Variant,
            count=(0, VARIANTS_MOST),
            attribute="variants",
            column=None,  # each is a leader of its own, with rows and a code of its own
            code=None,
        ),
    ),
    Butt: (
        Field(
            "end",
            "the loop at the fly line, or none for a bare end",
            BUTT_KNOT,
            ("perfection loop", "none"),
            column="butt_end",
            code="BUTT",
        ),
        Field(
            "loop",
            "the finished length of the loop",
            LENGTH,
            ("3/4 in",),
            column="butt_loop",
            code="BUTT",
        ),
    ),
    Section: (
        Field(
            "length",
            "its length with its unit, or a range",
            SPAN,
            ("30 in", "22 to 28 in", "76 cm"),
        ),
        Field(
            "diameter",
            "its diameter with its unit, or 0X to 8X",
            DIAMETER,
            ("0.023 in", "0.58 mm", "4X"),
        ),
        Field(
            "tapers_to", "the diameter at the fly end of a knotless taper", DIAMETER, ("0.009 in",)
        ),
        Field("material", "what the line is", MATERIAL, ("nylon", "hard nylon", "fluorocarbon")),
        Field("strength", "what it bears, as the spool says", STRENGTH, ("25 lb", "11.3 kg")),
        Field("part", "the part of the leader it is", choice(*get_args(Part)), get_args(Part)),
        Field("knot", "the knot to the next section", JOINT_KNOT, ("blood",)),
        Field("dropper", "the tag left long at that knot", LENGTH, ("6 in",), code="DROP"),
        Field("bought", "for what is bought at its length", FLAG, (True,), code="BOUGHT"),
    ),
    Fly: (
        Field(
            "knot",
            "the knot to the fly, or none for a bare end",
            FLY_KNOT,
            ("clinch", "none"),
            column="fly_knot",
        ),
    ),
    Reach: (
        Field("line_out", "fly line outside the tip ring", LENGTH, ("30 ft",), code="OUT"),
        Field("rod", "the rod's length", LENGTH, ("9 ft",), code="ROD"),
    ),
    Variant: (
        Field("name", "what follows the leader's own name", NAME, ("in hard wind",)),
        _USE,
        _LINE_WEIGHT,
        Field(
            "replace",
            "other line for a section, by its number from the butt",
            REPLACEMENTS,
            ({"3": "0.015 in hard nylon"},),
        ),
        Field("stop_after", "the last section it keeps", whole_number(1, SECTIONS_MOST), (4,)),
        Field("tippet", "other line for the tippet", STRAND, _STRAND_EXAMPLES),
        Field("guard", "line for a bite guard at the end", STRAND, _STRAND_EXAMPLES),
        Field("butt", "another length of the butt, and the rest cut down", LENGTH, ("72 in",)),
        Field("total", "another finished length", LENGTH, ("12 ft",)),
    ),
}


def usual(cls: type) -> dict[str, object]:
    """Return what each field of a class is when left out; `MISSING` where it has to be written."""
    return {field.name: field.default for field in fields(cls)}
