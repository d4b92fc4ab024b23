"""Our way to what the plain script draws, in a process of its own.

Run as `python -m tests.bench.ours KIND COUNT OUT.pdf [PAGES]`: KIND is one of `KINDS`. It prints
the seconds of making the PDF from worksheets, of all cores together and by the clock, and its
bytes; then it writes its pages for the plain script.
"""

import gc
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from itertools import islice
from pathlib import Path
from resource import RUSAGE_CHILDREN, RUSAGE_SELF, getrusage
from time import perf_counter

import qrcode  # noqa: F401 - as the plain script, before the clock runs
import reportlab.pdfgen.canvas  # noqa: F401
import zxingcpp  # noqa: F401

from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.job import Job, Printed, job_of
from tagend.cards.printing.labels import LabelWishes, labels_pdf
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.start import GARBAGE
from tagend.layouts.base.faults import Refused
from tests.bench.pages import write_pages
from tests.plausible import plausible_recipes
from tests.tree import SAMPLES

SAMPLE = SAMPLES / "sandbar-eight.toml"


def main() -> None:
    """Make one PDF."""
    kind, count, out, *pages = sys.argv[1:]
    gc.set_threshold(GARBAGE)
    job = job_of(Shop())
    recipes = _recipes(kind, int(count), job)
    begin, clock = _worked(), perf_counter()
    printed = KINDS[kind](job, recipes, int(count))
    Path(out).write_bytes(printed)
    print(_worked() - begin, perf_counter() - clock, len(printed))
    for name in pages:
        write_pages(printed.sheets, Path(name))


def _worked() -> float:
    """Return the processor's seconds of this process and its copies."""
    used = map(getrusage, (RUSAGE_SELF, RUSAGE_CHILDREN))
    return sum(each.ru_utime + each.ru_stime for each in used)


def _recipes(kind: str, count: int, job: Job) -> list[Recipe]:
    if kind in ("cards", "labels"):
        return list(islice(_tieable(plausible_recipes(2 * count), job.practice), count))
    return [read_recipe(SAMPLE.read_bytes(), job.practice)]


def _tieable(recipes: Iterable[Recipe], practice: Practice) -> Iterator[Recipe]:
    for recipe in recipes:
        with suppress(Refused):
            check_tieable(worksheet(recipe, practice).leader)
            yield recipe


def _cards(job: Job, recipes: list[Recipe], _: int) -> Printed:
    return cards_pdf(job, [worksheet(recipe, job.practice) for recipe in recipes], CardWishes())


def _labels(job: Job, recipes: list[Recipe], _: int) -> Printed:
    return labels_pdf(job, [worksheet(recipe, job.practice) for recipe in recipes], LabelWishes())


def _copies(job: Job, recipes: list[Recipe], count: int) -> Printed:
    sheets = [worksheet(recipe, job.practice) for recipe in recipes]
    return cards_pdf(job, sheets, CardWishes(copies=count))


KINDS: Mapping[str, Callable[[Job, list[Recipe], int], Printed]] = {
    "cards": _cards,  # that all differ
    "labels": _labels,
    "copies": _copies,  # of one card
    "one-cards": _cards,  # of the sample
    "one-labels": _labels,
}


if __name__ == "__main__":
    main()
