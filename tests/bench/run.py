"""What people wait for against its floor, by turns in one run: `python -m tests.bench.run`.

README.md beside it says how to read the table.
"""

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from math import log
from pathlib import Path
from statistics import median
from typing import NamedTuple

from tagend.cards.recipe.recipe_text import recipe_text
from tests.bench.dependencies import print_dependencies
from tests.bench.ours import SAMPLE
from tests.bench.redrawn import redrawn
from tests.plausible import plausible_recipes
from tests.tree import ROOT

TAGEND = [sys.executable, "-c", "from tagend.cards.start import main; main()"]
PLAIN = [sys.executable, str(ROOT / "tests" / "bench" / "plain.py")]
OURS = [sys.executable, "-m", "tests.bench.ours"]
RUNS = 15
# As installed: with the bytecode that pip leaves beside the source.
ENVIRONMENT = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}

READ = "import click, pydantic_core, sys, tomllib; tomllib.load(open(sys.argv[1], 'rb'))"
# A recipe as tables that are checked for their keys and kinds, no more.
CHECKED = """
import click, sys, tomllib
from pydantic_core import SchemaValidator, core_schema as c
text = c.union_schema([c.str_schema(strict=True), c.float_schema(), c.date_schema()])
fields = lambda t: c.model_fields_schema(t)
table = c.dict_schema(c.str_schema(), text)
value = c.union_schema([text, table, c.list_schema(table)])
check = SchemaValidator(c.dict_schema(c.str_schema(), value)).validate_python
for name in sys.argv[1:]:
    with open(name, "rb") as file:
        check(tomllib.load(file))
"""


class Row(NamedTuple):
    """A figure of ours, its floor's, and how many times the floor it may be."""

    what: str
    ours: float
    floor: float
    most: float
    unit: str = "ms"


class Made(NamedTuple):
    """What came of one run of ours and of the plain script that draws the same."""

    number: int
    seconds: float
    kilobytes: int
    size: int  # of the PDF in bytes
    floor_seconds: float
    floor_kilobytes: int


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description="Ours against the floor.")
    parser.add_argument("--long", action="store_true", help="as many as the limits speak of")
    many = 1000 if parser.parse_args().long else 100
    with tempfile.TemporaryDirectory() as folder:
        print(f"{'':<44} {'ours':>8} {'floor':>8} {'':<5} {'ratio':>6} {'most':>5}")
        for row in _rows(Path(folder), many):
            ratio = row.ours / row.floor
            told = f"{row.what:<44} {row.ours:8.2f} {row.floor:8.2f} {row.unit:<5} {ratio:6.2f}"
            print(told, f"{row.most:5.2f}{'' if ratio <= row.most else '  over'}", flush=True)
        _print_growth(Path(folder), many)
    print_dependencies()


