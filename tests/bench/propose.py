"""How long a proposal takes from 40 spools: `python -m tests.bench.propose`.

Held in the same run against the floor: working out and auditing one leader of 12 sections, which
any way to the same answer has to do at least once.
"""

from collections.abc import Callable
from random import Random
from statistics import median
from time import perf_counter

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import common_practice
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Tippet, Wish

RUNS = 9
SPOOLS = 40
SECTIONS = 12


def main() -> None:
    """Print medians in ms: fine steps, so that the leaders are long, and coarse ones."""
    practice = common_practice()
    twelve = propose(_wish("0.0028 in"), _spools(scarce=False), practice, "Taper")[0].recipe
    assert len(twelve.sections) == SECTIONS
    floor = _ms(lambda: worksheet(twelve, practice))
    print(f"{'':<34}{'ms':>8}{'floor':>8}{'ratio':>8}{'sections':>10}")
    for step in ("0.0028 in", "0.004 in", "0.008 in", "0.023 in"):
        for scarce in (False, True):
            _print_row(_wish(step), _spools(scarce=scarce), practice, floor, scarce=scarce)


def _spools(*, scarce: bool) -> list[Supply]:
    """Return 40 spools from 0.030 to 0.007 in, two materials; scarce ones hold a few feet."""
    random = Random(8)
    sizes = [round(30 - 23 * place / (SPOOLS - 1), 1) for place in range(SPOOLS)]
    return [
        Supply(
            "fluorocarbon"
            if size < 9
            else random.choice(["nylon", "nylon", "nylon", "hard nylon"]),
            parse_diameter(f"{size} thou"),
            None,
            f"spool {place}",
            parse_length(f"{random.randint(30, 150) if scarce else 1000} in").mm,
        )
        for place, size in enumerate(sizes)
    ]


def _wish(step: str) -> Wish:
    return Wish(
        parse_length("20 ft"),
        parse_diameter("30 thou"),
        Tippet(parse_diameter("7 thou")),
        StepLimit(common_practice().rules["step"].limits, parse_diameter(step).mm),
    )


def _print_row(
    wish: Wish, spools: list[Supply], practice: Practice, floor: float, *, scarce: bool
) -> None:
    try:
        sections = str(len(propose(wish, spools, practice, "Taper")[0].recipe.sections))
    except ValueError:
        sections = "none"
    taken = _ms(lambda: _tried(wish, spools, practice))
    words = f"steps of {wish.step.told('in')}{', scarce' if scarce else ''}"
    print(f"{words:<34}{taken:8.1f}{floor:8.2f}{taken / floor:8.0f}{sections:>10}")


def _tried(wish: Wish, spools: list[Supply], practice: Practice) -> None:
    try:
        propose(wish, spools, practice, "Taper")
    except ValueError:
        return


def _ms(work: Callable[[], object]) -> float:
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append((perf_counter() - start) * 1000)
    return median(times)


if __name__ == "__main__":
    main()
