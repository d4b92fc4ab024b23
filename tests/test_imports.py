"""What each part of the program may import, seen in a fresh interpreter."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.tree import ROOT

OURS = ("cards", "layouts", "fonts", "samples")
HEAVY = (
    "reportlab",
    "qrcode",
    "pypdf",
    "PIL",
    "pydantic",
    "zxingcpp",
    "pypdfium2",
    "filelock",
    "fontTools",
)

RUN = """
import sys
from tagend.cards.cli import main
try:
    main({arguments!r})
except SystemExit as end:
    print(*sys.modules, file=sys.stderr)
    sys.exit(end.code)
"""

EVERY_MODULE = """
import pkgutil, sys
import tagend.{package}
for module in pkgutil.walk_packages(tagend.{package}.__path__, "tagend.{package}."):
    __import__(module.name)
print(*sys.modules, file=sys.stderr)
"""


def imported(program: str) -> set[str]:
    """Return the top packages that a program leaves imported, and the rooms of `layouts`."""
    run = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    return {package(name) for name in run.stderr.splitlines()[-1].split()} - {"layouts"}


def package(module: str) -> str:
    """Return `reportlab` for `reportlab.pdfgen`, and `layouts.base` for its modules."""
    parts = module.removeprefix("tagend.").split(".")
    return ".".join(parts[:2]) if parts[0] == "layouts" else parts[0]


def ours(names: set[str]) -> set[str]:
    return {name for name in names if name.startswith(OURS)}


def test_a_package_imports_only_what_stands_below_it() -> None:
    assert ours(imported(EVERY_MODULE.format(package="fonts"))) == {
        "fonts",
        "layouts.base",
        "layouts.strangers",
    }
    assert not imported(EVERY_MODULE.format(package="layouts")) & {"cards", "samples"}


@pytest.mark.parametrize("command", ["check", "cuts"])
def test_words_alone_need_no_heavy_library(command: str) -> None:
    found = imported(RUN.format(arguments=[command, "samples/sandbar-eight.toml"]))
    assert found & {*HEAVY, "fonts"} == set()
    assert {name for name in found if name.startswith("layouts")} == {"layouts.base"}


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_what_prints_does_not_read_pdfs(command: str, tmp_path: Path) -> None:
    arguments = [command, "samples/sandbar-eight.toml", "-o", str(tmp_path / "out.pdf")]
    found = imported(RUN.format(arguments=arguments))
    assert (tmp_path / "out.pdf").exists()
    assert "reportlab" in found
    assert "pypdf" not in found


def test_no_module_imports_a_heavy_library_before_it_is_used() -> None:
    assert imported(EVERY_MODULE.format(package="cards")) & {*HEAVY} == set()
