"""Whole processes against floors, measured in one run: `python tests/bench/run.py`.

`check` is held against importing click and pydantic alone; `cards` against a plain script that
draws the very strings, lines and code of the same card with reportlab and qrcode.
"""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.job import job_of
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.paper.face import Code, Item, TextRun
from tagend.layouts.paper.face import Path as Line
from tagend.layouts.pdf import pdf
from tagend.layouts.sheets.sheet import Sheet
from tests.tree import ROOT

SAMPLE = ROOT / "samples" / "sandbar-eight.toml"
TAGEND = [sys.executable, "-c", "import sys; from tagend.cards.cli import main; main(sys.argv[1:])"]
RUNS = 15
# As installed: with the bytecode that pip leaves beside the source.
ENVIRONMENT = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}

PLAIN_SCRIPT = """
import click, pydantic, qrcode
from importlib.resources import files
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
for name, file in (("medium", "Medium"), ("bold", "Bold")):
    folder = files("fontpkg_ibm_plex_sans_condensed") / "files"
    pdfmetrics.registerFont(TTFont(name, str(folder / f"IBMPlexSansCondensed-{file}.ttf")))
canvas = Canvas(OUT, pagesize=SIZE)
for font, size, x, y, text in TEXTS:
    canvas.setFont(font, size)
    canvas.drawString(x, SIZE[1] - y, text)
for width, steps in LINES:
    path = canvas.beginPath()
    for step, *at in steps:
        flipped = [SIZE[1] - v if i % 2 else v for i, v in enumerate(at)]
        {"move": path.moveTo, "line": path.lineTo, "curve": path.curveTo,
         "close": path.close}[step](*flipped)
    canvas.setLineWidth(width)
    canvas.drawPath(path)
for text, x, y, module in CODES:
    code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_M, border=0)
    code.add_data(text)
    code.make()
    path = canvas.beginPath()
    for row, line in enumerate(code.modules):
        for column, dark in enumerate(line):
            if dark:
                path.rect(x + column * module, SIZE[1] - y - row * module, module, module)
    canvas.drawPath(path, stroke=0, fill=1)
canvas.save()
"""


def main() -> None:
    """Print a table of medians and ratios."""
    with tempfile.TemporaryDirectory() as folder:
        out = str(Path(folder) / "out.pdf")
        plain = Path(folder) / "plain.py"
        plain.write_text(plain_script(card_sheets(), str(Path(folder) / "plain.pdf")))
        pairs = (
            ("check", [*TAGEND, "check", str(SAMPLE)], ["-c", "import click, pydantic"]),
            ("cuts", [*TAGEND, "cuts", str(SAMPLE)], ["-c", "import click, pydantic"]),
            ("cards", [*TAGEND, "cards", str(SAMPLE), "-o", out], [str(plain)]),
        )
        print(f"{'command':<8} {'ours ms':>8} {'floor ms':>9} {'ratio':>6}")
        for name, ours, floor in pairs:
            own, least = medians(ours, [sys.executable, *floor])
            print(f"{name:<8} {own * 1000:8.0f} {least * 1000:9.0f} {own / least:6.2f}")


def medians(ours: Sequence[str], floor: Sequence[str]) -> tuple[float, float]:
    """Return the median times of two commands in seconds, run by turns after one warm-up."""
    times: tuple[list[float], list[float]] = ([], [])
    for run in range(RUNS + 1):
        for command, seen in zip((ours, floor), times, strict=True):
            start = time.perf_counter()
            subprocess.run(command, check=True, capture_output=True, cwd=ROOT, env=ENVIRONMENT)
            if run:
                seen.append(time.perf_counter() - start)
    own, least = (sorted(seen)[RUNS // 2] for seen in times)
    return own, least


def card_sheets() -> Sequence[Sheet]:
    """Return the sheets of the sample's card, as they go to the writer."""
    caught: list[Sequence[Sheet]] = []
    job = job_of(Shop())
    sheet = worksheet(read_recipe(SAMPLE.read_bytes(), job.practice), job.practice)
    draw = pdf._draw_sheet
    pdf._draw_sheet = lambda pen, page: (caught.append([page]), draw(pen, page))[1]  # type: ignore[func-returns-value, assignment]
    try:
        cards_pdf(job, [sheet], CardWishes())
    finally:
        pdf._draw_sheet = draw
    return [page for pages in caught for page in pages]


def plain_script(sheets: Sequence[Sheet], out: str) -> str:
    """Return a script that draws the items of one page, each given as it stands on the paper."""
    (sheet,) = sheets
    items: list[tuple[float, float, Item]] = [
        (placed.x, placed.y, item) for placed in sheet.placed for item in placed.face.items
    ]
    items += [(0.0, 0.0, item) for item in sheet.marks]
    texts = [
        (i.font, i.size, dx + i.x, dy + i.y, i.text)
        for dx, dy, i in items
        if isinstance(i, TextRun)
    ]
    lines = [
        (i.line, [(step[0], *_moved(step[1:], dx, dy)) for step in i.steps])
        for dx, dy, i in items
        if isinstance(i, Line)
    ]
    codes = [
        (i.symbol.text, dx + i.x, dy + i.y, i.module) for dx, dy, i in items if isinstance(i, Code)
    ]
    given = {"OUT": out, "SIZE": (sheet.width, sheet.height)}
    given |= {"TEXTS": texts, "LINES": lines, "CODES": codes}
    return "".join(f"{name} = {value!r}\n" for name, value in given.items()) + PLAIN_SCRIPT


def _moved(at: Sequence[float], dx: float, dy: float) -> list[float]:
    return [value + (dy if place % 2 else dx) for place, value in enumerate(at)]


if __name__ == "__main__":
    main()
