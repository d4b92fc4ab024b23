"""Random recipes such as people write: a seed in, the same invented recipes out every time."""

from collections.abc import Iterator
from datetime import date, timedelta
from random import Random

from msgspec import Struct
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_length, parse_span, parse_strength
from tagend.cards.recipe.recipe import Butt, Fly, Recipe, Section

_FIRST = "Sandbar Slack Driftwood Heron Lantern Long Willow Stone Quiet Marsh Otter Gravel"
_SECOND = "eight glide run pool drift edge seam bend tide flat reach tail corner bank"
_WORDS = "for a stiff wind on flat water with small flies in low sun over pale sand and weed"

# lb a square thousandth: breaking stresses of 400, 700 and 750 MPa, invented but likely.
_LB_PER_THOU2 = {"hard nylon": 0.0456, "nylon": 0.0797, "fluorocarbon": 0.0854}
_KG_PER_LB = 0.4536


class _Habit(Struct, frozen=True):
    """How one person writes recipes."""

    salt: bool
    metric: bool
    thou: bool
    x_sizes: bool
    strengths: str  # "all", "tippet" or "none"
    knots: str  # "all", "last" or "none"


def plausible_recipes(count: int, seed: int = 1) -> Iterator[Recipe]:
    """Yield recipes of many kinds: fresh water and salt, inches and centimetres."""
    random = Random(seed)
    for _ in range(count):
        yield plausible_recipe(random)


def plausible_recipe(random: Random, sections: int | None = None) -> Recipe:
    """Return one recipe, of as many sections as asked or else of a likely number."""
    habit = _habit(random)
    count = sections or (random.randint(3, 6) if habit.salt else random.randint(4, 9))
    recipe = Recipe(_name(random), _sections(random, count, habit))
    if _chance(random, 70):
        weight = random.randint(6, 12) if habit.salt else random.randint(2, 7)
        recipe = replace(recipe, line_weight=weight)
    return _with_words(_with_ends(recipe, random, habit), random)


def _chance(random: Random, percent: int) -> bool:
    return random.random() * 100 < percent


def _habit(random: Random) -> _Habit:
    salt, metric = _chance(random, 35), _chance(random, 20)
    return _Habit(
        salt=salt,
        metric=metric,
        thou=not metric and _chance(random, 10),
        x_sizes=not salt and not metric and _chance(random, 40),
        strengths=random.choices(("all", "tippet", "none"), (50, 20, 30))[0],
        knots=random.choices(("all", "last", "none"), (30, 20, 50))[0],
    )


def _name(random: Random) -> str:
    name = f"{random.choice(_FIRST.split())} {random.choice(_SECOND.split())}"
    if _chance(random, 20):
        return name.title()
    return f"{name}, {random.randint(7, 15)} ft" if _chance(random, 15) else name


def _sections(random: Random, count: int, habit: _Habit) -> tuple[Section, ...]:
    butt, tippet = (25, 13) if habit.salt else (21, 5)
    butt, tippet = butt - random.randint(0, 3), tippet + random.randint(-1, 2)
    sizes = [round(butt - (butt - tippet) * place / max(count - 1, 1)) for place in range(count)]
    body = "hard nylon" if _chance(random, 60 if habit.salt else 25) else "nylon"
    end = "fluorocarbon" if _chance(random, 50) else body
    guarded = habit.salt and count > 3 and _chance(random, 40)
    if guarded:
        sizes = [*sizes[1:], sizes[0]]
    return tuple(
        _section(random, size, end if place >= count - 1 - guarded else body, place, count, habit)
        for place, size in enumerate(sizes)
    )


def _section(
    random: Random, thou: int, material: str, place: int, count: int, habit: _Habit
) -> Section:
    last, tippet = place == count - 1, place >= count - 2
    wanted = habit.strengths == "all" or (habit.strengths == "tippet" and last)
    joint = "triple surgeon's" if tippet else "blood"
    knotted = habit.knots == "all" or (habit.knots == "last" and tippet)
    section = Section(
        length=parse_span(_length(random, place, last=last, habit=habit)),
        diameter=parse_diameter(_diameter(thou, habit)),
        material=material,
        strength=parse_strength(_strength(thou, material, habit)) if wanted else None,
        knot=joint if knotted and not last else None,
    )
    if tippet and not last and _chance(random, 8):
        return replace(section, dropper=parse_length("15 cm" if habit.metric else "6 in"))
    return replace(section, part="tippet") if last and _chance(random, 10) else section


def _length(random: Random, place: int, *, last: bool, habit: _Habit) -> str:
    inches = random.choice((18, 20, 24, 30)) if last else max(36 - 6 * place, 6)
    inches += random.randint(-2, 6)
    if habit.metric:
        return f"{round(inches * 2.54)} cm"
    if last and _chance(random, 8):
        return f"{inches} to {inches + 6} in"
    return f"{inches} 1/2 in" if _chance(random, 5) else f"{inches} in"


def _diameter(thou: int, habit: _Habit) -> str:
    if habit.metric:
        return f"{thou * 0.0254:.2f} mm"
    if habit.x_sizes and thou <= 8:
        return f"{11 - thou}X"
    return f"{thou} thou" if habit.thou else f"0.{thou:03} in"


def _strength(thou: int, material: str, habit: _Habit) -> str:
    pounds = _LB_PER_THOU2[material] * thou * thou
    if habit.metric:
        return f"{pounds * _KG_PER_LB:.1f} kg"
    return f"{pounds:.0f} lb" if pounds > 9.5 else f"{pounds:.1f} lb"


def _with_ends(recipe: Recipe, random: Random, habit: _Habit) -> Recipe:
    loop = parse_length("2 cm" if habit.metric else "3/4 in") if _chance(random, 20) else None
    end = "perfection loop" if _chance(random, 50) else None
    knot = random.choice(("non-slip loop", "improved clinch")) if _chance(random, 40) else None
    total = parse_length(f"{random.randint(7, 15)} ft") if _chance(random, 25) else None
    return replace(recipe, butt=Butt(end, loop), fly=Fly(knot), total=total)


def _with_words(recipe: Recipe, random: Random) -> Recipe:
    use = " ".join(random.sample(_WORDS.split(), 4)) if _chance(random, 15) else None
    note = (
        f"{' '.join(random.sample(_WORDS.split(), 7)).capitalize()}."
        if _chance(random, 15)
        else None
    )
    tied = date(2026, 1, 1) + timedelta(random.randrange(365)) if _chance(random, 15) else None
    lengths = recipe.lengths if _chance(random, 95) else "cut"
    return replace(recipe, use=use, note=note, tied=tied, lengths=lengths)
