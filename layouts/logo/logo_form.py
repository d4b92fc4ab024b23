"""A logo into a PDF that is being written, as a form that may be drawn again and again."""

from typing import TYPE_CHECKING

from tagend.layouts.logo.logo import Logo

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas


def define_logo(canvas: "Canvas", logo: Logo, form: str) -> None:
    """Store the logo's objects in the canvas's document under the name of a form."""
    from reportlab.pdfbase.pdfdoc import xObjectName

    document = canvas._doc
    first = document.objectcounter + 1  # the document numbers objects as they are named
    for place, parts in enumerate(logo.objects):
        written = (
            part if isinstance(part, bytes) else b"%d 0 R" % (first + part) for part in parts
        )
        name = f"{form}.{place}" if place else xObjectName(form)
        document.Reference(b"".join(written), name)
