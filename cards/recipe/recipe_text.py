"""A recipe as the text of a recipe file: the inverse of reading one."""

import json
import re
from collections.abc import Iterator

from tagend.cards.recipe.recipe import Butt, Fly, Reach, Recipe, Section, Variant


def recipe_text(recipe: Recipe) -> str:
    """Return the TOML of a recipe; quantities come out as they were written."""
    return "\n".join(_lines(recipe)) + "\n"


def file_name(name: str) -> str:
    """Return a plain name for the file of a leader: `sandbar-eight.toml`."""
    stem = re.sub(r"\W+", "-", name.lower()).strip("-_") or "recipe"
    return f"{stem}.toml"


def _lines(recipe: Recipe) -> Iterator[str]:
    yield from _keys(
        name=recipe.name,
        use=recipe.use,
        line_weight=recipe.line_weight,
        line_tip=recipe.line_tip,
        total=recipe.total,
        lengths=recipe.lengths if recipe.lengths != "finished" else None,
        note=recipe.note,
        record_lengths=recipe.record_lengths or None,
    )
    if recipe.tied:
        yield f"tied = {recipe.tied.isoformat()}"
    if recipe.butt != Butt():
        yield from ("", "[butt]", *_keys(end=recipe.butt.end, loop=recipe.butt.loop))
    for section in recipe.sections:
        yield from ("", "[[section]]", *_section(section))
    if recipe.fly != Fly():
        yield from ("", "[fly]", *_keys(knot=recipe.fly.knot))
    if recipe.reach:
        yield from ("", "[reach]", *_reach(recipe.reach))
    for variant in recipe.variants:
        yield from ("", "[[variant]]", *_variant(variant))


def _section(section: Section) -> Iterator[str]:
    return _keys(
        length=section.length,
        diameter=section.diameter,
        tapers_to=section.tapers_to,
        material=section.material,
        strength=section.strength,
        part=section.part,
        knot=section.knot,
        dropper=section.dropper,
        bought=section.bought or None,
    )


def _reach(reach: Reach) -> Iterator[str]:
    return _keys(line_out=reach.line_out, rod=reach.rod)


def _variant(variant: Variant) -> Iterator[str]:
    replaced = (variant.replace or {}).items()
    return _keys(
        name=variant.name,
        use=variant.use,
        line_weight=variant.line_weight,
        **{f"replace.{place}": strand for place, strand in replaced},
        stop_after=variant.stop_after,
        tippet=variant.tippet,
        guard=variant.guard,
        butt=variant.butt,
        total=variant.total,
    )


def _keys(**values: object) -> Iterator[str]:
    """Yield a line for each key that has a value."""
    for key, value in values.items():
        if value is not None:
            plain = isinstance(value, (bool, int))
            # A JSON string of printable characters is a TOML basic string too.
            yield f"{key} = {json.dumps(value if plain else str(value), ensure_ascii=False)}"
