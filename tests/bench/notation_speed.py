"""How long writing, reading and refusing a code's text take: a table on standard output.

Run as `python -m tests.bench.notation_speed` from the project's folder.
"""

from collections.abc import Callable
from random import Random
from statistics import median
from time import perf_counter

from tagend.cards.code.check_characters import CHARACTERS
from tagend.cards.code.notation import read_notation, write_notation
from tagend.cards.practice.knot_file import load_knots
from tagend.cards.practice.materials import load_materials
from tagend.layouts.base.faults import Refused
from tests.plausible import plausible_recipe

RECIPES = 300


def main() -> None:
    """Print the median and the longest time of each, in ms."""
    random = Random(1)
    knots, materials = load_knots(), load_materials()
    recipes = [plausible_recipe(random, sections=6) for _ in range(RECIPES)]
    texts = [write_notation(recipe, knots, materials) for recipe in recipes]

    def read(text: str) -> None:
        try:
            read_notation(text, knots, materials)
        except Refused:
            return

    _print_row("write six sections", [_ms(write_notation, r, knots, materials) for r in recipes])
    _print_row("read six sections", [_ms(read, text) for text in texts])
    _print_row("refuse a slip", [_ms(read, _slipped(text, random)) for text in texts])
    long = texts[0][:-2] + "NOTE " + "A+B" * 600 + ":"
    _print_row("refuse 1,900 characters", [_ms(read, long + str(n)) for n in range(10, 99)])
    _print_row("refuse 100,000 characters", [_ms(read, "A" * 100_000) for _ in range(9)])


def _slipped(text: str, random: Random) -> str:
    place = random.randrange(5, len(text))
    return text[:place] + random.choice(CHARACTERS) + text[place + 1 :]


def _ms(work: Callable[..., object], *given: object) -> float:
    start = perf_counter()
    work(*given)
    return (perf_counter() - start) * 1000


def _print_row(name: str, times: list[float]) -> None:
    print(f"{name:<28}{median(times):8.2f}{max(times):8.2f}")


if __name__ == "__main__":
    main()
