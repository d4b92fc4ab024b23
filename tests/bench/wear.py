"""How many codes two unrelated readers still read after wear: tables on standard output.

Run as `python -m tests.bench.wear` from the project's folder; needs the `wear` extra. The wear is
simulated (see worn.py): the tables compare sizes and levels, and promise nothing of a real label.
"""

import argparse
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import cache, partial
from itertools import product
from typing import NamedTuple

import cv2
import numpy as np
import zxingcpp
from numpy.typing import NDArray
from qrcode import QRCode, constants

from tagend.layouts.codes.code import LEVELS, QUIET, Level
from tests.bench.worn import Label, Rows, Wear, picture

# A sample's text. It takes 37, 41, 49 and 53 modules at L, M, Q and H.
TEXT = (
    "TAG3:HASTY SEVEN:W7:USE WRITTEN DOWN FROM MEMORY:TOTAL 9FT:BUTT +PL:40*21*N*32+S3:"
    "30*13*13+B:20*15*18-B:24*11*FC*10+IC:D1"
)
DOTS = (8, 9, 10, 12, 14)  # of a module at 600 dpi
DESIGN = 10
PRINTED: tuple[tuple[Level, int], ...] = (*((level, 600) for level in LEVELS), ("M", 300))
# Labels of common sheets: their height and what stays free along each edge, in mm.
LABELS = ((16.9, 2.0), (21.2, 2.0), (25.4, 2.0), (29.6, 2.0), (38.1, 2.0))

WEAR = (
    Wear("fresh"),
    Wear("ink spreads 0.03 mm", gain=0.03),
    Wear("ink spreads 0.06 mm", gain=0.06),
    Wear("blur, sigma 0.10 mm", blur=0.10),
    Wear("blur, sigma 0.15 mm", blur=0.15),
    Wear("blur, sigma 0.20 mm", blur=0.20),
    Wear("faded to 35 %", ink=0.35),
    Wear("faded to 55 %", ink=0.55),
    Wear("glare of 4 mm", glare=4),
    Wear("glare of 8 mm", glare=8),
    Wear("a crease", creases=1),
    Wear("two creases", creases=2),
    Wear("corner of 3 mm gone", corner=3),
    Wear("corner of 5 mm gone", corner=5),
    Wear("stained 5 %", stain=0.05),
    Wear("stained 10 %", stain=0.10),
    Wear("stained 20 %", stain=0.20),
    Wear("curled, 30 mm radius", curl=30),
    Wear("curled, 20 mm radius", curl=20),
    Wear("curled, 10 mm radius", curl=10),
    Wear("tilted 30 degrees", tilt=30),
    Wear("tilted 45 degrees", tilt=45),
    Wear("from 25 cm", distance=250),
    Wear("from 35 cm", distance=350),
    Wear("from 45 cm", distance=450),
    Wear(
        "a season of all",
        gain=0.03,
        ink=0.2,
        creases=1,
        corner=1.5,
        stain=0.04,
        curl=35,
        tilt=15,
        blur=0.07,
    ),
)
GROUPS = {
    "all wear": WEAR,
    "what hides modules": tuple(w for w in WEAR if w.glare or w.creases or w.corner or w.stain),
}


class Case(NamedTuple):
    """One way to wear and to print a label."""

    wear: Wear
    dots: int
    level: Level
    dpi: int


Read = Callable[[NDArray[np.uint8]], bool]
Counts = dict[Case, tuple[int, ...]]  # labels that each reader read