def _rows(folder: Path, many: int) -> Iterator[Row]:
    sample, out, pages = str(SAMPLE), str(folder / "out.pdf"), str(folder / "pages")
    read = [sys.executable, "-c", READ, sample]
    for words in (["--help"], ["check", sample], ["cuts", sample]):
        yield _processes(words[0], [*TAGEND, *words], read, 1.25)
    for kind in ("cards", "labels"):
        made(folder, f"one-{kind}", 1)
        words = [*TAGEND, kind, sample, "--replace", "-o", out]
        yield _processes(kind, words, [*PLAIN, pages, out], 1.3)
    cards, labels, copies = (made(folder, kind, many) for kind in ("cards", "labels", "copies"))
    yield _each(f"{many:,} cards, each", cards, 1.0)
    yield _each(f"{many:,} labels, each", labels, 0.7)
    yield _each(f"{many:,} copies of a card, each", copies, 1.3)
    one = made(folder, "copies", many // 2)
    more = (copies.size - one.size) / (copies.number - one.number)
    yield Row("  its bytes, each more", more, 120, 1.0, "bytes")
    more_labels = made(folder, "labels", 10 * many)
    each, of_fewer = (run.seconds / run.number * 1000 for run in (more_labels, labels))
    yield Row(f"{10 * many:,} labels, each, to fewer", each, of_fewer, 1.05)
    held = more_labels.kilobytes / 1024, more_labels.floor_kilobytes / 1024
    yield Row("  memory at most", *held, 1.3, "MB")
    names = recipe_files(folder, many)
    floor = [sys.executable, "-c", CHECKED, *names]
    yield _processes(f"{many:,} recipes through check", [*TAGEND, "check", *names], floor, 2.0, 3)
    for what, ours, least in redrawn():
        yield Row(what, ours, least, 1.5)


def _each(what: str, run: Made, most: float) -> Row:
    return Row(what, run.seconds / run.number * 1000, run.floor_seconds / run.number * 1000, most)


def _processes(
    what: str, ours: Sequence[str], floor: Sequence[str], most: float, runs: int = RUNS
) -> Row:
    own, least = medians(ours, floor, runs)
    return Row(f"{what}, whole process", own * 1000, least * 1000, most)


def medians(ours: Sequence[str], floor: Sequence[str], runs: int = RUNS) -> tuple[float, float]:
    """Return the median times of two commands in seconds, run by turns after one warm-up."""
    times: tuple[list[float], list[float]] = ([], [])
    for run in range(runs + 1):
        for command, seen in zip((ours, floor), times, strict=True):
            start = time.perf_counter()
            done = subprocess.run(command, capture_output=True, cwd=ROOT, env=ENVIRONMENT)
            if done.returncode > 1:  # 1 says that a leader cannot be tied
                raise SystemExit(done.stderr.decode())
            if run:
                seen.append(time.perf_counter() - start)
    own, least = map(median, times)
    return own, least


def made(folder: Path, kind: str, count: int) -> Made:
    """Return what both ways took, each in a process of its own, for pages that are the same."""
    out, pages = str(folder / "out.pdf"), str(folder / "pages")
    seconds, held, size = _told([*OURS, kind, str(count), out, pages])
    floor_seconds, floor_held = _told([*PLAIN, pages, out])
    return Made(count, seconds, int(held), int(size), floor_seconds, int(floor_held))


def _told(command: Sequence[str]) -> list[float]:
    done = subprocess.run(command, capture_output=True, cwd=ROOT, env=ENVIRONMENT, text=True)
    if done.returncode:
        raise SystemExit(done.stderr)
    return [float(word) for word in done.stdout.split()]


def recipe_files(folder: Path, count: int) -> list[str]:
    """Return the names of so many files of plausible recipes."""
    names = [str(folder / f"{number:05}.toml") for number in range(count)]
    for name, recipe in zip(names, plausible_recipes(count), strict=True):
        Path(name).write_text(recipe_text(recipe), encoding="utf-8")
    return names


def _print_growth(folder: Path, many: int) -> None:
    """Print how the time of each grows; an exponent of 1 means twice the time for twice as many."""
    counts = [10**n for n in range(6) if 10**n <= many]
    print(f"\n{'ms each':<12}" + "".join(f"{count:>10,}" for count in counts) + f"{'exponent':>10}")
    for kind in ("cards", "labels", "copies"):
        runs = [made(folder, kind, count) for count in counts]
        each = "".join(f"{run.seconds / run.number * 1000:10.2f}" for run in runs)
        last, before = runs[-1], runs[-2]
        print(f"{kind:<12}{each}{log(last.seconds / before.seconds, 10):10.2f}")
    names = recipe_files(folder, many)
    whole = [medians([*TAGEND, "check", *names[:n]], [*TAGEND, "--help"], 3)[0] for n in counts]
    each = "".join(f"{seconds / n * 1000:10.2f}" for seconds, n in zip(whole, counts, strict=True))
    print(f"{'check':<12}{each}{log(whole[-1] / whole[-2], 10):10.2f}")


if __name__ == "__main__":
    main()
