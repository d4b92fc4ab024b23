"""Commands in processes of their own: what they take, by turns, and what they print."""

import os
import subprocess
import sys
import time
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from statistics import median

from tagend.cards.recipe.recipe_text import recipe_text
from tests.plausible import plausible_recipes
from tests.tree import ROOT

TAGEND = [sys.executable, "-c", "from tagend.cards.start import main; main()"]
OURS = [sys.executable, "-m", "tests.bench.ours"]
RUNS = 15
# As installed: with the bytecode that pip leaves beside the source.
ENVIRONMENT = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}


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


def told(command: Sequence[str]) -> list[float]:
    """Return the numbers that a command prints."""
    done = subprocess.run(command, capture_output=True, cwd=ROOT, env=ENVIRONMENT, text=True)
    if done.returncode:
        raise SystemExit(done.stderr)
    return [float(word) for word in done.stdout.split()]


def held(command: Sequence[str]) -> float:
    """Return the most MB that a command and its copies hold; what they share counts once."""
    most = 0
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, cwd=ROOT, env=ENVIRONMENT) as run:
        while run.poll() is None:
            with suppress(OSError, ValueError):  # one ends as it is looked at
                children = Path(f"/proc/{run.pid}/task/{run.pid}/children").read_text().split()
                most = max(most, sum(map(_held, (str(run.pid), *children))))
            time.sleep(0.1)
    return most / 1024


def _held(process: str) -> int:
    """Return the kilobytes of a process by Linux's account, its part of what is shared."""
    for line in Path(f"/proc/{process}/smaps_rollup").read_text().splitlines():
        if line.startswith("Pss:"):
            return int(line.split()[1])
    return 0


def recipe_files(folder: Path, count: int) -> list[str]:
    """Return the names of so many files of plausible recipes."""
    names = [str(folder / f"{number:05}.toml") for number in range(count)]
    for name, recipe in zip(names, plausible_recipes(count), strict=True):
        Path(name).write_text(recipe_text(recipe), encoding="utf-8")
    return names
