"""What one column of a table says of leaders: its heading in, its meaning out, if it has one."""

from typing import Literal, NamedTuple

from msgspec import Struct

from tagend.cards.recipe.fields import OF_SECTION
from tagend.cards.tables.columns import COLUMNS, NUMBER
from tagend.cards.tables.lexicon import Word, nearest, words_of

STRAND = "strand"  # a cell that says all of a section: 24" .023 25lb
UNIT_KIND = {
    **dict.fromkeys(("in", "ft", "cm", "m"), "length"),
    **dict.fromkeys(("thou", "mm"), "diameter"),
    **dict.fromkeys(("lb", "kg"), "strength"),
}
Doubt = Literal["", "meaning", "unit"]


class Meaning(Struct, frozen=True):
    """The field that a column holds; of a section, of which one. Its text is a heading again."""

    field: str  # a column of our own tables, or STRAND
    part: str = ""
    number: int = 0  # of the section, counted from the butt or within its part; 0: not said
    unit: str = ""

    def __str__(self) -> str:
        field = "" if self.field == STRAND else self.field.replace("_", " ")
        if not self.part and self.number and not field:
            field = "section"
        number = str(self.number) if self.number else ""
        unit = f"({self.unit})" if self.unit else ""
        return " ".join(filter(None, (self.part, field, number, unit)))

    @property
    def of_section(self) -> bool:
        return self.field in OF_SECTION or self.field == STRAND

    @property
    def label(self) -> tuple[str, int]:
        """Which section it speaks of, where its heading says so."""
        return self.part, self.number


class Read(NamedTuple):
    """A heading as it was read."""

    meaning: Meaning | None  # None: none of ours
    doubt: str = ""  # to a person


def read_heading(heading: str) -> Read:
    """Return the meaning of a heading; one that is misspelt or has words beyond it is in doubt."""
    words = _numbered(words_of(heading))
    if any(word.kind == "other" for word in words):
        return Read(None)
    unknown = any(word.kind == "unknown" for word in words)
    if unknown and (near := nearest(words)):
        return Read(_meaning((*words, near)), "perhaps it is misspelt")
    fields = {word.meaning for word in words if word.kind == "field"}
    return Read(_meaning(words), "its heading says more" if unknown or len(fields) > 1 else "")


def is_label(heading: str) -> bool:
    """Whether a heading names a section or its part and nothing of it, as those above others do."""
    meaning = read_heading(heading).meaning
    return meaning is not None and meaning.field == STRAND and meaning.label != ("", 0)


def _numbered(words: tuple[Word, ...]) -> tuple[Word, ...]:
    """Return the words; `section` with a number behind it is no column of numbers."""
    if not any(word.kind == "number" for word in words):
        return words
    return tuple(
        word._replace(kind="section") if word.meaning == NUMBER else word for word in words
    )


def _meaning(words: tuple[Word, ...]) -> Meaning | None:
    said = {word.kind: word.meaning for word in words}  # the last of each kind
    field = said.get("field", "").replace(" ", "_")
    number = int(said.get("number", 0))
    unit, part = said.get("unit", ""), said.get("part", "")
    if field in COLUMNS and field not in OF_SECTION:  # of the whole leader
        if part and not number and field == "total":
            field = "length"
        else:
            return None if part or number else Meaning(field, unit=unit)
    if "section" in said and not (field or part or number or unit):
        return Meaning(NUMBER)
    if number > _MOST or not (field or part or number or unit):
        return None
    return Meaning(field or STRAND, part=part, number=number, unit=unit)


_MOST = 30
