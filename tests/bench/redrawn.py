"""A card redrawn in a running process after each key, against the drawing of it alone."""

from collections.abc import Callable, Iterator
from statistics import median
from time import process_time

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.card_sizes import CardSizes, cards_of
from tagend.cards.printing.cards import CardWishes, card_text, cards_pdf
from tagend.cards.printing.job import Job, Printed, job_of
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.svg.svg import write_svg
from tests.bench.ours import SAMPLE
from tests.bench.pages import pages
from tests.bench.plain import drawn

ROUNDS = 21
WISHES = CardWishes()
LENGTH = "24 in"  # of a section of the sample


def redrawn() -> Iterator[tuple[str, float, float]]:
    """Yield what is drawn, our time and the plain script's for the same card, medians in ms."""
    job = job_of(Shop())
    times = [_round(job, number) for number in range(ROUNDS + 1)][1:]
    pdf, svg, plain = (median(each) for each in zip(*times, strict=True))
    yield "a card redrawn, PDF", pdf, plain
    yield "a card redrawn, SVG", svg, plain


def _round(job: Job, number: int) -> tuple[float, float, float]:
    one, other = (_changed(job, 2 * number + each) for each in range(2))  # none is drawn twice
    plain = list(pages(_pdf(job, _changed(job, 1000 + number)).sheets))
    return (
        _ms(lambda: _pdf(job, one)),
        _ms(lambda: _svg(job, other)),
        _ms(lambda: drawn(iter(plain))),
    )


def _changed(job: Job, number: int) -> Recipe:
    text = SAMPLE.read_text(encoding="utf-8")
    return read_recipe(text.replace(LENGTH, f"{24 + number / 16} in").encode(), job.practice)


def _pdf(job: Job, recipe: Recipe) -> Printed:
    return cards_pdf(job, [worksheet(recipe, job.practice)], WISHES)


def _svg(job: Job, recipe: Recipe) -> list[bytes]:
    sizes = CardSizes(job.card_size(None), tuple(job.stock.cards.values()), False, job.fonts)
    text = card_text(job, worksheet(recipe, job.practice), WISHES)
    faces = [face for card in cards_of(text, sizes).cards for face in (card.front, card.back)]
    return [write_svg(face, title=recipe.name) for face in faces if face]


def _ms(work: Callable[[], object]) -> float:
    begin = process_time()
    work()
    return (process_time() - begin) * 1000
