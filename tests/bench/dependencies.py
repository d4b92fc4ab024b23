"""What each required dependency weighs: its installed size and what importing it takes."""

import re
import subprocess
import sys
import tomllib
from importlib.metadata import distribution
from pathlib import Path
from statistics import median

from tests.tree import ROOT

RUNS = 5


def print_dependencies() -> None:
    """Print a table; fonts are data, and nothing of them is imported."""
    print(f"\n{'dependency':<36}{'MB':>7}{'import ms':>11}")
    with (ROOT / "pyproject.toml").open("rb") as file:
        needed = tomllib.load(file)["project"]["dependencies"]
    for name in (re.split(r"[\s<>=!~;\[]", each)[0] for each in needed):
        paths = [Path(str(file.locate())) for file in distribution(name).files or ()]
        size = sum(path.stat().st_size for path in paths if path.is_file())
        print(f"{name:<36}{size / 10**6:7.1f}{_import_ms(name):11.1f}")


def _import_ms(name: str) -> float:
    module = MODULES.get(name, name.replace("-", "_"))
    code = f"from time import perf_counter as t; b = t(); import {module}; print((t() - b) * 1000)"
    runs = [subprocess.check_output([sys.executable, "-c", code]) for _ in range(RUNS)]
    return median(map(float, runs))


# What we import of those that do not have the distribution's name, or not as a whole.
MODULES = {
    "fonttools": "fontTools.ttLib",
    "pillow": "PIL.Image",
    "pydantic": "pydantic_core",
    "reportlab": "reportlab.pdfgen.canvas",
    "zxing-cpp": "zxingcpp",
}


if __name__ == "__main__":
    print_dependencies()
