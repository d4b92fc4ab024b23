"""What stands on a face as an unrelated font engine sees it: a face in, its faults in words out."""

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from PIL import ImageFont

from tagend.fonts import CAP_HEIGHT
from tagend.fonts.files import font_path
from tagend.layouts.codes.code import QUIET
from tagend.layouts.paper.face import Code, Face, Path, Picture, TextRun
from tagend.layouts.paper.lengths import SLACK as FITS

Box = tuple[float, float, float, float]  # left, top, right, bottom

# ISO 9241-3 and NUREG-0700 rev. 2, 1.3.1-4: capitals of at least 16 minutes of arc, at 40 cm.
SMALLEST_TYPE = 7.6
# Points: what `fits` lets pass, and half a thousandth of an em, to which fonts round, times a
# line's letters.
SLACK = FITS + 0.02
_EM = 1000


def runs(face: Face) -> list[TextRun]:
    return [item for item in face.items if isinstance(item, TextRun)]


def paths(face: Face) -> list[Path]:
    return [item for item in face.items if isinstance(item, Path)]


def codes(face: Face) -> list[Code]:
    return [item for item in face.items if isinstance(item, Code)]


def pictures(face: Face) -> list[Picture]:
    return [item for item in face.items if isinstance(item, Picture)]


def words(face: Face) -> str:
    """Return the text of a face, its runs in their order."""
    return " ".join(run.text for run in runs(face))


def glyphs(run: TextRun) -> Box:
    """Return the box that a run fills by FreeType: as wide as its pen goes, as tall as its ink."""
    width, top, bottom = _measured(run.text, run.font)
    unit = run.size / _EM
    return run.x, run.y + top * unit, run.x + width * unit, run.y + bottom * unit


def points(path: Path) -> list[tuple[float, float]]:
    """Return the points of a path, those of its curves' handles too."""
    return [pair for step in path.steps for pair in zip(step[1::2], step[2::2], strict=True)]


def faults(face: Face, inset: float) -> list[str]:
    """Return what no face may have, each in words; nothing is right."""
    return [
        *_small(face),
        *_outside(face, inset),
        *_overlaps(face),
        *_crossed(face),
        *_crowded(face),
    ]


def _small(face: Face) -> Iterator[str]:
    for run in runs(face):
        if run.size < SMALLEST_TYPE:
            yield f"{run.text!r} is set in {run.size} pt"


def _outside(face: Face, inset: float) -> Iterator[str]:
    """An accent on a capital may reach into the inset, and so may half a pen."""
    room = (inset, inset, face.width - inset, face.height - inset)
    for run in runs(face):
        left, top, right, bottom = glyphs(run)
        if not _within((left, max(top, run.y - CAP_HEIGHT * run.size), right, bottom), room):
            yield f"{run.text!r} leaves the inset"
    for path in paths(face):
        if not all(_within((x, y, x, y), room, path.line / 2) for x, y in points(path)):
            yield f"a path of {len(path.steps)} steps leaves the inset"
    for code in codes(face):
        if not _within(_box(code), room):
            yield "the code leaves the inset"
    for picture in pictures(face):
        if not _within(_frame(picture), room):
            yield "a picture leaves the inset"


def _overlaps(face: Face) -> Iterator[str]:
    for one, other in combinations(runs(face), 2):
        if not _apart(glyphs(one), glyphs(other)):
            yield f"{one.text!r} stands on {other.text!r}"
    for picture in pictures(face):
        for run in runs(face):
            if not _apart(_frame(picture), glyphs(run)):
                yield f"{run.text!r} stands on a picture"


def _crossed(face: Face) -> Iterator[str]:
    lines = [line for path in paths(face) if path.line for line in _lines(path)]
    for run in runs(face):
        if any(_meets(line, glyphs(run)) for line in lines):
            yield f"a line runs through {run.text!r}"


def _lines(path: Path) -> Iterator[Box]:
    """Yield the straight lines of a path as boxes that they cross from corner to corner."""
    here = (0.0, 0.0)
    for step in path.steps:
        if step[0] == "line":
            yield (*here, step[1], step[2])
        if step[0] != "close":
            here = step[-2], step[-1]


def _meets(line: Box, box: Box) -> bool:
    """Say whether a line enters a box (Liang and Barsky, 1984)."""
    x, y, x2, y2 = line
    enter, leave = 0.0, 1.0
    for at, way, low, high in ((x, x2 - x, box[0], box[2]), (y, y2 - y, box[1], box[3])):
        if not way:
            if not low + SLACK < at < high - SLACK:
                return False
            continue
        first, last = sorted(((low - at) / way, (high - at) / way))
        enter, leave = max(enter, first), min(leave, last)
    return enter < leave - 1e-9


def _crowded(face: Face) -> Iterator[str]:
    """ISO/IEC 18004: four modules of white on all sides of a code."""
    for code in codes(face):
        left, top, right, bottom = _box(code)
        quiet = QUIET * code.module
        zone = (left - quiet, top - quiet, right + quiet, bottom + quiet)
        if not _within(zone, (0, 0, face.width, face.height)):
            yield "the code's quiet zone leaves the paper"
        boxes = [(run.text, glyphs(run)) for run in runs(face)]
        boxes += [("a path", _around(path)) for path in paths(face)]
        boxes += [("a picture", _frame(picture)) for picture in pictures(face)]
        boxes += [("a code", _box(other)) for other in codes(face) if other is not code]
        yield from (f"{name!r} stands in the quiet zone" for name, box in boxes
                    if not _apart(zone, box))  # fmt: skip


def _around(path: Path) -> Box:
    xs, ys = zip(*points(path), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _box(code: Code) -> Box:
    side = code.module * code.symbol.side
    return code.x, code.y, code.x + side, code.y + side


def _frame(picture: Picture) -> Box:
    return picture.x, picture.y, picture.x + picture.width, picture.y + picture.height


def _within(box: Box, room: Box, slack: float = 0.0) -> bool:
    slack += SLACK
    return (
        box[0] >= room[0] - slack
        and box[1] >= room[1] - slack
        and box[2] <= room[2] + slack
        and box[3] <= room[3] + slack
    )


def _apart(one: Box, other: Box) -> bool:
    across = max(one[0] - other[2], other[0] - one[2])
    down = max(one[1] - other[3], other[1] - one[3])
    return max(across, down) >= -SLACK


@cache
def _measured(text: str, font: str) -> tuple[float, float, float]:
    _, top, _, bottom = _engine(font).getbbox(text, anchor="ls")
    return _engine(font).getlength(text), top, bottom


@cache
def _engine(font: str) -> ImageFont.FreeTypeFont:
    # The plain layout sets glyph by glyph, as the writer does: no kerning, no ligature.
    return ImageFont.truetype(font_path(font), _EM, layout_engine=ImageFont.Layout.BASIC)
