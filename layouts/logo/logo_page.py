"""The bytes of a PDF file in, what pdfium shows of its first page's crop box out."""

from typing import TYPE_CHECKING

from tagend.layouts.logo.greys import press_black
from tagend.layouts.logo.size import BOX
from tagend.layouts.strangers.unreadable import Unreadable, library

if TYPE_CHECKING:
    from PIL import Image
    from pypdfium2 import PdfPage


def first_page(data: bytes) -> "Image.Image":
    """Return the first page on white. Raises `Unreadable`."""
    pdfium = library("pypdfium2", "tagend[logo]")
    try:
        document = pdfium.PdfDocument(data)
    except pdfium.PdfiumError as fault:
        if fault.err_code != pdfium.raw.FPDF_ERR_PASSWORD:
            raise
        raise Unreadable("this PDF is locked", "save it without a password") from None
    if len(document) == 0:
        raise Unreadable("this PDF has no page", "give one with the logo on its first page")
    page = document[0]
    width, height = page.get_size()
    if width <= 0 or height <= 0:
        raise Unreadable("the first page of this PDF has no size", "save it again")
    _check_fonts(page)
    scale = min((BOX[0] - 1) / width, (BOX[1] - 1) / height)  # a part of a pixel counts as one
    return press_black(page.render(scale=scale).to_pil())


def _check_fonts(page: "PdfPage") -> None:
    """Refuse text in a font that is not there, for which each machine takes another."""
    from pypdfium2.raw import FPDF_PAGEOBJ_TEXT

    for text in page.get_objects(filter=[FPDF_PAGEOBJ_TEXT], max_depth=20):
        if not text.get_font().is_embedded:
            raise Unreadable("a font of this PDF is not inside it", "convert its text to paths")
