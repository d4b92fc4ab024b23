"""Sheets in, the bytes of a PDF out; the only place with y upwards.

The same sheets give the same bytes: nothing is taken from the clock, an id or a set's order.
"""

from collections import Counter
from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING, Literal, TypeAlias

from tagend.fonts import register
from tagend.layouts.paper.face import Face
from tagend.layouts.pdf.attach import AttachedFile, embed, set_in_catalogue
from tagend.layouts.pdf.content import Content, packed_stream
from tagend.layouts.pdf.packing import each_packed
from tagend.layouts.sheets.sheet import TURNED, Adjustment, Placed, Sheet, Trim

if TYPE_CHECKING:
    from reportlab.pdfbase.pdfdoc import PDFStream
    from reportlab.pdfgen.canvas import Canvas

Duplex: TypeAlias = Literal["long edge", "short edge", "single side"]

# Values of the viewer preference (ISO 32000-1, table 150).
_DUPLEX: dict[Duplex, str] = {
    "long edge": "DuplexFlipLongEdge",
    "short edge": "DuplexFlipShortEdge",
    "single side": "Simplex",
}

_WORTH_REUSE = 3  # uses; for fewer, a form's own stream and dictionary cost more than they save
_ROUND_FORM = 36.0  # points; a form clips to its box, which shall not cut what a page would show


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
    content = Content(canvas)
    forms = _define_forms(canvas, content, sheets)
    drawn = (_drawn(canvas, content, sheet, forms) for sheet in sheets)
    streams: dict[bytes, PDFStream] = {}  # pages that are alike, as of many copies, share one
    for packed, page in zip(each_packed(drawn, len(sheets)), canvas._doc.Pages.pages, strict=True):
        if packed not in streams:
            streams[packed] = packed_stream(packed)
        page.Contents = streams[packed]
    return _finished(canvas)


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


def _finished(canvas: "Canvas") -> bytes:
    """Return the document with its streams as bytes: as letters they take more time and room."""
    from reportlab import rl_config

    before, rl_config.useA85 = rl_config.useA85, 0
    try:
        return bytes(canvas.getpdfdata())
    finally:
        rl_config.useA85 = before


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


def _define_forms(canvas: "Canvas", content: Content, sheets: Sequence[Sheet]) -> dict[int, str]:
    """Define a form for each face that is used often; return its name by the id of the face."""
    faces = {id(placed.face): placed.face for sheet in sheets for placed in sheet.placed}
    uses: Counter[Face] = Counter()
    for key, count in Counter(id(p.face) for sheet in sheets for p in sheet.placed).items():
        uses[faces[key]] += count  # comparing all that is on a face, once for each object
    often = (face for face, count in uses.items() if count >= _WORTH_REUSE)
    names = {face: f"face{number}" for number, face in enumerate(often, start=1)}
    for face, form in names.items():
        right, low = face.width + _ROUND_FORM, face.height + _ROUND_FORM
        canvas.beginForm(form, -_ROUND_FORM, -_ROUND_FORM, right, low)
        content.draw(face.items)
        canvas.endForm()
    return {key: names[face] for key, face in faces.items() if face in names} if names else {}


def _drawn(canvas: "Canvas", content: Content, sheet: Sheet, forms: dict[int, str]) -> bytes:
    """Draw a sheet on the next page; return its operators, which else wait there as text."""
    canvas.setPageSize((round(sheet.width, 3), round(sheet.height, 3)))
    _set_boxes(canvas, sheet.trim, sheet.height)
    by = sheet.adjustment
    if by != Adjustment():
        down = sheet.height * (1 - by.scale_y) - by.y
        canvas.transform(by.scale_x, 0, 0, by.scale_y, by.x, down)
    for placed in sheet.placed:
        canvas._code.append(f"q {_place(placed, sheet.height)} cm")
        form = forms.get(id(placed.face))
        if form is not None:
            canvas.doForm(form)
        else:
            content.draw(placed.face.items)
        canvas._code.append("Q")
    canvas._code.append(f"1 0 0 -1 0 {sheet.height:.5f} cm")
    content.draw(sheet.marks)
    canvas.showPage()
    page = canvas._doc.Pages.pages[-1]
    operators, page.stream = page.stream.encode("latin-1"), None
    return bytes(operators)


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


def _place(placed: Placed, height: float) -> str:
    """Return the matrix that carries a face, with y downwards, into its box."""
    x_by_u, y_by_u, x_by_v, y_by_v = TURNED[placed.turn]
    x, y = placed.at(0, 0)
    return f"{x_by_u} {-y_by_u} {x_by_v} {-y_by_v} {x:.5f} {height - y:.5f}"
