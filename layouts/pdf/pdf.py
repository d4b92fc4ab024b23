"""Sheets in, the bytes of a PDF out; the only place with y upwards.

The same sheets give the same bytes: nothing is taken from the clock, an id or a set's order.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from io import BytesIO
from typing import TYPE_CHECKING, Literal, TypeAlias

from tagend.fonts import register
from tagend.layouts.codes.code import symbol_path
from tagend.layouts.paper.face import Code, Face, Item, Path, Picture, Symbol, TextRun
from tagend.layouts.paper.raster import Raster
from tagend.layouts.pdf.attach import AttachedFile, embed, set_in_catalogue
from tagend.layouts.sheets.sheet import TURNED, Adjustment, Placed, Sheet, Trim

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas
    from reportlab.pdfgen.pathobject import PDFPathObject

Duplex: TypeAlias = Literal["long edge", "short edge", "single side"]

# Values of the viewer preference (ISO 32000-1, table 150).
_DUPLEX: dict[Duplex, str] = {
    "long edge": "DuplexFlipLongEdge",
    "short edge": "DuplexFlipShortEdge",
    "single side": "Simplex",
}

_WORTH_REUSE = 3  # uses; for fewer, a form's own stream and dictionary cost more than they save
_ROUND_FORM = 36.0  # points; a form clips to its box, which shall not cut what a page would show
_NON_ZERO = 1  # the fill rule under which overlapping outlines stay filled


class _Drawing:
    """A canvas, with what has been made on it to be drawn again."""

    def __init__(self, canvas: "Canvas") -> None:
        self.canvas = canvas
        self.codes: dict[Symbol, PDFPathObject] = {}
        self.forms: dict[int, str] = {}  # by the id of a face, which its sheet holds
        self.rasters: dict[Raster, str] = {}  # the name of each


def write_pdf(
    sheets: Sequence[Sheet],
    *,
    title: str,
    creator: str,
    author: str = "",
    language: str = "en",
    files: Sequence[AttachedFile] = (),
    duplex: Duplex | None = None,
) -> bytes:
    """Return a PDF of the sheets in their order, one page each, to be printed unscaled.

    `language` is that of the text, as BCP 47 names it. Sheets with a trim are for a print shop, and
    get an output intent. Raises ValueError when there is no sheet or two files have one name.
    """
    if not sheets:
        raise ValueError("a PDF needs at least one sheet")
    canvas = _canvas(language)
    canvas.setTitle(title)
    canvas.setSubject("")
    canvas.setCreator(creator)
    canvas.setAuthor(author)
    _prefer(canvas, duplex)
    if any(sheet.trim for sheet in sheets):
        _intend(canvas)
    embed(canvas, files)
    drawing = _Drawing(canvas)
    _define_forms(drawing, sheets)
    for sheet in sheets:
        _draw_sheet(drawing, sheet)
    return bytes(canvas.getpdfdata())


def _canvas(language: str) -> "Canvas":
    from reportlab.pdfgen.canvas import Canvas

    # With one of our fonts as the first, the file never names the library's own, unembedded one.
    register("medium")
    return Canvas(
        BytesIO(),
        pageCompression=1,
        invariant=1,
        pdfVersion=(1, 7),
        lang=language,
        initialFontName="medium",
    )


def _prefer(canvas: "Canvas", duplex: Duplex | None) -> None:
    from reportlab.pdfbase.pdfdoc import PDFDictionary

    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    if duplex is not None:
        canvas.setViewerPreference("Duplex", _DUPLEX[duplex])
    # The library's own list of preferences ends before this one, which came with PDF 1.7.
    preferences = canvas.getCatalogEntry("ViewerPreferences")
    PDFDictionary.__setitem__(preferences, "PickTrayByPDFSize", "true")


def _intend(canvas: "Canvas") -> None:
    """Say for what press the pages are made: ISO 32000-1, 14.11.5, and ISO 15930 for its kind.

    All is black, so that any condition of offset on coated paper prints it alike.
    """
    from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFString

    intent = {
        "Type": PDFName("OutputIntent"),
        "S": PDFName("GTS_PDFX"),
        "OutputConditionIdentifier": PDFString("FOGRA39"),
        "OutputCondition": PDFString("offset on coated paper, black ink alone"),
        "RegistryName": PDFString("http://www.color.org"),
    }
    set_in_catalogue(canvas, "OutputIntents", PDFArray([PDFDictionary(intent)]))


def _define_forms(drawing: _Drawing, sheets: Sequence[Sheet]) -> None:
    """Define a form for each face that is used often."""
    faces = {id(placed.face): placed.face for sheet in sheets for placed in sheet.placed}
    uses: Counter[Face] = Counter()
    for key, count in Counter(id(p.face) for sheet in sheets for p in sheet.placed).items():
        uses[faces[key]] += count  # comparing all that is on a face, once for each object
    often = (face for face, count in uses.items() if count >= _WORTH_REUSE)
    names = {face: f"face{number}" for number, face in enumerate(often, start=1)}
    for face, form in names.items():
        right, top = face.width + _ROUND_FORM, face.height + _ROUND_FORM
        drawing.canvas.beginForm(form, -_ROUND_FORM, -_ROUND_FORM, right, top)
        _draw(drawing, face.items, face.height)
        drawing.canvas.endForm()
    if names:
        drawing.forms |= {key: names[face] for key, face in faces.items() if face in names}


def _draw_sheet(drawing: _Drawing, sheet: Sheet) -> None:
    canvas = drawing.canvas
    canvas.setPageSize((round(sheet.width, 3), round(sheet.height, 3)))
    _set_boxes(canvas, sheet.trim, sheet.height)
    by = sheet.adjustment
    if by != Adjustment():
        down = sheet.height * (1 - by.scale_y) - by.y
        canvas.transform(by.scale_x, 0, 0, by.scale_y, by.x, down)
    for placed in sheet.placed:
        canvas.saveState()
        canvas.transform(*_place(placed, sheet.height))
        form = drawing.forms.get(id(placed.face))
        if form is not None:
            canvas.doForm(form)
        else:
            _draw(drawing, placed.face.items, placed.face.height)
        canvas.restoreState()
    _draw(drawing, sheet.marks, sheet.height)
    canvas.showPage()


def _set_boxes(canvas: "Canvas", trim: Trim | None, height: float) -> None:
    # ISO 32000-1, 14.11.2. The canvas keeps boxes for the next page, so they are always set.
    for name, beyond in (("trim", 0.0), ("bleed", trim.bleed if trim else 0.0)):
        box = trim and (
            round(trim.x - beyond, 3),
            round(height - trim.y - trim.height - beyond, 3),
            round(trim.x + trim.width + beyond, 3),
            round(height - trim.y + beyond, 3),
        )
        canvas.setCropBox(box, name)


def _place(placed: Placed, height: float) -> tuple[float, float, float, float, float, float]:
    # The matrix that carries the face, whose lower left corner is the origin, into its box.
    x_by_u, y_by_u, x_by_v, y_by_v = TURNED[placed.turn]
    x, y = placed.at(0, placed.face.height)
    return x_by_u, -y_by_u, -x_by_v, y_by_v, x, height - y


def _draw(drawing: _Drawing, items: Iterable[Item], height: float) -> None:
    # A form takes over whatever state its page has, so every item sets all that it relies on.
    def up(y: float) -> float:
        return height - y

    for item in items:
        match item:
            case TextRun():
                _draw_text(drawing.canvas, item, up)
            case Path():
                _draw_path(drawing.canvas, item, up)
            case Code():
                _draw_code(drawing, item, up)
            case Picture():
                _draw_picture(drawing, item, up)


def _draw_text(canvas: "Canvas", run: TextRun, up: Callable[[float], float]) -> None:
    register(run.font)
    canvas.setFillGray(0)
    text = canvas.beginText(run.x, up(run.y))
    text.setFont(run.font, run.size)
    text.textOut(run.text)
    canvas.drawText(text)


def _draw_path(canvas: "Canvas", path: Path, up: Callable[[float], float]) -> None:
    outline = canvas.beginPath()
    for step in path.steps:
        match step:
            case ("move", x, y):
                outline.moveTo(x, up(y))
            case ("line", x, y):
                outline.lineTo(x, up(y))
            case ("curve", x1, y1, x2, y2, x3, y3):
                outline.curveTo(x1, up(y1), x2, up(y2), x3, up(y3))
            case ("close",):
                outline.close()
    if path.line > 0:
        canvas.setLineWidth(path.line)
        canvas.setStrokeGray(path.grey)
        canvas.setLineCap(int(path.round_ends))
        canvas.setDash(list(path.dash))
    if path.fill is not None:
        canvas.setFillGray(path.fill)
    canvas.drawPath(outline, path.line > 0, path.fill is not None, _NON_ZERO)


def _draw_code(drawing: _Drawing, code: Code, up: Callable[[float], float]) -> None:
    # One path with one fill: module by module, some renderers show seams and others grow each one.
    if code.symbol not in drawing.codes:
        outline = drawing.codes[code.symbol] = drawing.canvas.beginPath()
        for rectangle in symbol_path(code.symbol):
            outline.rect(*rectangle)
    drawing.canvas.saveState()
    drawing.canvas.transform(code.module, 0, 0, -code.module, code.x, up(code.y))
    drawing.canvas.setFillGray(0)
    drawing.canvas.drawPath(drawing.codes[code.symbol], 0, 1, _NON_ZERO)
    drawing.canvas.restoreState()


def _draw_picture(drawing: _Drawing, picture: Picture, up: Callable[[float], float]) -> None:
    name = drawing.rasters.get(picture.raster)
    if name is None:
        name = drawing.rasters[picture.raster] = f"picture{len(drawing.rasters) + 1}"
        _store(drawing.canvas, picture.raster, name)
    low = up(picture.y + picture.height)
    drawing.canvas.saveState()
    drawing.canvas.transform(picture.width, 0, 0, picture.height, picture.x, low)
    drawing.canvas.doForm(name)  # an image is drawn as a form is, in a square of 1 by 1
    drawing.canvas.restoreState()


def _store(canvas: "Canvas", raster: Raster, name: str) -> None:
    """Store a raster in the canvas's document under a name: ISO 32000-1, 8.9.5."""
    from reportlab.pdfbase.pdfdoc import PDFStream, xObjectName

    stream = PDFStream(content=raster.packed)
    for key, value in (
        ("Type", "/XObject"),
        ("Subtype", "/Image"),
        ("Width", raster.width),
        ("Height", raster.height),
        ("ColorSpace", "/DeviceRGB" if raster.bits == 24 else "/DeviceGray"),
        ("BitsPerComponent", min(raster.bits, 8)),
        ("Filter", "/FlateDecode"),
    ):
        stream.dictionary[key] = value
    canvas._doc.Reference(stream, xObjectName(name))
