"""A recipe file: TOML in, a checked recipe out."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from functools import cache

from pydantic_core import SchemaValidator
from pydantic_core.core_schema import ValidationInfo

from tagend.cards.base.file_schema import (
    Schema,
    check,
    known_keys,
    optional,
    parsed,
    table,
    tables,
    text,
)
from tagend.cards.base.toml_file import read_toml
from tagend.cards.base.units import parse_length, parse_span
from tagend.cards.practice.practice import EndOf, Practice
from tagend.cards.recipe.line_keys import DIAMETER, MATERIAL, STRENGTH, practice_of
from tagend.cards.recipe.recipe import Butt, Fly, Reach, Recipe, Section, Strand, Variant
from tagend.layouts.base.faults import Fault, refuse_any, refused

NAME_MOST = 60
NOTE_MOST = 200
SECTIONS_MOST = 30  # the longest published tapers have ten
VARIANTS_MOST = 30


def read_recipe(data: bytes, practice: Practice) -> Recipe:
    """Return the recipe in a TOML file; raises `Refused` with every fault in it."""
    return recipe_of(read_toml(data), practice)


def recipe_of(tables: Mapping[str, object], practice: Practice) -> Recipe:
    """Return the recipe in the tables of a recipe file; raises `Refused` with every fault."""
    recipe: Recipe = check(_validator(), tables, practice, known_keys(RECIPE))
    return checked_whole(recipe)


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
    if variant == Variant(variant.name, variant.use):
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

    schema: dict[str, object] = GenerateJsonSchema().generate(RECIPE)
    return {"$schema": GenerateJsonSchema.schema_dialect, **schema, "title": "Leader recipe"}


def _knot_for(end: EndOf, *, bare: bool = False) -> Callable[[object, ValidationInfo], str]:
    """Return a reader of the knot at one end of a section; `bare` ends may be "none"."""

    def read(value: object, info: ValidationInfo) -> str:
        if not isinstance(value, str):
            raise refused("this is not a text in quotes", 'write a knot, such as "blood"')
        if bare and value.strip().lower() == "none":
            return "none"
        return practice_of(info).knot_at(value, end).name

    return read


def _strand(value: object, info: ValidationInfo) -> Strand:
    from tagend.cards.recipe.strand import parse_strand  # few recipes have variants

    return parse_strand(value, practice_of(info).materials)


def _place(value: object) -> int:
    if str(value) not in map(str, range(1, SECTIONS_MOST + 1)):
        raise refused(f"{str(value)[:40]!r} is no section", "write its number from the butt")
    return int(str(value))


def _date(value: object) -> date:
    if type(value) is date:
        return value
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise refused(f"{str(value)[:20]!r} is not a date", "write it as 2026-05-31") from None


def _words(*choices: str) -> Schema:
    return {"type": "literal", "expected": list(choices)}


_YES_NO: Schema = {"type": "bool", "strict": True}
_LENGTH = parsed(parse_length, "A length with its unit.", ["30 in", "7 1/2 ft", "76 cm"])
_SPAN = parsed(parse_span, "A length, or a range.", ["30 in", "22 to 28 in", "76 cm"])


def _knot(end: EndOf, description: str, example: str, *, bare: bool = False) -> Schema:
    return parsed(_knot_for(end, bare=bare), description, [example], with_context=True)


SECTION = table(
    Section,
    {
        "length": _SPAN,
        "diameter": DIAMETER,
        "material": MATERIAL,
        "strength": optional(STRENGTH),
        "knot": optional(_knot("joint", "The knot to the next section.", "blood")),
        "part": optional(_words("butt", "taper", "tippet", "bite guard", "sighter")),
        "dropper": optional(_LENGTH),
        "tapers_to": optional(DIAMETER),
        "bought": optional(_YES_NO, False),
    },
)
_USE = text(NOTE_MOST, "The fish, the water, the wind.")
_STRAND = parsed(
    _strand,
    "Diameter, material, strength and length.",
    ["0.028 in fluorocarbon 60 lb 12 in"],
    with_context=True,
)
_LINE_WEIGHT: Schema = {"type": "int", "strict": True, "ge": 1, "le": 15}
VARIANT = table(
    Variant,
    {
        "name": text(NAME_MOST, "What follows the leader's own name."),
        "use": optional(_USE),
        "line_weight": optional(_LINE_WEIGHT),
        "replace": optional(
            {
                "type": "dict",
                "keys_schema": parsed(_place, "A section, counted from the butt.", ["3"]),
                "values_schema": _STRAND,
            }
        ),
        "stop_after": optional({"type": "int", "strict": True, "ge": 1, "le": SECTIONS_MOST}),
        "tippet": optional(_STRAND),
        "guard": optional(_STRAND),
        "butt": optional(_LENGTH),
        "total": optional(_LENGTH),
    },
)
RECIPE = table(
    Recipe,
    {
        "name": text(NAME_MOST, "What the leader is called."),
        "section": tables(SECTION, 1, SECTIONS_MOST),
        "lengths": optional(_words("finished", "cut"), "finished"),
        "use": optional(_USE),
        "line_weight": optional(_LINE_WEIGHT),
        "line_tip": optional(DIAMETER),
        "total": optional(_LENGTH),
        "note": optional(text(NOTE_MOST, "Anything else to know.")),
        "tied": optional(parsed(_date, "The day it was tied.", ["2026-05-31"])),
        "record_lengths": optional(_YES_NO, False),
        "butt": optional(
            table(
                Butt,
                {
                    "end": optional(
                        _knot("butt", "The loop, or none.", "perfection loop", bare=True)
                    ),
                    "loop": optional(_LENGTH),
                },
            ),
            Butt(),
        ),
        "fly": optional(
            table(
                Fly,
                {"knot": optional(_knot("fly", "The knot, or none.", "clinch", bare=True))},
            ),
            Fly(),
        ),
        "reach": optional(table(Reach, {"line_out": _LENGTH, "rod": _LENGTH})),
        "variant": optional(tables(VARIANT, 0, VARIANTS_MOST), ()),
    },
    fields={"section": "sections", "variant": "variants"},
)


@cache
def _validator() -> SchemaValidator:
    return SchemaValidator(RECIPE)