class Rates(NamedTuple):
    """How many labels of each case were read, and of how many."""

    counts: Counts
    trials: int

    def of(self, wears: Sequence[Wear], dots: int, level: Level, dpi: int = 600) -> str:
        """Return each reader's share of the labels printed in one way, in %."""
        read = np.sum([self.counts[Case(wear, dots, level, dpi)] for wear in wears], axis=0)
        return " | ".join(f"{share:3.0f}" for share in 100 * read / (self.trials * len(wears)))


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description="Decode rates over simulated wear.")
    parser.add_argument("--trials", type=int, default=6, help="labels a case; 1 for a quick look")
    trials = parser.parse_args().trials
    rates = Rates(counted(trials), trials)
    print(f"Simulated wear: share of labels read, in %, by {' | '.join(readers())}.")
    print(f"{trials} labels a case, {len(TEXT)} characters, seen from 15 cm at 10 points to a mm.")
    levels = [f"{level} ({len(rows_of(level))})" for level in LEVELS]
    modules = [f"{size(dots):.2f}" for dots in DOTS]
    print_row("\nlevel M, 600 dpi; modules of mm:", modules)
    for wear in WEAR:
        print_row(wear.name, [rates.of([wear], dots, "M") for dots in DOTS])
    print_row("\n0.42 mm, 600 dpi; levels (modules):", levels)
    for wear in WEAR:
        print_row(wear.name, [rates.of([wear], DESIGN, level) for level in LEVELS])
    for group, wears in GROUPS.items():
        print_row(f"\n{group}; modules of mm:", modules)
        for level, dpi in PRINTED:
            print_row(f"{level}, {dpi} dpi", [rates.of(wears, dots, level, dpi) for dots in DOTS])
    for group, wears in GROUPS.items():
        print_row(f"\n{group}, 600 dpi, largest that fits:", levels)
        for height, free in LABELS:
            print_row(f"label of {height} mm", _in_room(rates, wears, height, free))


def print_row(name: str, cells: Iterable[str]) -> None:
    """Print one row of a table."""
    print(f"{name:<40}" + "".join(f"{cell:>17}" for cell in cells))


def _in_room(rates: Rates, wears: Sequence[Wear], height: float, free: float) -> Iterator[str]:
    """Yield the largest module of each level that a label allows, and its rates."""
    for level in LEVELS:
        dots = largest_in(height, free, level)
        yield f"{size(dots):.2f}: {rates.of(wears, dots, level)}" if dots else "none"


def largest_in(height: float, free: float, level: Level) -> int | None:
    """Return the dots of the largest module whose symbol a label holds, as the label's face does.

    The light border may reach into what stays free along the edge.
    """
    for dots in reversed(DOTS):
        beyond = max(QUIET * size(dots) - free, 0.0)
        if len(rows_of(level)) * size(dots) + 2 * (free + beyond) <= height:
            return dots
    return None


def counted(trials: int) -> Counts:
    """Return how many of the trials of each case each reader reads."""
    # Labels of one print come together, for that is made once.
    cases = [Case(wear, dots, *how) for dots, how, wear in product(DOTS, PRINTED, WEAR)]
    with ProcessPoolExecutor() as pool:
        return dict(
            zip(cases, pool.map(partial(_count, trials), cases, chunksize=len(WEAR)), strict=True)
        )


def _count(trials: int, case: Case) -> tuple[int, ...]:
    label = Label(rows_of(case.level), size(case.dots), case.dpi)
    read = [
        [reads(seen) for reads in readers().values()]
        # The same seed for all sizes and levels: they meet the same mishaps.
        for trial in range(trials)
        for seen in [picture(label, case.wear, (WEAR.index(case.wear), trial))]
    ]
    return tuple(sum(reader) for reader in zip(*read, strict=True))


@cache
def readers() -> dict[str, Read]:
    """Return the readers there are."""
    detector = cv2.QRCodeDetector()
    found: dict[str, Read] = {
        "zxing": lambda seen: TEXT in [code.text for code in zxingcpp.read_barcodes(seen)],
        "opencv": lambda seen: detector.detectAndDecode(seen)[0] == TEXT,
    }
    try:
        from pyzbar import pyzbar
    except ImportError:  # also where the library that it calls is not there
        return found
    return found | {"zbar": lambda seen: TEXT.encode() in [c.data for c in pyzbar.decode(seen)]}


@cache
def rows_of(level: Level) -> Rows:
    """Return the symbol of just this level, where `layouts.code` might give a higher one."""
    code = QRCode(None, getattr(constants, f"ERROR_CORRECT_{level}"), border=0)
    code.add_data(TEXT)
    code.make()
    return tuple(tuple(bool(dark) for dark in row) for row in code.modules)


def size(dots: int) -> float:
    """Return a module in mm."""
    return dots * 25.4 / 600


if __name__ == "__main__":
    main()
