"""A recipe file: TOML in, a checked recipe out."""

from collections.abc import Iterator, Mapping, Sequence

from tagend.cards.base.file_schema import Schema, TableReader, described, table, tables
from tagend.cards.base.toml_file import read_toml
from tagend.cards.recipe.fields import FIELDS, Field
from tagend.cards.recipe.recipe import Recipe, Variant
from tagend.cards.recipe.vocabulary import Vocabulary
from tagend.layouts.base.faults import Fault, refuse_any


def read_recipe(data: bytes, words: Vocabulary) -> Recipe:
    """Return the recipe in a TOML file; raises `Refused` with every fault in it."""
    return recipe_of(read_toml(data), words)


def recipe_of(tables: Mapping[str, object], words: Vocabulary) -> Recipe:
    """Return the recipe in the tables of a recipe file; raises `Refused` with every fault."""
    return checked_whole(_read_recipe(tables, words))


def variant_of(table: Mapping[str, object], words: Vocabulary) -> Variant:
    """Return the variant that the keys of a [[variant]] table say; raises `Refused`."""
    return _read_variant(table, words)


def checked_whole(recipe: Recipe) -> Recipe:
    """Return the recipe itself, or raise `Refused` for keys that contradict one another."""
    faults = tuple(_contradictions(recipe))
    refuse_any(faults)
    return recipe


def _contradictions(recipe: Recipe) -> Iterator[Fault]:
    last = len(recipe.sections)
    end = recipe.sections[-1]
    if end.knot is not None:
        yield Fault(
            f"section {last}, knot",
            f"the last section ends at the fly, and {end.knot!r} joins it to nothing",
            "write the knot to the fly under [fly]",
        )
    if end.dropper is not None:
        yield Fault(
            f"section {last}, dropper",
            "the last section has no joint to leave a dropper at",
            "write the dropper on the section above",
        )
    if recipe.butt.end == "none" and recipe.butt.loop is not None:
        yield Fault("butt, loop", "a bare end has no loop", "leave the loop or the end out")
    for place, variant in enumerate(recipe.variants, start=1):
        yield from _variant_faults(place, variant, recipe.variants[: place - 1])


def _variant_faults(place: int, variant: Variant, above: Sequence[Variant]) -> Iterator[Fault]:
    if variant == Variant(name=variant.name, use=variant.use):
        yield Fault(
            f"variant {place}", "it changes nothing", "write what it changes, such as butt = …"
        )
    if variant.name.casefold() in (other.name.casefold() for other in above):
        yield Fault(
            f"variant {place}, name",
            f"another variant is called {variant.name!r}",
            "give each a name of its own",
        )


def json_schema() -> dict[str, object]:
    """Return the JSON Schema of a recipe file, for editors that check and complete."""
    from pydantic.json_schema import GenerateJsonSchema

    schema: dict[str, object] = GenerateJsonSchema().generate(_schema(Recipe))
    return {"$schema": GenerateJsonSchema.schema_dialect, **schema, "title": "Leader recipe"}


def _schema(cls: type) -> Schema:
    return table(cls, {field.key: _described(field) for field in FIELDS[cls]})


def _described(field: Field) -> Schema:
    sentence = f"{field.told[0].upper()}{field.told[1:]}."
    return described(field.reads or _parts(field), sentence)


def _parts(field: Field) -> Schema:
    assert field.part is not None
    one = _schema(field.part)
    return one if field.count is None else tables(one, *field.count)


_read_recipe: TableReader[Recipe] = TableReader(_schema(Recipe))
_read_variant: TableReader[Variant] = TableReader(_schema(Variant))
