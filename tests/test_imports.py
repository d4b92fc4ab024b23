"""What each part of the program may import, seen in a fresh interpreter."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.tree import ROOT

OURS = ("cards", "layouts", "fonts", "samples")
HEAVY = ("reportlab", "qrcode", "pypdf", "PIL", "pydantic", "zxingcpp", "pypdfium2")

RUN = """
import sys
from tagend.cards.cli import main
try:
    main({arguments!r})
except SystemExit as end:
    tops = {{name.removeprefix("tagend.").partition(".")[0] for name in sys.modules}}
    print(*sorted(tops), file=sys.stderr)
    sys.exit(end.code)
"""

EVERY_MODULE = """
import pkgutil, sys
import tagend.{package}
for module in pkgutil.walk_packages(tagend.{package}.__path__, "tagend.{package}."):
    __import__(module.name)
tops = {{name.removeprefix("tagend.").partition(".")[0] for name in sys.modules}}
print(*sorted(tops), file=sys.stderr)
"""


def imported(program: str) -> set[str]:
    """Return the top packages that a program leaves imported."""
    run = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    return set(run.stderr.splitlines()[-1].split())


@pytest.mark.parametrize(
    ("package", "allowed"), [("fonts", {"fonts"}), ("layouts", {"layouts", "fonts"})]
)
def test_a_package_imports_only_what_stands_below_it(package: str, allowed: set[str]) -> None:
    found = imported(EVERY_MODULE.format(package=package))
    assert package in found
    assert found & set(OURS) <= allowed


@pytest.mark.parametrize("command", ["check", "cuts"])
def test_words_alone_need_no_heavy_library(command: str) -> None:
    found = imported(RUN.format(arguments=[command, "samples/sandbar-eight.toml"]))
    assert found & {*HEAVY, "layouts", "fonts"} == set()


@pytest.mark.parametrize("command", ["cards", "labels"])
def test_what_prints_does_not_read_pdfs(command: str, tmp_path: Path) -> None:
    arguments = [command, "samples/sandbar-eight.toml", "-o", str(tmp_path / "out.pdf")]
    found = imported(RUN.format(arguments=arguments))
    assert (tmp_path / "out.pdf").exists()
    assert "reportlab" in found
    assert "pypdf" not in found


def test_no_module_imports_a_heavy_library_before_it_is_used() -> None:
    assert imported(EVERY_MODULE.format(package="cards")) & {*HEAVY} == set()
