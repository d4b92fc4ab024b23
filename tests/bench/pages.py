"""Sheets in, pages as the plain script draws them out: every place written out, y upwards."""

import pickle
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path as File
from typing import Any

from tagend.layouts.paper.face import Code, Item, Path, TextRun, mapped
from tagend.layouts.sheets.sheet import Sheet

OFTEN = 3  # a face that stands so often is drawn once and placed


def write_pages(sheets: Sequence[Sheet], file: File) -> None:
    """Write one pickle a page."""
    with file.open("wb") as out:
        for page in pages(sheets):
            pickle.dump(page, out)


def pages(sheets: Sequence[Sheet]) -> Iterator[Any]:
    """Yield the size of each sheet, the forms that are new on it, and its faces at their places."""
    uses = Counter(id(placed.face) for sheet in sheets for placed in sheet.placed)
    names: dict[int, str] = {}
    for sheet in sheets:
        forms, faces = [], [((0.0, 0.0), 0, _items(sheet.marks, sheet.height))]
        for placed in sheet.placed:
            face, key = placed.face, id(placed.face)
            drawn: Any = names.get(key) or _items(face.items, face.height)
            if uses[key] >= OFTEN and key not in names:
                names[key] = f"form{len(names)}"
                forms.append((names[key], face.width, face.height, drawn))
            x, y = placed.at(0, face.height)
            faces.append(((x, sheet.height - y), placed.turn, names.get(key, drawn)))
        yield (sheet.width, sheet.height), forms, faces


def _items(items: Sequence[Item], height: float) -> Any:
    runs = [i for i in items if isinstance(i, TextRun)]
    paths = [i for i in items if isinstance(i, Path)]
    return (
        [(run.font, run.size, run.x, height - run.y, run.text) for run in runs],
        [
            (mapped(p.steps, lambda x, y: (x, height - y)), p.line, p.grey, p.fill, p.dash)
            for p in paths
        ],
        [
            (code.symbol.text, code.symbol.level, code.x, height - code.y, code.module)
            for code in items
            if isinstance(code, Code)
        ],
    )
