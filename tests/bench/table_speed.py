"""How long a shop's list of 200 recipes takes: as a process, from a table into a folder.

Run as `python -m tests.bench.table_speed` from the project's folder.
"""

import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

from tagend.cards.tables.write_recipes import csv_table
from tests.plausible import plausible_recipes

RECIPES = 200
RUNS = 9
TAGEND = [sys.executable, "-c", "import sys; from tagend.cards.cli import main; main(sys.argv[1:])"]


def main() -> None:
    """Print the median and the longest time in ms."""
    with tempfile.TemporaryDirectory() as home:
        table, folder = Path(home) / "list.csv", Path(home) / "recipes"
        table.write_bytes(csv_table(plausible_recipes(RECIPES)))
        folder.mkdir()
        times = [_ms("table", str(table), "-o", str(folder)) for _ in range(RUNS)]
        print(f"{RECIPES} recipes in{median(times):8.0f}{max(times):8.0f}")


def _ms(*arguments: str) -> float:
    start = time.perf_counter()
    subprocess.run([*TAGEND, *arguments], check=True, capture_output=True)
    return (time.perf_counter() - start) * 1000


if __name__ == "__main__":
    main()
