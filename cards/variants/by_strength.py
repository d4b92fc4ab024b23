"""A strand that is known by its strength alone: what is asked for and a rack in, its spool out."""

from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.recipe.strand import StrandByStrength
from tagend.cards.variants.from_rack import NEAR
from tagend.layouts.base.faults import refused


def spool_by_strength(asked: StrandByStrength, rack: Rack, practice: Practice) -> Spool:
    """Return the spool nearest in strength: of the material, or else of its kind of line.

    Raises `Refused` where none is near, with what the rack has of the kind.
    """
    find = practice.materials.find
    wanted = asked.strength.kg
    of_kind = [
        (max(strength.kg, wanted) / min(strength.kg, wanted), strength, spool)
        for spool in rack.spools
        if (strength := spool.strength) and find(spool.material).kind == find(asked.material).kind
    ]
    fit = [
        (spool.material != asked.material, times, place, spool)
        for place, (times, _, spool) in enumerate(of_kind)
        if times <= NEAR
    ]
    if fit:
        return min(fit)[-1]
    has = ", ".join(f"{strength.plain} {spool.material}" for _, strength, spool in of_kind)
    raise refused(
        f"no spool on the rack is {asked.material} of about {asked.strength.plain}",
        (f"name one of {has}, or " if has else "")
        + "read the diameter off the spool that you buy and write it first",
    )
