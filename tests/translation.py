"""How a translation stands: a language in; the keys that it lacks, or has beyond English, out."""

from collections.abc import Iterator, Mapping
from typing import get_args

from tagend.cards.leader.allowance import Into
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.knots import USUAL_ROLES, Knot
from tagend.cards.practice.materials import load_materials
from tagend.cards.practice.rules import Severity, Standing
from tagend.cards.recipe.recipe import Part
from tagend.cards.words.cautions import When, cautions
from tagend.cards.words.language import ENGLISH, read_language

# What the audit puts beside what it finds; a rule that is off finds nothing.
AUDIT = sorted({*get_args(Severity), *get_args(Standing)} - {"off"})


def missing(language: str) -> tuple[str, ...]:
    """Return the keys that a language file lacks, such as `knots.blood.seat`: English stands in."""
    said = set(_keys(read_language(language)))
    return tuple(key for key in _keys(english()) if key not in said)


def unknown(language: str) -> tuple[str, ...]:
    """Return the keys of a language file that nothing here is called by."""
    known = {*_keys(english())} | {f"knots.{knot.name}.title" for knot in load_knots()}
    return tuple(key for key in _keys(read_language(language)) if key not in known)


def english() -> dict[str, object]:
    """Return all that a language file may say, in English and in the shape of such a file."""
    every = cautions(ENGLISH, *get_args(When))
    return {
        **read_language(ENGLISH.language),
        "knots": {knot.name: _of_knot(knot) for knot in load_knots()},
        "materials": {material.name: material.name for material in load_materials()},
        "terms": {term: term for term in (*AUDIT, *get_args(Part), *get_args(Into))},
        "cautions": {one.name: {"short": one.short, "long": one.long} for one in every},
    }


def _of_knot(knot: Knot) -> dict[str, object]:
    caution = {"caution": knot.caution} if knot.caution else {}
    own = {} if knot.roles == USUAL_ROLES else {"roles": list(knot.roles)}
    return {"name": knot.name, **own, "steps": list(knot.steps), "seat": knot.seat, **caution}


def _keys(tables: Mapping[str, object], above: str = "") -> Iterator[str]:
    """Yield the path of each text and list of texts; the forms of one text are one."""
    for key, value in tables.items():
        if isinstance(value, Mapping) and "other" not in value:
            yield from _keys(value, f"{above}{key}.")
        else:
            yield f"{above}{key}"
