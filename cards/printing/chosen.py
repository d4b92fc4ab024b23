"""Chosen knots: a code's text in; where today's rule would choose another than was tied, out."""

from collections.abc import Iterator

from tagend.cards.code.notation import read_notation
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.naming import all_named
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import Recipe


def chosen_otherwise(text: str, practice: Practice) -> Iterator[str]:
    """Yield a line for each knot that the text marks as chosen and the rule no longer takes."""
    recipe, tied = (
        read_notation(text, practice.knots, practice.materials, as_tied=as_tied)
        for as_tied in (False, True)
    )
    now = all_named(work_out(recipe, practice))
    for place, then, today in zip(_places(recipe), _knots(tied), _knots(now), strict=True):
        if then is not None and then != today:
            taken = f"takes {today}" if today else "finds none that suits"
            yield f"{recipe.name}, {place}: the label was tied with {then}; the rule now {taken}"


def _places(recipe: Recipe) -> tuple[str, ...]:
    joints = (f"below section {n}" for n in range(1, len(recipe.sections)))
    return "at the butt", *joints, "at the fly"


def _knots(recipe: Recipe) -> tuple[str | None, ...]:
    joints = (section.knot for section in recipe.sections[:-1])
    return recipe.butt.end, *joints, recipe.fly.knot
