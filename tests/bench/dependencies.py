"""What each required dependency weighs: its installed size and what importing it takes."""

import re
import subprocess
import sys
from importlib.metadata import distribution, requires
from pathlib import Path
from statistics import median

RUNS = 5


def print_dependencies() -> None:
    """Print a table; fonts are data, and nothing of them is imported."""
    print(f"\n{'dependency':<36}{'MB':>7}{'import ms':>11}")
    needed = [each for each in requires("tagend") or () if "extra ==" not in each]
    for name in (re.split(r"[\s<>=!~;\[]", each)[0] for each in needed):
        paths = [Path(str(file.locate())) for file in distribution(name).files or ()]
        size = sum(path.stat().st_size for path in paths if path.is_file())
        print(f"{name:<36}{size / 10**6:7.1f}{_import_ms(name):11.1f}")


def _import_ms(name: str) -> float:
    tops = (distribution(name).read_text("top_level.txt") or "").split()
    module = tops[0] if tops else MODULES.get(name, name.replace("-", "_"))
    code = f"from time import perf_counter as t; b = t(); import {module}; print((t() - b) * 1000)"
    runs = [subprocess.check_output([sys.executable, "-c", code]) for _ in range(RUNS)]
    return median(map(float, runs))


MODULES = {"fonttools": "fontTools", "pillow": "PIL", "zxing-cpp": "zxingcpp"}


if __name__ == "__main__":
    print_dependencies()
