"""Batches that a rack has too little line for: sizes and a seed in; orders and a rack out."""

from collections import defaultdict
from itertools import cycle, islice
from random import Random

from cfractions import Fraction

from tagend.cards.base.units import Length
from tagend.cards.batches.batch import Order
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.rack_file import Rack, Spool
from tagend.cards.recipe.recipe import Section
from tests.plausible import plausible_recipes
from tests.written import leader, recipe, section


def likely(recipes: int, count: int, spools: int, seed: int = 1) -> tuple[list[Order], Rack]:
    """Return so many of each plausible recipe, and a rack with so many spools of each line."""
    leaders = [leader(one) for one in plausible_recipes(recipes, seed)]
    return _with_rack(leaders, count, spools, Random(seed))


def alike(
    recipes: int, count: int, spools: int, seed: int = 1, *, odd: bool = False
) -> tuple[list[Order], Rack]:
    """Return leaders of twelve sections of three lines, with lengths finer than a tape if odd."""
    random = Random(seed)
    leaders = []
    for _ in range(recipes):
        lengths = [random.randint(50_000, 600_000) for _ in range(12)]
        parts = [
            section(f"{n / 10_000} in" if odd else f"{n // 10_000} in", f"0.0{20 - at // 4} in")
            for at, n in enumerate(lengths)
        ]
        leaders.append(leader(recipe(*parts, lengths="cut")))
    return _with_rack(leaders, count, spools, random)


def linked(recipes: int, count: int) -> tuple[list[Order], Rack]:
    """Return leaders whose sections are each of a line of its own, which all share spools."""
    thick = iter(range(12 * recipes, 0, -1))  # neighbours print alike
    parts = ((f"{20 + at} in", f"{0.1 + 0.0025 * next(thick):.4f} mm") for at in cycle(range(12)))
    leaders = [
        leader(recipe(*(section(*part) for part in islice(parts, 12)), lengths="cut"))
        for _ in range(recipes)
    ]
    return _with_rack(leaders, count, 1, Random(1))


def _with_rack(
    leaders: list[Leader], count: int, spools: int, random: Random
) -> tuple[list[Order], Rack]:
    """Put on each spool from half to all of its share of the line that all leaders take."""
    wanted: defaultdict[Line, Fraction] = defaultdict(Fraction)
    strands: dict[Line, Section] = {}
    for of in leaders:
        for piece in of.pieces:
            if not piece.section.bought:
                wanted[Line.of(piece.section)] += count * piece.cut_mm
                strands.setdefault(Line.of(piece.section), piece.section)
    on_rack: list[Spool] = []
    for line, mm in wanted.items():
        for _ in range(spools):
            left = int(mm * random.randint(50, 100) / 100 / spools)
            length = Length(Fraction(left), f"{left} mm", "mm")
            on_rack.append(Spool(str(len(on_rack)), line.material, strands[line].diameter, length))
    return [Order(of, count) for of in leaders], Rack(tuple(on_rack))
