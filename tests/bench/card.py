"""What a card that differs from all others takes, against a plain script that draws the same.

Run as `python -m tests.bench.card` from the project's folder. Both run warm in this one process
and by turns. The plain script is handed every text, line and code with its place on the paper; it
draws them with reportlab and makes the codes with qrcode, each module a square.
"""

import gc
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from io import BytesIO
from itertools import compress
from statistics import median
from time import process_time
from typing import NamedTuple, cast
from unittest.mock import patch

from qrcode import QRCode
from qrcode.constants import ERROR_CORRECT_M
from reportlab.pdfgen.canvas import Canvas

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import Shop, common_practice
from tagend.cards.printing import pages as printing
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.face import Code, Face, Item, Path, TextRun, mapped
from tagend.layouts.sheets.sheet import Placed, Sheet
from tests.plausible import plausible_recipes

CARDS = 40  # in one PDF; in every round they are others
ROUNDS = 5
PRACTICE, SHOP, WISHES = common_practice(), Shop(), printing.CardWishes()
# What `cards_pdf` calls, by the names under which it does.
PARTS = {
    "write_notation": "what the code says",
    "symbol": "the code's modules",
    "proven": "reading the code back",
    "card_text": "what the card says",
    "cards_of": "laying out",
    "card_sheets": "placing on sheets",
    "recipe_files": "recipes to attach",
    "write_pdf": "writing",
}


class Part:
    """A part of our way, put in its place: counts its seconds and keeps what it made last."""

    def __init__(self, work: Callable[..., object]) -> None:
        self.work = work
        self.seconds = 0.0
        self.made: object = None

    def __call__(self, *given: object, **named: object) -> object:
        begin = process_time()
        self.made = self.work(*given, **named)
        self.seconds += process_time() - begin
        return self.made


class Plain(NamedTuple):
    """What stands on a face, the y of everything upwards from its lower left corner."""

    corner: tuple[float, float]
    turn: float
    texts: list[TextRun]
    paths: list[Path]
    codes: list[Code]


Page = tuple[tuple[float, float], list[Plain]]


def main() -> None:
    """Print the table."""
    gc.set_threshold(100_000)  # as the command does at its start
    recipes = _fitting()
    rounds = [_round([next(recipes) for _ in range(CARDS)]) for _ in range(ROUNDS + 1)]
    parts, ours, floors = zip(*rounds[1:], strict=True)  # the first warms up
    ratios = [own / floor for own, floor in zip(ours, floors, strict=True)]
    print(f"{'ms a card':<24}{'median':>8}")
    for name, part in PARTS.items():
        print(f"{part:<24}{_each([of[name].seconds for of in parts]):8.2f}")
    print(f"{'in all':<24}{_each(ours):8.2f}")
    print(f"{'the plain script':<24}{_each(floors):8.2f}")
    print(f"{'ratio':<24}{median(ratios):8.2f}   from {min(ratios):.2f} to {max(ratios):.2f}")


def _fitting() -> Iterator[Recipe]:
    """Return recipes that the card holds, found in a process that warms nothing in this one."""
    recipes = list(plausible_recipes(3 * CARDS * (ROUNDS + 1) // 2))
    with ProcessPoolExecutor(1) as other:
        return compress(recipes, list(other.map(_fits, recipes, chunksize=CARDS)))


def _fits(recipe: Recipe) -> bool:
    try:
        printing.cards_pdf([worksheet(recipe, PRACTICE)], PRACTICE, SHOP, WISHES)
    except Refused:
        return False
    return True


def _each(seconds: Sequence[float]) -> float:
    return median(seconds) / CARDS * 1000


def _round(recipes: Sequence[Recipe]) -> tuple[dict[str, Part], float, float]:
    """Return our parts, and the seconds of our way and of the plain script that draws the same."""
    worksheets = [worksheet(recipe, PRACTICE) for recipe in recipes]
    parts = {name: Part(getattr(printing, name)) for name in PARTS}
    with patch.dict(vars(printing), parts):
        ours = _seconds(lambda: printing.cards_pdf(worksheets, PRACTICE, SHOP, WISHES))
    pages = [_page(sheet) for sheet in cast(Sequence[Sheet], parts["card_sheets"].made)]
    return parts, ours, _seconds(lambda: _draw(pages))


def _seconds(work: Callable[[], object]) -> float:
    gc.collect()
    begin = process_time()
    work()
    return process_time() - begin


def _page(sheet: Sheet) -> Page:
    whole = Placed(Face("marks", sheet.width, sheet.height, sheet.marks), 0, 0)
    return (sheet.width, sheet.height), [_plain(p, sheet.height) for p in (*sheet.placed, whole)]


def _plain(placed: Placed, height: float) -> Plain:
    """Return what stands on a placed face, each at its place from the face's lower left corner."""
    face = placed.face
    x, y = placed.at(0, face.height)
    items = [_upwards(item, face.height) for item in face.items]
    return Plain(
        (x, height - y),
        placed.turn,
        [item for item in items if isinstance(item, TextRun)],
        [item for item in items if isinstance(item, Path)],
        [item for item in items if isinstance(item, Code)],
    )


def _upwards(item: Item, height: float) -> Item:
    if isinstance(item, Path):
        return item._replace(steps=mapped(item.steps, lambda x, y: (x, height - y)))
    return item._replace(y=height - item.y)


def _draw(pages: Sequence[Page]) -> bytes:
    canvas = Canvas(BytesIO(), pageCompression=1)
    for size, faces in pages:
        canvas.setPageSize(size)
        for face in faces:
            canvas.saveState()
            canvas.translate(*face.corner)
            canvas.rotate(face.turn)
            _draw_face(canvas, face)
            canvas.restoreState()
        canvas.showPage()
    return bytes(canvas.getpdfdata())


def _draw_face(canvas: Canvas, face: Plain) -> None:
    for run in face.texts:
        canvas.setFont(run.font, run.size)
        canvas.drawString(run.x, run.y, run.text)
    for path in face.paths:
        _draw_path(canvas, path)
    for code in face.codes:
        _draw_code(canvas, code)


def _draw_path(canvas: Canvas, path: Path) -> None:
    outline = canvas.beginPath()
    for step, *at in path.steps:
        match step:
            case "move":
                outline.moveTo(*at)
            case "line":
                outline.lineTo(*at)
            case "curve":
                outline.curveTo(*at)
            case "close":
                outline.close()
    canvas.setLineWidth(path.line)
    canvas.setStrokeGray(path.grey)
    canvas.setDash(path.dash)
    canvas.setFillGray(path.fill or 0.0)
    canvas.drawPath(outline, path.line > 0, path.fill is not None)


def _draw_code(canvas: Canvas, code: Code) -> None:
    made = QRCode(error_correction=ERROR_CORRECT_M, border=0)
    made.add_data(code.symbol.text)
    made.make()
    outline = canvas.beginPath()
    for row, modules in enumerate(made.modules, start=1):
        for column, dark in enumerate(modules):
            if dark:
                x, y = code.x + column * code.module, code.y - row * code.module
                outline.rect(x, y, code.module, code.module)
    canvas.setFillGray(0)
    canvas.drawPath(outline, stroke=0, fill=1)


if __name__ == "__main__":
    main()
