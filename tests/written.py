"""Short spellings for tests: quantities as text in; sections, recipes and leaders out."""

from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.leader.leader import Leader, work_out
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import common_practice, practice_of, read_shop
from tagend.cards.recipe.recipe import Butt, Fly, LengthsMean, Part, Reach, Recipe, Section

PRACTICE = common_practice()


def section(
    length: str,
    diameter: str,
    material: str = "nylon",
    strength: str | None = None,
    *,
    knot: str | None = None,
    part: Part | None = None,
    dropper: str | None = None,
    tapers_to: str | None = None,
    bought: bool = False,
) -> Section:
    return Section(
        length=parse_span(length),
        diameter=parse_diameter(diameter),
        material=material,
        strength=parse_strength(strength) if strength else None,
        knot=knot,
        part=part,
        dropper=parse_length(dropper) if dropper else None,
        tapers_to=parse_diameter(tapers_to) if tapers_to else None,
        bought=bought,
    )


def recipe(
    *sections: Section,
    butt: str | None = None,
    loop: str | None = None,
    fly: str | None = None,
    lengths: LengthsMean = "finished",
    total: str | None = None,
    line_tip: str | None = None,
    record_lengths: bool = False,
    reach: tuple[str, str] | None = None,  # line out and rod
) -> Recipe:
    return Recipe(
        name="Under test",
        sections=sections,
        lengths=lengths,
        total=parse_length(total) if total else None,
        line_tip=parse_diameter(line_tip) if line_tip else None,
        record_lengths=record_lengths,
        butt=Butt(butt, parse_length(loop) if loop else None),
        fly=Fly(fly),
        reach=Reach(parse_length(reach[0]), parse_length(reach[1])) if reach else None,
    )


def leader(written: Recipe, practice: Practice = PRACTICE) -> Leader:
    return work_out(written, practice)


def practice(shop: str) -> Practice:
    """Return the practice of a person with this shop file."""
    return practice_of(read_shop(shop.encode()))


# A salt-water leader of 132 in: 11 ft, or 3.35 m.
SIX = recipe(
    section("46 in", "0.023 in", "hard nylon", "25 lb"),
    section("24 in", "0.020 in", "hard nylon", "18 lb"),
    section("14 in", "0.017 in", "hard nylon", "13 lb"),
    section("10 in", "0.015 in", "hard nylon", "10 lb"),
    section("8 in", "0.013 in", "hard nylon", "8 lb"),
    section("30 in", "0.010 in", "fluorocarbon", "8.5 lb"),
    butt="perfection loop",
    fly="non-slip loop",
)
