"""Items in, the operators that draw them out: ISO 32000-1, 8 and 9.

They have y downwards, as items do: whoever places them turns it up. Places have five digits, since
renderers put letters on whole pixels, and shapes three. The drawing library's own
calls for texts and paths take ten times as long, for all that they check and keep.
"""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import groupby
from typing import TYPE_CHECKING, Any, TypeAlias

from tagend.fonts import register
from tagend.layouts.codes.code import symbol_path
from tagend.layouts.paper.face import Code, Item, Path, Picture, Step, Symbol, TextRun
from tagend.layouts.paper.raster import Raster

if TYPE_CHECKING:
    from reportlab.pdfbase.pdfdoc import PDFStream
    from reportlab.pdfgen.canvas import Canvas

_State: TypeAlias = dict[str, str]  # of the page: an operator, and what it was given last

_STEPS = {
    "move": "%.3f %.3f m",
    "line": "%.3f %.3f l",
    "curve": "%.3f %.3f %.3f %.3f %.3f %.3f c",
    "close": "h",
}
_PAINTED = {(True, False): "S", (False, True): "f", (True, True): "B", (False, False): "n"}
_LONG = 8  # steps; of longer shapes, such as a knot's, many stand in several places


class Content:
    """What draws on one canvas, with all that has been written before to be written again."""

    def __init__(self, canvas: "Canvas") -> None:
        self._canvas = canvas
        self._shapes: dict[int, str] = {}  # by the id of a shape, which its sheet holds
        self._letters = lru_cache(maxsize=4096)(self._set)
        self._rasters: dict[Raster, str] = {}  # the name of each

    def draw(self, items: Iterable[Item]) -> None:
        """Draw items where the canvas is, each with all that it relies on."""
        state: _State = {}  # a form takes over whatever state its page has
        for (kind, x, y), group in groupby(items, _kind):
            alike: Iterator[Any] = group
            if kind is TextRun:
                self._canvas._code += self._texts(alike, state)
            elif kind is Path:
                self._canvas._code += self._paths(alike, x, y, state)
            else:
                self._canvas._code += map(self._boxed, alike)

    def _texts(self, runs: Iterable[TextRun], state: _State) -> Iterator[str]:
        yield from _changed(state, g="0.000")
        yield "BT"
        for run in runs:
            yield f"1 0 0 -1 {run.x:.5f} {run.y:.5f} Tm"
            for font, letters in self._letters(run.font, run.text):
                yield from _changed(state, Tf=f"{font} {run.size:.3f}")
                yield letters
        yield "ET"

    def _set(self, name: str, text: str) -> tuple[tuple[str, str], ...]:
        """Return what shows the letters of a text, with the name of the font for each part."""
        from reportlab.pdfbase.pdfmetrics import getFont

        register(name)
        font, document = getFont(name), self._canvas._doc
        return tuple(
            (font.getSubsetInternalName(subset, document), f"({self._canvas._escape(part)}) Tj")
            for subset, part in font.splitString(text, document)
        )

    def _paths(self, paths: Iterable[Path], x: float, y: float, state: _State) -> Iterator[str]:
        if x or y:
            state = dict(state)
            yield f"q 1 0 0 1 {x:.5f} {y:.5f} cm"
        for path in paths:
            if path.line > 0:
                dash = " ".join(f"{each:.3f}" for each in path.dash)
                yield from _changed(
                    state,
                    w=f"{path.line:.3f}",
                    G=f"{path.grey:.3f}",
                    J="1" if path.round_ends else "0",
                    d=f"[{dash}] 0",
                )
            if path.fill is not None:
                yield from _changed(state, g=f"{path.fill:.3f}")
            yield self._shape(path.shape)
            yield _PAINTED[path.line > 0, path.fill is not None]
        if x or y:
            yield "Q"

    def _shape(self, shape: tuple[Step, ...]) -> str:
        if len(shape) < _LONG:
            return _stepped(shape)
        found = self._shapes.get(id(shape))
        if found is None:
            found = self._shapes[id(shape)] = _stepped(shape)
        return found

    def _boxed(self, item: Code | Picture) -> str:
        """Return what draws a code or a picture in the box that is its own."""
        match item:
            case Code(x, y, module, symbol):
                # One path: module by module, some renderers show seams and others grow each one.
                at = f"{module:.6f} 0 0 {module:.6f} {x:.5f} {y:.5f}"
                return f"q {at} cm 0 g {_boxes(symbol)} f Q"
            case Picture(x, y, width, height, raster):
                name = self._named(raster)
                box = f"{width:.3f} 0 0 {-height:.3f} {x:.5f} {y + height:.5f}"
                return f"q {box} cm /{name} Do Q"

    def _named(self, raster: Raster) -> str:
        """Return the name of a raster, stored in the canvas's document: ISO 32000-1, 8.9.5."""
        name = self._rasters.get(raster)
        if name is None:
            name = self._rasters[raster] = f"picture{len(self._rasters) + 1}"
            _store(self._canvas, raster, name)
        self._canvas._formsinuse.append(name)  # an image is drawn as a form is
        return str(self._canvas._doc.getXObjectName(name))


@lru_cache(maxsize=64)  # numbered labels have one code
def _boxes(symbol: Symbol) -> str:
    """Return a symbol's dark modules, a unit each."""
    return " ".join(f"{x} {y} {w} {h} re" for x, y, w, h in symbol_path(symbol))


def _kind(item: Item) -> tuple[type[Item], float, float]:
    return (Path, item.x, item.y) if isinstance(item, Path) else (type(item), 0.0, 0.0)


def _changed(state: _State, **values: str) -> Iterator[str]:
    """Yield the operators that bring the state to these values, and note them."""
    for operator, value in values.items():
        if state.get(operator) != value:
            state[operator] = value
            yield f"{value} {operator}"


def _stepped(shape: Iterable[Step]) -> str:
    return "\n".join([_STEPS[step[0]] % step[1:] for step in shape])


def packed_stream(content: bytes) -> "PDFStream":
    """Return what is packed as a stream of a document."""
    from reportlab.pdfbase.pdfdoc import PDFStream

    stream = PDFStream(content=content)
    stream.dictionary["Filter"] = "/FlateDecode"
    return stream


def _store(canvas: "Canvas", raster: Raster, name: str) -> None:
    from reportlab.pdfbase.pdfdoc import xObjectName

    stream = packed_stream(raster.packed)
    for key, value in (
        ("Type", "/XObject"),
        ("Subtype", "/Image"),
        ("Width", raster.width),
        ("Height", raster.height),
        ("ColorSpace", "/DeviceRGB" if raster.bits == 24 else "/DeviceGray"),
        ("BitsPerComponent", min(raster.bits, 8)),
    ):
        stream.dictionary[key] = value
    canvas._doc.Reference(stream, xObjectName(name))
