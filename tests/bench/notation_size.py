"""How long the texts of plausible recipes are: a table on standard output.

Run as `python -m tests.bench.notation_size` from the project's folder.
"""

from collections import defaultdict
from statistics import median

from tagend.cards.leader.leader import work_out
from tagend.cards.practice.shop_file import common_practice
from tagend.cards.printing.codes import code_text
from tests.plausible import plausible_recipes

RECIPES = 5000
# Characters that versions 4 to 7 hold at level M, alphanumeric mode: ISO/IEC 18004.
VERSIONS = {4: 90, 5: 122, 6: 154, 7: 178}


def lengths() -> dict[int, list[int]]:
    """Return the lengths of the texts by the number of sections."""
    practice = common_practice()
    found = defaultdict(list)
    for recipe in plausible_recipes(RECIPES):
        text = code_text(work_out(recipe, practice), practice)
        found[len(recipe.sections)].append(len(text))
    return found


def main() -> None:
    """Print the table."""
    found = lengths()
    fits = "".join(f"{f'<= {most} (v{version})':>13}" for version, most in VERSIONS.items())
    print(f"{'sections':>8}{'recipes':>9}{'shortest':>9}{'median':>8}{'longest':>9}{fits}")
    for count in sorted(found):
        _print_row(str(count), found[count])
    _print_row("all", [length for row in found.values() for length in row])


def _print_row(name: str, row: list[int]) -> None:
    shares = (sum(length <= most for length in row) / len(row) for most in VERSIONS.values())
    columns = "".join(f"{share:13.1%}" for share in shares)
    print(f"{name:>8}{len(row):9}{min(row):9}{median(row):8.0f}{max(row):9}{columns}")


if __name__ == "__main__":
    main()
