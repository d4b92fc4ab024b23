"""Fixtures: a book with the sample rack, and its commands run."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from tests.cards.cli.conftest import Outcome, Tagend

Book = Callable[..., Outcome]


@pytest.fixture
def book(tagend: Tagend, demo: Path) -> Book:
    """Run a command of a book that holds the sample rack's spools."""
    file = demo / "season.db"
    assert tagend("book", "start", "--rack", demo / "rack.toml", "--book", file).status == 0

    def run(command: str, *arguments: object) -> Outcome:
        return tagend("book", command, "--book", file, *map(str, arguments))

    return run


@pytest.fixture
def output(demo: Path) -> Path:
    return demo / "out.pdf"


def shown(pdf: Path) -> str:
    """Return the text of all pages of a PDF."""
    pages = (page.extract_text() for page in PdfReader(pdf).pages)
    return " ".join(" ".join(pages).split())


def told(run: Outcome) -> Any:
    """Return what a command says as JSON."""
    assert run.status == 0, run.err
    return json.loads(run.out)


def left(book: Book) -> dict[str, float]:
    """Return what is left on each spool, in mm."""
    return {spool["spool"]: spool["left_mm"] for spool in told(book("show", "--json"))["spools"]}
