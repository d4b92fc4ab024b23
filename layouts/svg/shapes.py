"""What stands on a face in, its shape in SVG out, kept for the next face that has the same."""

from functools import lru_cache
from hashlib import sha256
from typing import NamedTuple

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


class Shared(NamedTuple):
    """A shape to be stated once and used by its name."""

    name: str
    element: str


def shared(tag: str, inside: str) -> Shared:
    """Return an element, named by what it is: files may stand side by side in one page."""
    name = f"s{sha256(inside.encode()).hexdigest()[:16]}"
    return Shared(name, f'<{tag} id="{name}"{inside}</{tag}>')


@lru_cache(maxsize=64)
def code_shape(symbol: Symbol) -> Shared:
    """Return a symbol's dark modules as one path, a unit each.

    Module by module, some renderers show seams.
    """
    boxes = (f"M{x} {y}h{w}v{h}h{-w}z" for x, y, w, h in symbol_path(symbol))
    return shared("path", f' d="{"".join(boxes)}">')


@lru_cache(maxsize=8)
def picture_shape(raster: Raster) -> Shared:
    """Return a raster as an image, a unit each pixel."""
    size = f'width="{raster.width}" height="{raster.height}" preserveAspectRatio="none"'
    href = f"data:image/png;base64,{_png_data(raster)}"
    return shared("image", f' {size} xlink:href="{href}">')


def _png_data(raster: Raster) -> str:
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
