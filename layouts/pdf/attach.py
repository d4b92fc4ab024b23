"""Files into a PDF that is being written. `attached` reads them back."""

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from reportlab.pdfbase.pdfdoc import PDFObjectReference, PDFString
    from reportlab.pdfgen.canvas import Canvas


class AttachedFile(Struct, frozen=True):
    """A file inside a PDF."""

    name: str
    media_type: str  # such as text/plain
    data: bytes
    description: str = ""


def embed(canvas: "Canvas", files: Sequence[AttachedFile]) -> None:
    """Put the files into the canvas's document, as the sources that it was made from.

    Raises ValueError when two have one name.
    """
    if len({file.name for file in files}) < len(files):
        raise ValueError("two attached files have one name")
    if not files:
        return
    from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFString

    tree: list[object] = []
    references: list[object] = []
    # A reader finds a name by halving, so the tree is in the order of its bytes: one encoding.
    for file in sorted(files, key=lambda file: file.name.encode("utf-16-be")):
        reference = _file_specification(canvas, file)
        tree += [PDFString(file.name, enc="utf-16"), reference]
        references.append(reference)
    names = PDFDictionary({"EmbeddedFiles": PDFDictionary({"Names": PDFArray(tree)})})
    canvas.setCatalogEntry("Names", names)
    set_in_catalogue(canvas, "AF", references)


def set_in_catalogue(canvas: "Canvas", key: str, value: object) -> None:
    """Set an entry of the catalogue that the library does not know, and so would not print."""
    canvas.setCatalogEntry(key, value)
    catalogue = canvas._doc.Catalog
    catalogue.__NoDefault__ = [*catalogue.__NoDefault__, key]


def _file_specification(canvas: "Canvas", file: AttachedFile) -> "PDFObjectReference":
    # ISO 32000-2, 7.11.3 and 7.11.4. /F and /UF are equal, or readers list the file twice.
    from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFStream, PDFZCompress

    stream = PDFStream(content=file.data, filters=[PDFZCompress])
    stream.dictionary["Type"] = "/EmbeddedFile"
    stream.dictionary["Subtype"] = _pdf_name(file.media_type)
    stream.dictionary["Params"] = PDFDictionary({"Size": len(file.data)})
    contents = canvas._doc.Reference(stream)
    specification = {
        "Type": "/Filespec",
        "F": _text(file.name),
        "UF": _text(file.name),
        "EF": PDFDictionary({"F": contents, "UF": contents}),
        "AFRelationship": "/Source",
    }
    if file.description:
        specification["Desc"] = _text(file.description)
    return canvas._doc.Reference(PDFDictionary(specification))


def _text(text: str) -> "PDFString":
    """Return a text; where its letters would be taken for a mark of an encoding, in UTF-16.

    ISO 32000-2, 7.9.2.2, has such marks for UTF-16 and UTF-8.
    """
    from reportlab.pdfbase.pdfdoc import PDFString

    marked = text.startswith(("þÿ", "ÿþ", "ï»¿"))
    return PDFString(text, enc="utf-16" if marked else "auto")


def _pdf_name(text: str) -> str:
    # The library's own way leaves a slash as it is, which breaks the dictionary.
    return "/" + re.sub(r"[^A-Za-z0-9.+_-]", lambda found: f"#{ord(found[0]):02X}", text)
