"""How near `propose` comes to leaders in print: `python -m tests.bench.published_proposals`.

The first table is of the spools: each formula's own butt, tippet and largest step, from a rack of
every thousandth of an inch (or tenth of a millimetre). The second is of the lengths: each
formula's own sections, total and shares. The formulas and their sources are in
tests/outside/test_published_leaders. A bite guard is left out: none is proposed.
"""

from itertools import pairwise

from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.base.units import DIAMETER_MM, Diameter, Length, parse_diameter, parse_length
from tagend.cards.propose.lengths import plan_of
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import supplies_of_diameters
from tagend.cards.propose.tape import tape_for
from tagend.cards.propose.wish import Shares, Tippet, Wish
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.quantities import INCH_MM
from tests.outside.test_published_leaders import LEADERS, written
from tests.written import PRACTICE, leader

THOUSANDTHS = [parse_diameter(f"{size} thou") for size in range(4, 33)]
TENTHS = [parse_diameter(f"{size / 10} mm") for size in range(1, 9)]


def main() -> None:
    """Print both tables."""
    leaders = [(published, without_guard(written(published))) for published in LEADERS]
    print("Spools: thousandths of an inch in print, and those proposed")
    for published, recipe in leaders:
        if published.diameters:
            print_spools(published.number, recipe)
    print("\nLengths: inches in print, and those proposed for as many sections")
    for published, recipe in leaders:
        print_lengths(published.number, recipe)


def without_guard(recipe: Recipe) -> Recipe:
    above = tuple(p.section for p in leader(recipe).pieces if p.part != "bite guard")
    return replace(recipe, sections=above)


def print_spools(number: str, recipe: Recipe) -> None:
    printed = [section.diameter for section in recipe.sections]
    rack = TENTHS if printed[0].unit == "mm" else THOUSANDTHS
    wish = Wish(
        total=total_of(recipe),
        butt=printed[0],
        tippet=Tippet(printed[-1]),
        step=StepLimit(
            PRACTICE.rules["step"].limits,
            max(above.mm - below.mm for above, below in pairwise(printed)),
        ),
    )
    best = propose(wish, supplies_of_diameters(rack, "nylon", wish.tippet), PRACTICE, "Taper")[0]
    found = [strand.diameter for strand in best.strands]
    common = len({d.mm for d in printed} & {d.mm for d in found})
    print(
        f"  {number:<4} {row(printed):<26} {row(found):<26} "
        f"{common} of {len(printed)} sizes, {len(found) - len(printed):+d} knots, "
        f"largest ratio {largest_ratio(printed):.2f} and {largest_ratio(found):.2f}"
    )


def print_lengths(number: str, recipe: Recipe) -> None:
    tape = tape_for(total_of(recipe), Fraction(0), PRACTICE)
    printed = [piece.finished.high_mm for piece in leader(recipe).pieces]
    plan = plan_of(len(printed), own_shares(printed), tape)
    if plan is None:
        print(f"  {number:<4} too short for so many pieces")
        return
    found = [length * tape.mark_mm for length in plan.lengths]
    off = [abs(one - other) for one, other in zip(printed, found, strict=True)]
    shares = "/".join(
        str(share) for share in (plan.shares.butt, plan.shares.taper, plan.shares.tippet)
    )
    print(
        f"  {number:<4} {inches(printed):<30} {inches(found):<30} {shares:<9} "
        f"{float(100 * sum(off) / 2 / sum(printed)):3.0f} % of the line elsewhere"
    )


def total_of(recipe: Recipe) -> Length:
    whole = leader(recipe).finished.high_mm
    metric = recipe.sections[0].length.high.unit == "mm"
    return parse_length(f"{whole} mm" if metric else f"{whole / INCH_MM} in")


def own_shares(lengths: list[Fraction]) -> Shares:
    """Return a leader's shares, its butt being the upper half of what is above the tippet."""
    whole, butt = sum(lengths), len(lengths) // 2
    percent = round(100 * sum(lengths[:butt]) / whole), round(100 * lengths[-1] / whole)
    return Shares(percent[0], 100 - sum(percent), percent[1])


def row(diameters: list[Diameter]) -> str:
    return " ".join(f"{float(d.mm / DIAMETER_MM['thou']):.3g}" for d in diameters)


def inches(lengths: list[Fraction]) -> str:
    return " ".join(f"{float(mm / INCH_MM):.3g}" for mm in lengths)


def largest_ratio(diameters: list[Diameter]) -> float:
    return max(float(above.mm / below.mm) for above, below in pairwise(diameters))


if __name__ == "__main__":
    main()
