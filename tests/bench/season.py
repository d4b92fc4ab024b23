"""Commands on the book of a season against the imports they need: `python -m tests.bench.season`.

Whole processes, by turns with `python -c "import click, pydantic_core, sqlite3"` in the same run. A
person waits for each of them, so that 1.35 times the floor and 50 ms is what each may take.
"""

import sys
import tempfile
from pathlib import Path

from tests.bench.processes import TAGEND, medians
from tests.season import season

FLOOR = [sys.executable, "-c", "import click, pydantic_core, sqlite3"]
COMMANDS = (
    ("recall", "--lot", "l7"),
    ("recall", "--lot", "l7", "--json"),
    ("recall", "--spool", "Spool 9", "--state", "tied"),
    ("recall", "--older-than", "6"),
    ("mark", "12-15", "given"),
    ("mark", "--spool", "Spool 9", "opened"),
    ("show",),
    ("show", "--json"),
    ("history",),
    ("history", "--json"),
    ("correct", "17", "--section", "1", "--spoiled"),
    ("correct", "17", "--section", "1", "--spool", "Spool 3"),
    ("correct", "18", "--tied", "2026-01-02"),
    ("undo",),
)


def main() -> None:
    """Print a table of medians, and what each may take."""
    with tempfile.TemporaryDirectory() as folder:
        file = season(Path(folder) / "season.db")
        print(f"{file.stat().st_size / 10**6:.1f} MB")
        print(f"{'command':<48} {'ours ms':>8} {'floor ms':>9} {'allowed':>8}")
        for command in COMMANDS:
            ours = [*TAGEND, "book", command[0], "--book", str(file), *command[1:]]
            own, least = medians(ours, FLOOR)
            allowed = 1.35 * least + 0.05
            times = f"{own * 1000:8.0f} {least * 1000:9.0f} {allowed * 1000:8.0f}"
            print(f"{' '.join(command):<48} {times}{'' if own <= allowed else '  over'}")


if __name__ == "__main__":
    main()
