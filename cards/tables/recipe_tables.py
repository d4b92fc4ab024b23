"""A leader as a table has it, cell by cell, in; the tables of a recipe file that say it out."""

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from functools import partial

from tagend.cards.base.days import read_day
from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.vocabulary import EndOf, Vocabulary
from tagend.cards.tables.lexicon import own_name, part_named
from tagend.cards.tables.meaning import STRAND, Meaning
from tagend.cards.tables.quantity_cells import KIND, quantity
from tagend.cards.tables.strand_cells import section_said
from tagend.cards.tables.understanding import line_weight
from tagend.cards.tables.written import Said, Spot, Written
from tagend.layouts.base.faults import Refused, under

_YES_NO = {"yes": True, "true": True, "no": False, "false": False, "si": True, "sí": True}


def taken_apart(said: Said, units: Mapping[str, str]) -> Said:
    """Return a section whose cells each say one thing.

    A column of the section's own is heard before that cell, and one of the whole row behind it.
    """
    spot = said.get(STRAND)
    if spot is None:
        return said
    known = {**units, **({"length": spot.meaning.unit} if spot.meaning.unit else {})}
    with under(spot.where):
        found = section_said(spot.text, known, spot.comma)
    apart = {key: Spot(text, spot.where, Meaning(key)) for key, text in found.items()}
    rest = {field: own for field, own in said.items() if field != STRAND}
    of_row = {field: s for field, s in rest.items() if s.meaning.label != spot.meaning.label}
    return {**of_row, **apart, **{field: s for field, s in rest.items() if field not in of_row}}


def material_named(text: str, words: Vocabulary) -> str:
    """Return a material by any of its names, those of tables too; raises `Refused`."""
    return words.material(_known(text, words.material) or own_name("materials", text))


def knot_named(text: str, end: EndOf, words: Vocabulary) -> str:
    """Return a knot's own name by any that it has; a text that is none stays as it is."""
    return _known(text, partial(words.knot, end=end)) or own_name("knots", text)


def recipe_tables(
    leader: Written, sections: Iterable[Said], words: Vocabulary
) -> dict[str, object]:
    """Return the tables of a recipe file that say the same."""
    own = leader.own
    tables: dict[str, object] = {
        "section": [_table(OF_SECTION, said, own, words) for said in sections]
    }
    begun = (OF_RECIPE[name].heading for name in leader.whole)
    for heading in dict.fromkeys(("", *begun)):
        columns = {name: field for name, field in OF_RECIPE.items() if field.heading == heading}
        table = _table(columns, leader.whole, own, words)
        tables |= {heading: table} if heading else table
    return tables


def _table(
    columns: Mapping[str, Field], said: Said, own: bool, words: Vocabulary
) -> dict[str, object]:
    return {
        field.key: _value(name, field, said[name], own, words) if name in said else ""
        for name, field in columns.items()
        if name in said or (field.needed and not _by_strength(name, said))
    }


def _by_strength(name: str, said: Said) -> bool:
    """Whether a diameter is left to a spool of the strength that is said."""
    return name == "diameter" and "strength" in said


def _value(name: str, field: Field, spot: Spot, own: bool, words: Vocabulary) -> object:
    """Return what a recipe file would hold; what it cannot is left for its reader to refuse."""
    text = spot.text
    match field.reads:
        case {"type": "bool"}:
            return _YES_NO.get(text.lower(), text)
        case {"type": "int"}:
            number = text if own else line_weight(text)
            return int(number) if number.isdecimal() and len(number) < 3 else text
        case {"type": "literal"}:
            return (name == "part" and part_named(text)) or text.lower()
    if name == "tied" and not own:
        return _day(text, day_first=spot.comma)
    if name in KIND:
        return quantity(text, KIND[name], spot.meaning.unit, spot.comma)
    if name == "material":
        return _known(text, words.material) or own_name("materials", text)
    if name in _ENDS:
        return knot_named(text, _ENDS[name], words)
    return text


def _day(text: str, *, day_first: bool) -> str:
    """Return a day as recipe files write it; what is none is left for their reader to refuse."""
    with suppress(Refused):
        return read_day(text, day_first=day_first).isoformat()
    return text


_ENDS: Mapping[str, EndOf] = {"butt_end": "butt", "knot": "joint", "fly_knot": "fly"}


def _known(text: str, find: Callable[[str], str]) -> str | None:
    """Return the text itself where it is a name of ours."""
    with suppress(Refused):
        find(text)
        return text
    return None
