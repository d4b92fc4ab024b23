"""Files that were made to harm: each small, and each a great burden on a common parser."""

import struct
import zlib
from collections.abc import Callable, Mapping
from io import BytesIO
from pathlib import Path
from typing import TypeAlias

from fontTools.ttLib import TTFont
from fontTools.ttLib.tables.DefaultTable import DefaultTable
from PIL import Image

from tests.fonts.made import truetype
from tests.pictures import file_of

Cases: TypeAlias = Mapping[str, Callable[[], bytes]]

_HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30">'
_RECT = '<rect width="40" height="30"/>'


def svg(body: str, before: str = "") -> bytes:
    return f"{before}{_HEAD}{body}</svg>".encode()


def clips(number: int) -> bytes:
    """Return a clip that is clipped by one that is clipped by one, and so on."""
    clipped = (
        f'<clipPath id="c{n}" clip-path="url(#c{n + 1})">{_RECT}</clipPath>' for n in range(number)
    )
    last = f'<clipPath id="c{number}">{_RECT}</clipPath>'
    return svg("".join(clipped) + last + f'<g clip-path="url(#c0)">{_RECT}</g>')


def defaults(number: int) -> bytes:
    """Return many elements, each with a long attribute that stands once in the file."""
    told = '<!DOCTYPE svg [<!ATTLIST a x CDATA "' + "y" * number + '">]>'
    return svg("<a/>" * number, told)


SVGS: Cases = {
    "a number of many digits": lambda: svg('<path d="M0 0h' + "9" * 2000 + 'v30H0z"/>'),
    "nested clips": lambda: clips(900),
    "groups of clips": lambda: svg(
        f'<clipPath id="c">{_RECT}</clipPath>'
        + '<g clip-path="url(#c)">' * 900
        + _RECT
        + "</g>" * 900
    ),
    "many ends": lambda: svg('<path d="M0 0h40v30' + "z" * 20_000 + '"/>'),
    "deep groups": lambda: svg("<g>" * 100_000 + _RECT + "</g>" * 100_000),
    "defaults of attributes": lambda: defaults(60_000),
    "filters": lambda: svg(
        '<filter id="f" width="9000%">'
        + '<feGaussianBlur stdDeviation="500"/>' * 200
        + f'</filter><g filter="url(#f)">{_RECT}</g>'
    ),
}


def pdf(*objects: bytes) -> bytes:
    """Return a PDF of these objects, of which the first is its catalogue."""
    out, places = bytearray(b"%PDF-1.7\n"), []
    for number, each in enumerate(objects, start=1):
        places.append(len(out))
        out += b"%d 0 obj\n%b\nendobj\n" % (number, each)
    table = b"".join(b"%010d 00000 n \n" % place for place in places)
    count = len(objects) + 1
    end = b"trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n" % (count, len(out))
    return bytes(out) + b"xref\n0 %d\n0000000000 65535 f \n%b%b" % (count, table, end)


def stream(data: bytes, entries: bytes = b"") -> bytes:
    return b"<<%b/Length %d>>\nstream\n%b\nendstream" % (entries, len(data), data)


def page(content: bytes, resources: bytes = b"", *more: bytes, pages: int = 1) -> bytes:
    kids = b" ".join(b"%d 0 R" % (4 + len(more) + n) for n in range(pages))
    each = b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 800]/Contents 3 0 R/Resources<<%b>>>>"
    return pdf(
        b"<</Type/Catalog/Pages 2 0 R>>",
        b"<</Type/Pages/Count %d/Kids[%b]>>" % (pages, kids),
        content,
        *more,
        *[each % resources] * pages,
    )


def packed(size: int, times: int) -> bytes:
    """Return so many zeros, packed so many times."""
    packer = zlib.compressobj(1)
    data = b"".join(packer.compress(bytes(1 << 20)) for _ in range(size >> 20)) + packer.flush()
    for _ in range(times - 1):
        data = zlib.compress(data, 9)
    return data


def carried(data: bytes, filters: bytes) -> bytes:
    """Return a PDF that carries a file."""
    kind = b"/Type/EmbeddedFile/Subtype/application#2Ftoml/Filter[%b]" % filters
    return pdf(
        b"<</Type/Catalog/Pages 2 0 R/Names<</EmbeddedFiles<</Names[(x.toml) 3 0 R]>>>>>>",
        b"<</Type/Pages/Count 0/Kids[]>>",
        b"<</Type/Filespec/F(x.toml)/UF(x.toml)/EF<</F 4 0 R>>>>",
        stream(data, kind),
    )


def forms(depth: int, times: int) -> bytes:
    """Return a page on which a form draws another so many times, and so on."""
    form = b"/Type/XObject/Subtype/Form/BBox[0 0 600 800]/Resources<</XObject<</F %d 0 R>>>>"
    nested = [stream(b"/F Do " * times, form % (5 + n)) for n in range(depth)]
    return page(stream(b"/F Do"), b"/XObject<</F 4 0 R>>", *nested, stream(b"0 0 9 9 re f"))


PAGES: Cases = {
    "a chain of filters": lambda: page(
        stream(packed(700 << 20, 3), b"/Filter[/FlateDecode/FlateDecode/FlateDecode]")
    ),
    "nested forms": lambda: forms(12, 20),
    "millions of paths": lambda: page(
        stream(zlib.compress(b"0 0 600 800 re f " * 3_000_000), b"/Filter/FlateDecode")
    ),
    "deep lists": lambda: pdf(b"<</Type/Catalog/Pages 2 0 R>>", b"[" * 200_000 + b"]" * 200_000),
}
CARRYING: Cases = {
    "packed thrice": lambda: carried(packed(700 << 20, 3), b"/FlateDecode/FlateDecode/FlateDecode"),
    "packed runs": lambda: carried(
        zlib.compress(b"\x81\0" * (1 << 22)), b"/FlateDecode/RunLengthDecode"
    ),
    "packed as text": lambda: carried(
        zlib.compress(b"z" * (1 << 26)), b"/FlateDecode/ASCII85Decode"
    ),
    "packed slowly": lambda: carried(zlib.compress(bytes(1 << 22)), b"/FlateDecode/LZWDecode"),
}


def finders(side: int) -> bytes:
    """Return a picture full of the marks by which a code is found (ISO/IEC 18004, 6.3.3)."""
    mark = Image.new("1", (8, 8), 1)
    mark.paste(0, (0, 0, 7, 7))
    mark.paste(1, (1, 1, 6, 6))
    mark.paste(0, (2, 2, 5, 5))
    picture = Image.new("1", (side, side), 1)
    row = Image.new("1", (side, 8), 1)
    for x in range(0, side, 8):
        row.paste(mark, (x, 0))
    for y in range(0, side, 8):
        picture.paste(row, (0, y))
    return file_of(picture)


def font_of(groups: int, end: int, folder: Path) -> Path:
    """Return a font that has, by its own word, all characters up to an end, over and over."""
    path = truetype(folder / "hostile.ttf", "Жук", "Own")
    table = struct.pack(">HHLLL", 12, 0, 16 + 12 * groups, 0, groups)
    font = TTFont(BytesIO(path.read_bytes()))
    font["cmap"] = DefaultTable("cmap")
    font["cmap"].data = (
        struct.pack(">HHHHL", 0, 1, 3, 10, 12) + table + struct.pack(">LLL", 0, end, 1) * groups
    )
    font.save(path)
    return path
