"""The floor: a plain script that draws pages handed to it, with reportlab and qrcode alone.

Run as `python tests/bench/plain.py PAGES OUT.pdf`; PAGES holds one pickle a page, as `pages.py`
writes them. It prints the seconds of its drawing.
"""

import pickle
import sys
from collections.abc import Iterator
from importlib.util import find_spec
from io import BytesIO
from time import process_time
from typing import Any

import click  # noqa: F401 - a command has it, and so has its floor
import pydantic_core  # noqa: F401
from qrcode import QRCode, constants
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

FILES = {
    "medium": ("fontpkg_ibm_plex_sans_condensed", "IBMPlexSansCondensed-Medium.ttf"),
    "bold": ("fontpkg_ibm_plex_sans_condensed", "IBMPlexSansCondensed-Bold.ttf"),
}


def main() -> None:
    """Draw the pages of one file into another."""
    pages, out = sys.argv[1:]
    begin = process_time()
    with open(out, "wb") as file:
        file.write(drawn(_pages(pages)))
    print(process_time() - begin)


def _pages(name: str) -> Iterator[Any]:
    with open(name, "rb") as file:
        while file.peek(1):
            yield pickle.load(file)


def drawn(pages: Iterator[Any]) -> bytes:
    """Return a PDF of the pages."""
    for font, (package, file) in FILES.items():
        if font not in pdfmetrics.getRegisteredFontNames():
            spec = find_spec(package)
            (folder,) = spec.submodule_search_locations or [""] if spec else [""]
            pdfmetrics.registerFont(TTFont(font, f"{folder}/files/{file}"))
    canvas = Canvas(BytesIO(), pageCompression=1)
    for size, forms, faces in pages:
        for name, width, height, items in forms:
            canvas.beginForm(name, 0, 0, width, height)
            _draw(canvas, *items)
            canvas.endForm()
        canvas.setPageSize(size)
        for (x, y), turn, face in faces:
            canvas.saveState()
            canvas.translate(x, y)
            canvas.rotate(turn)
            canvas.doForm(face) if isinstance(face, str) else _draw(canvas, *face)
            canvas.restoreState()
        canvas.showPage()
    return bytes(canvas.getpdfdata())


def _draw(canvas: Canvas, texts: Any, paths: Any, codes: Any) -> None:
    for font, size, x, y, text in texts:
        canvas.setFont(font, size)
        canvas.drawString(x, y, text)
    for steps, line, grey, fill, dash in paths:
        _draw_path(canvas, steps, line, grey, fill, dash)
    for code in codes:
        _draw_code(canvas, *code)


def _draw_path(canvas: Canvas, steps: Any, line: float, grey: float, fill: Any, dash: Any) -> None:
    outline = canvas.beginPath()
    for step, *at in steps:
        match step:
            case "move":
                outline.moveTo(*at)
            case "line":
                outline.lineTo(*at)
            case "curve":
                outline.curveTo(*at)
            case "close":
                outline.close()
    canvas.setLineWidth(line)
    canvas.setStrokeGray(grey)
    canvas.setDash(dash)
    canvas.setFillGray(fill or 0.0)
    canvas.drawPath(outline, line > 0, fill is not None)
    canvas.setFillGray(0)


def _draw_code(canvas: Canvas, text: str, level: str, x: float, y: float, module: float) -> None:
    code = QRCode(error_correction=getattr(constants, f"ERROR_CORRECT_{level}"), border=0)
    code.add_data(text)
    code.make()
    outline = canvas.beginPath()
    for row, modules in enumerate(code.modules, start=1):
        for column, dark in enumerate(modules):
            if dark:
                outline.rect(x + column * module, y - row * module, module, module)
    canvas.drawPath(outline, stroke=0, fill=1)


if __name__ == "__main__":
    main()
