"""What stands on a face in, its shape in SVG out, kept for the next face that has the same."""

from collections.abc import Mapping
from functools import lru_cache
from itertools import accumulate
from typing import NamedTuple

from tagend.fonts import EM, outlines, text_width
from tagend.layouts.codes.code import symbol_path
from tagend.layouts.paper.face import Path, Step, Symbol
from tagend.layouts.paper.raster import Raster

# To a hundredth of a point, a third of a dot at 2400 dpi.
_STEPS = {
    "move": "M%.2f %.2f",
    "line": "L%.2f %.2f",
    "curve": "C%.2f %.2f %.2f %.2f %.2f %.2f",
    "close": "Z",
}


class Glyphs(NamedTuple):
    """A text's glyphs at their places, in units of an em, and the outline that each name means."""

    uses: str
    outlines: Mapping[str, str]


@lru_cache(maxsize=2048)
def glyphs(text: str, font: str, prefix: str) -> Glyphs:
    """Return the glyphs of a text in one font, their names made of the prefix and the character."""
    shapes = outlines(font, text)
    names = {character: f"{prefix}{ord(character):x}" for character, d in shapes.items() if d}
    steps = (text_width(character, font, EM) for character in text)
    uses = (
        f'<use xlink:href="#{names[character]}" x="{number(x)}"/>'
        for character, x in zip(text, accumulate(steps, initial=0.0), strict=False)
        if character in names
    )
    return Glyphs("".join(uses), {name: shapes[character] for character, name in names.items()})


def path_element(path: Path) -> str:
    """Return a path with its look."""
    look = f'fill="{"none" if path.fill is None else _grey(path.fill)}"'
    if path.line > 0:
        look += f' stroke="{_grey(path.grey)}" stroke-width="{number(path.line)}"'
        look += ' stroke-linecap="round"' if path.round_ends else ""
        look += f' stroke-dasharray="{" ".join(map(number, path.dash))}"' if path.dash else ""
    return f'<path d="{_steps(path.steps)}" {look}/>'


@lru_cache(maxsize=1024)  # the sides of some cards; 10 MB
def _steps(steps: tuple[Step, ...]) -> str:
    form = "".join([_STEPS[step[0]] for step in steps])
    return form % tuple([at + 0.0 for step in steps for at in step[1:]])  # 0 takes -0's sign


@lru_cache(maxsize=64)
def modules(symbol: Symbol) -> str:
    """Return a symbol's dark modules as the data of one path, a unit each.

    Module by module, some renderers show seams.
    """
    return "".join(f"M{x} {y}h{w}v{h}h{-w}z" for x, y, w, h in symbol_path(symbol))


@lru_cache(maxsize=8)
def png_data(raster: Raster) -> str:
    """Return a raster as a PNG in base64."""
    import zlib
    from base64 import b64encode
    from io import BytesIO

    from PIL import Image

    mode = {1: "1", 8: "L", 24: "RGB"}[raster.bits]
    size = raster.width, raster.height
    out = BytesIO()
    Image.frombytes(mode, size, zlib.decompress(raster.packed)).save(out, "PNG")
    return b64encode(out.getvalue()).decode()


def number(of: float) -> str:
    """Return a number to a thousandth, as short as it can be."""
    return f"{round(of, 3) + 0.0:.3f}".rstrip("0").rstrip(".")


def _grey(grey: float) -> str:
    return "#" + f"{round(255 * grey):02x}" * 3
