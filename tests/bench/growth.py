"""How the time of one grows with their number, as a table: an exponent of 1 is in proportion."""

from collections.abc import Iterator, Sequence
from math import log
from pathlib import Path

from tests.bench.ours import SAMPLE
from tests.bench.processes import OURS, TAGEND, medians, recipe_files, told

IN_TABLE = 1000  # recipes at most: 10,000 have more rows than a table may
RUNS = 3


def print_growth(folder: Path, most: int) -> None:
    """Print a line for each kind of work, for 1, 10, 100 … of them."""
    counts = [10**n for n in range(6) if 10**n <= most]
    print(f"\n{'ms each':<12}{''.join(f'{count:>10,}' for count in counts)}{'exponent':>10}")
    out = str(folder / "out.pdf")
    for kind in ("cards", "labels", "copies"):
        _print_grown(kind, counts, [told([*OURS, kind, str(n), out])[0] for n in counts])
    for what, commands in _commands(folder, counts):
        whole = [medians([*TAGEND, *words], [*TAGEND, "--help"], RUNS)[0] for words in commands]
        _print_grown(what, counts, whole)


def _commands(folder: Path, counts: Sequence[int]) -> Iterator[tuple[str, list[list[str]]]]:
    """Yield a kind of work with its command for each count."""
    names = recipe_files(folder, counts[-1])
    yield "check", [["check", *names[:n]] for n in counts]
    tables = {n: str(folder / f"{n}.csv") for n in counts if n <= IN_TABLE}
    to = ["--replace", "-o"]
    yield "table out", [["table", *names[:n], *to, table] for n, table in tables.items()]
    yield "table in", [["table", table, *to, str(folder / str(n))] for n, table in tables.items()]
    out = str(folder / "out.pdf")
    yield "bench", [["bench", str(SAMPLE), "--count", str(n), *to, out] for n in counts]


def _print_grown(what: str, counts: Sequence[int], seconds: Sequence[float]) -> None:
    each = [f"{whole / n * 1000:.2f}" for whole, n in zip(seconds, counts, strict=False)]
    each += ["" for _ in counts[len(each) :]]
    exponent = log(seconds[-1] / seconds[-2], 10)
    print(f"{what:<12}{''.join(f'{one:>10}' for one in each)}{exponent:10.2f}", flush=True)
