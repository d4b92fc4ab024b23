"""Tables of leaders: what is written of each, cell by cell, in; recipes, and faults by cell, out."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple, TypeAlias

from tagend.cards.recipe.fields import OF_RECIPE, OF_SECTION, Field
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import recipe_of
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.cards.tables.leaders import Said, Spot, Written
from tagend.cards.tables.lexicon import own_name
from tagend.cards.tables.meaning import STRAND, Meaning
from tagend.cards.tables.quantity_cells import KIND, quantity
from tagend.cards.tables.strand_cells import section_said
from tagend.cards.tables.understanding import line_weight
from tagend.layouts.base.faults import Fault, Refused, below, noting, refuse_any

Tables: TypeAlias = Mapping[str, object]  # of a recipe file
Fill: TypeAlias = Callable[[Tables], Tables]  # what a table leaves open, before it is checked

# What is told of a recipe file, and what of a table instead.
_TOLD_INSTEAD = {
    "write true or false, without quotes": "write yes, or nothing",
    "write a whole number, without quotes": "write a whole number",
    "write the knot to the fly under [fly]": "write the knot to the fly in the column fly_knot",
}
_YES_NO = {"yes": True, "true": True, "no": False, "false": False, "si": True, "sí": True}
_NO_DIAMETER = "read it off the label of the spool, or name your rack with --rack"


class TableRead(NamedTuple):
    """What a table holds."""

    recipes: tuple[Recipe, ...]
    faults: tuple[Fault, ...]  # each with its cell
    bare: int = 0  # sections that name no material, which is one of the faults


def read_leaders(
    leaders: Iterable[Written],
    words: Vocabulary,
    units: Mapping[str, str],
    material: str | None = None,
    fill: Fill = lambda tables: tables,
) -> TableRead:
    """Return the recipes of the leaders that are written; one with a fault is left out.

    `material` is that of sections which name none, `units` those of bare numbers by kind.
    """
    recipes: list[Recipe] = []
    faults: list[Fault] = []
    for leader in leaders:
        with noting(faults):
            recipes.append(_recipe(leader, words, units, material, fill))
    bare = [fault for fault in faults if fault.found == _NO_MATERIAL]
    told = [fault for fault in faults if fault.found != _NO_MATERIAL]
    return TableRead(tuple(recipes), (*told, *_no_material(bare)), len(bare))


def _recipe(
    leader: Written, words: Vocabulary, units: Mapping[str, str], material: str | None, fill: Fill
) -> Recipe:
    faults = list(leader.faults)
    sections: list[Said] = []
    for said in leader.sections:
        with noting(faults):
            sections.append(_taken_apart(said, units))
    whole = leader.whole
    if not sections and not faults:
        faults.append(
            Fault(leader.row, "this leader has no section", "write one, or delete the row")
        )
    refuse_any(faults if len(sections) < len(leader.sections) or not sections else ())
    if material:
        sections = [{"material": _default(said, material), **said} for said in sections]
    try:
        recipe = recipe_of(fill(_tables(whole, sections, leader.own, words)), words)
    except Refused as refusal:
        places = _places(leader, whole, sections)
        faults += (_placed(fault, places, sections) for fault in refusal.faults)
    refuse_any(faults)
    return recipe


def _default(said: Said, material: str) -> Spot:
    first = next(iter(said.values()))
    return Spot(material, first.where, Meaning("material"))


def _taken_apart(said: Said, units: Mapping[str, str]) -> Said:
    """Return a section whose cells each say one thing; a column of its own is heard first."""
    spot = said.get(STRAND)
    if spot is None:
        return said
    known = {**units, **({"length": spot.meaning.unit} if spot.meaning.unit else {})}
    try:
        found = section_said(spot.text, known, spot.comma)
    except Refused as refusal:
        raise Refused(*(below(spot.where, fault) for fault in refusal.faults)) from None
    apart = {key: Spot(text, spot.where, Meaning(key)) for key, text in found.items()}
    return {**apart, **{field: own for field, own in said.items() if field != STRAND}}


def _no_material(bare: Sequence[Fault]) -> Iterator[Fault]:
    """Yield what is told once of all sections that name no material."""
    if bare:
        number = f"{len(bare)} sections name" if len(bare) > 1 else "a section names"
        instead = 'say which, such as --material "hard nylon", or write it in a column of that name'
        yield Fault(bare[0].where, f"{number} no material", instead)


_NO_MATERIAL = "no material"


def _tables(
    whole: Said, sections: Iterable[Said], own: bool, words: Vocabulary
) -> dict[str, object]:
    """Return the tables of a recipe file that say the same."""
    tables: dict[str, object] = {
        "section": [_table(OF_SECTION, said, own, words) for said in sections]
    }
    begun = (OF_RECIPE[name].heading for name in whole)
    for heading in dict.fromkeys(("", *begun)):
        columns = {name: field for name, field in OF_RECIPE.items() if field.heading == heading}
        table = _table(columns, whole, own, words)
        tables |= {heading: table} if heading else table
    return tables


def _table(
    columns: Mapping[str, Field], said: Said, own: bool, words: Vocabulary
) -> dict[str, object]:
    return {
        field.key: _value(name, field, said[name], own, words)
        for name, field in columns.items()
        if name in said
    }


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
            return text.lower()
    if name in KIND:
        return quantity(text, KIND[name], spot.meaning.unit, spot.comma)
    if name == "material":
        return _named(text, "materials", words.material)
    if name.endswith(("knot", "butt_end")):
        return own_name("knots", text) if not own else text
    return text


def _named(text: str, table: str, find: Callable[[str], str]) -> str:
    try:
        return find(text)
    except Refused:
        return own_name("materials", text)


Places: TypeAlias = Mapping[str, tuple[str, str]]  # cell and column, by a recipe file's path


def _placed(fault: Fault, places: Places, sections: list[Said]) -> Fault:
    """Return a fault of a recipe file's tables by its cell and column."""
    where, column = places.get(fault.where, ("", fault.where))
    if fault.found == "this key is missing":
        return _missing(fault, where, column, sections)
    instead = _TOLD_INSTEAD.get(fault.instead, fault.instead)
    return Fault(", ".join(filter(None, (where, column))), fault.found, instead)


def _missing(fault: Fault, where: str, column: str, sections: list[Said]) -> Fault:
    if column == "material":
        return Fault(where, _NO_MATERIAL, "")
    if column == "diameter" and fault.where.startswith("section "):
        said = sections[int(fault.where.split(",")[0].split()[1]) - 1]
        if strength := said.get("strength"):
            found = f"{strength.text[:40]!r} does not say how thick it is"
            return Fault(f"{strength.where}, diameter", found, _NO_DIAMETER)
    return Fault(f"{where}, {column}", "this cell is empty", "write it, or delete the row")


def _places(leader: Written, whole: Said, sections: list[Said]) -> Places:
    """Return the cell and column of each place that a fault of a recipe file can name."""
    found = {
        field.path: (whole[name].where if name in whole else leader.row, name)
        for name, field in OF_RECIPE.items()
    }
    for place, said in enumerate(sections, start=1):
        first = next((spot.where for spot in said.values()), leader.row)
        for name, field in OF_SECTION.items():
            where = said[name].where if name in said else first
            found[f"section {place}, {field.path}"] = (where, name)
        found[f"section {place}"] = (first, "")
    return found
