"""What people wait for against its floor, by turns in one run: `python -m tests.bench.run`.

README.md beside it says how to read the table.
"""

import argparse
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from tests.bench.dependencies import print_dependencies
from tests.bench.growth import print_growth
from tests.bench.ours import SAMPLE
from tests.bench.processes import OURS, RUNS, TAGEND, held, medians, recipe_files, told
from tests.bench.redrawn import redrawn
from tests.tree import ROOT

PLAIN = [sys.executable, str(ROOT / "tests" / "bench" / "plain.py")]

READ = "import click, pydantic_core, sys, tomllib; tomllib.load(open(sys.argv[1], 'rb'))"
# A recipe as tables that are checked for their keys and kinds, no more.
CHECKED = """
import click, sys, tomllib
from pydantic_core import SchemaValidator, core_schema as c
text = c.union_schema([c.str_schema(strict=True), c.float_schema(), c.date_schema()])
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
    seconds: float  # of all cores together
    clock: float  # seconds
    size: int  # of the PDF in bytes
    floor_seconds: float


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
        print_growth(Path(folder), 10 * many)
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
    for what, run, most in (("cards", cards, 1.0), ("labels", labels, 0.7)):
        yield _each(f"{many:,} {what}, each", run, most)
        yield _each("  by the clock", run._replace(seconds=run.clock), most)
    yield _each(f"{many:,} copies of a card, each", copies, 1.3)
    one = made(folder, "copies", many // 2)
    more = (copies.size - one.size) / (copies.number - one.number)
    yield Row("  its bytes, each more", more, 120, 1.0, "bytes")
    more_labels = made(folder, "labels", 10 * many)
    each, of_fewer = (run.seconds / run.number * 1000 for run in (more_labels, labels))
    yield Row(f"{10 * many:,} labels, each, to fewer", each, of_fewer, 1.05)
    most_held = held([*OURS, "labels", str(10 * many), out]), held([*PLAIN, pages, out])
    yield Row("  memory at most", *most_held, 1.3, "MB")
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


def made(folder: Path, kind: str, count: int) -> Made:
    """Return what both ways took, each in a process of its own, for pages that are the same."""
    out, pages = str(folder / "out.pdf"), str(folder / "pages")
    seconds, clock, size = told([*OURS, kind, str(count), out, pages])
    (floor_seconds,) = told([*PLAIN, pages, out])
    return Made(count, seconds, clock, int(size), floor_seconds)


if __name__ == "__main__":
    main()
