"""Variants of a leader: a recipe and what shall change in it in, the whole changed recipe out."""

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.leader.audit.lengths import stated_total
from tagend.cards.leader.leader import work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.recipe.recipe import NAME_MOST, Recipe, Strand, Variant
from tagend.cards.variants.variant_lengths import with_butt, with_total
from tagend.cards.variants.variant_strands import restrung, told_strands, with_fitting_knots
from tagend.layouts.base.faults import refused, under
from tagend.layouts.base.near_names import suggestion

if TYPE_CHECKING:
    from tagend.cards.practice.rack_file import Rack


def variant_called(name: str, recipe: Recipe, practice: Practice) -> Recipe:
    """Return a recipe's variant as a recipe; capitals in its name make no difference."""
    known = {variant.name.casefold(): variant for variant in recipe.variants}
    wanted = name.strip().casefold()
    if wanted in known:
        return resolved(recipe, known[wanted], practice)
    names = {key: variant.name for key, variant in known.items()}
    instead = suggestion(wanted, names) if names else "this recipe has none"
    raise refused(f"no variant is called {name[:NAME_MOST]!r}", instead)


def with_variants(recipe: Recipe, practice: Practice) -> Iterator[Recipe]:
    """Yield a recipe, then each of its variants as a recipe."""
    yield recipe
    for variant in recipe.variants:
        yield resolved(recipe, variant, practice)


def variants_beside(recipes: Sequence[Recipe], practice: Practice) -> Iterator[Recipe]:
    """Yield the variants that these recipes have, but for those that are among them themselves."""
    for recipe in recipes:
        with under(recipe.name):
            found = list(with_variants(recipe, practice))
        yield from (variant for variant in found if variant not in recipes)


def resolved(recipe: Recipe, variant: Variant, practice: Practice) -> Recipe:
    """Return one of a recipe's variants as a recipe; faults name it."""
    with under(f"variant {variant.name!r}"):
        return replace(vary(recipe, variant, practice), name=joined_name(recipe, variant.name))


def vary(recipe: Recipe, change: Variant, practice: Practice, rack: "Rack | None" = None) -> Recipe:
    """Return the recipe with a change made; its name stays, and it has no variants itself.

    With a rack, all that the change does not name is strung from its spools. New lengths lie on
    the marks that hands use, and make what they shall to the finest mark; of a range, its longest
    counts. Lengths and strands that the change says stay. Knots that the recipe names and that do
    not suit the new strands are left to the rule, and a stated total that no longer holds is left
    out. Raises `Refused` for what cannot be tied.
    """
    varied = restrung(recipe, change, practice)
    named = told_strands(varied, change, practice)
    if rack is not None:
        from tagend.cards.variants.from_rack import strung_from

        with under("rack"):
            varied = strung_from(rack, varied, named.keys(), practice)
        varied = with_fitting_knots(varied, recipe, practice)
    told = {place for place, strand in named.items() if strand.length}
    if change.total:
        with under("total"):
            varied = with_total(varied, change.total, practice, told)
    if change.butt:
        with under("butt"):
            freed_mm = _freed_mm(recipe, change, named)
            varied = with_butt(varied, change.butt, practice, told, freed_mm)
    return replace(
        _with_true_total(varied, recipe, practice),
        use=change.use or recipe.use,
        line_weight=change.line_weight or recipe.line_weight,
        variants=(),
    )


def _freed_mm(recipe: Recipe, change: Variant, named: Mapping[int, Strand]) -> Fraction:
    """Return what told lengths take off the recipe's own total, where that is to stay."""
    if change.total or change.stop_after:
        return Fraction(0)
    pairs = zip(recipe.sections, map(named.get, range(1, len(recipe.sections) + 1)), strict=True)
    lost = (
        section.length.high.mm - strand.length.high.mm
        for section, strand in pairs
        if strand and strand.length and strand is not change.guard
    )
    return sum(lost, start=Fraction(0))


def _with_true_total(varied: Recipe, before: Recipe, practice: Practice) -> Recipe:
    """Return the varied recipe, without the total it states where that no longer holds."""
    now = work_out(varied, practice)
    missed = any(stated_total(now, practice.rules["stated total"]))
    wrong = missed and now.finished != work_out(before, practice).finished
    return replace(varied, total=None) if wrong else varied


def joined_name(recipe: Recipe, suffix: str) -> str:
    """Return the name of a variant: `Sandbar eight, in hard wind`; raises `Refused` if too long."""
    name = f"{recipe.name}, {suffix}"
    if len(name) > NAME_MOST:
        found = f"{name!r} has {len(name)} characters"
        raise refused(found, f"shorten it to {NAME_MOST}", "name")
    return name
