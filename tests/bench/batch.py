"""How long a leader takes, and searches over racks that have too little: two tables.

Run as `python -m tests.bench.batch` from the project's folder, on a machine that is not busy.
"""

import gc
import resource
import subprocess
import sys
from collections.abc import Callable
from functools import partial
from random import Random
from statistics import median
from time import perf_counter, process_time

from cfractions import Fraction

from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Order
from tagend.cards.batches.best_mix import best_mix
from tagend.cards.batches.cutting import cut_batch
from tagend.cards.batches.whole_leaders import whole_leaders
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.rack_file import Rack
from tagend.cards.practice.shop_file import common_practice
from tests.plausible import plausible_recipe
from tests.shortages import alike, likely

SECTIONS = 12
RECIPES = 100
RUNS = 11
# Batches of which the racks have too little.
CASES: dict[str, Callable[[], tuple[list[Order], Rack]]] = {
    **{
        f"{recipes} × {count}, {spools} a line": partial(likely, recipes, count, spools)
        for recipes in (2, 4, 8, 12, 20, 30)
        for count, spools in ((12, 1), (100, 2))
    },
    "30 × 10000, 2 a line": partial(likely, 30, COUNT_MOST, 2),
    "3 × 100, 166 a line, alike": partial(alike, 3, 100, 166),
    "30 × 10, 166 a line, alike": partial(alike, 30, 10, 166),
    "30 × 10000, 166 a line, alike": partial(alike, 30, COUNT_MOST, 166),
    "30 × 100, 5 a line, odd": partial(alike, 30, 100, 5, odd=True),
    "30 × 10000, 166 a line, odd": partial(alike, 30, COUNT_MOST, 166, odd=True),
}


def main() -> None:
    """Print the tables."""
    gc.set_threshold(100_000)  # as the command does at its start
    _print_warm()
    _print_racks()


def _print_warm() -> None:
    practice = common_practice()
    recipes = [plausible_recipe(Random(seed), SECTIONS) for seed in range(RECIPES)]
    leaders = [work_out(recipe, practice) for recipe in recipes]
    rows: tuple[tuple[str, list[float]], ...] = (
        ("worksheet and audit", [_ms(worksheet, recipe, practice) for recipe in recipes]),
        ("  of it the worksheet", [_ms(work_out, recipe, practice) for recipe in recipes]),
        ("  of it the audit", [_ms(audit, leader, practice) for leader in leaders]),
        (
            f"batch of {COUNT_MOST:,}, no rack",
            [_ms(cut_batch, [Order(leaders[0], COUNT_MOST)], None)],
        ),
    )
    print(f"{SECTIONS} sections, warm, best of {RUNS} runs{'median ms':>14}{'longest ms':>12}")
    for name, times in rows:
        print(f"{name:<34}{median(times):14.2f}{max(times):12.2f}")


def _print_racks() -> None:
    """Print what each search over a rack that has too little takes, each in a new process."""
    print(f"\n{'recipes × count, spools':<34}{'s':>8}{'MB at most':>12}  found")
    for case in CASES:
        for search in SEARCHES:
            done = subprocess.run(
                [sys.executable, "-m", "tests.bench.batch", case, search],
                capture_output=True,
                check=True,
                text=True,
            )
            seconds, kilobytes, *found = done.stdout.split()
            name = f"{case}: {search}"
            megabytes = int(kilobytes) / 1024
            print(f"{name:<34}{float(seconds):8.2f}{megabytes:12.1f}  {' '.join(found)}")


def _search(case: str, search: str) -> None:
    orders, rack = CASES[case]()
    start = process_time()
    found = SEARCHES[search](orders, rack)
    seconds = process_time() - start
    print(seconds, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss, found)


def _cut(orders: list[Order], rack: Rack) -> str:
    whole = cut_batch(orders, rack)
    bought = sum((lack.mm for lack in whole.shortages), start=Fraction(0))
    return f"{float(bought) / 1000:.1f} m to buy, at most {float(whole.spare_mm):.0f} mm less"


def _whole(orders: list[Order], rack: Rack) -> str:
    found = [most for most in whole_leaders([order.leader for order in orders], rack) if most]
    known = sum(most.number == most.at_most for most in found)
    more = sum(most.at_most - most.number for most in found)
    return f"{known} of {len(found)} known, at most {more} more of the others"


def _mix(orders: list[Order], rack: Rack) -> str:
    mix = best_mix(orders, rack)
    asked = sum(order.count for order in orders)
    return f"{sum(mix.numbers)} of {asked} leaders, at most {mix.at_most}"


SEARCHES = {"cut": _cut, "whole": _whole, "mix": _mix}


def _ms(work: Callable[..., object], *given: object) -> float:
    best = float("inf")
    for _ in range(RUNS):
        start = perf_counter()
        work(*given)
        best = min(best, perf_counter() - start)
    return best * 1000


if __name__ == "__main__":
    _search(*sys.argv[1:]) if sys.argv[1:] else main()
