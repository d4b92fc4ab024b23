"""The bytes of a PDF in, the files that it carries out. Bounded: it may be a stranger's."""

import logging
from collections.abc import Iterator
from io import BytesIO
from itertools import islice
from typing import TYPE_CHECKING, TypeVar

from tagend.layouts.pdf.attach import AttachedFile

if TYPE_CHECKING:
    from pypdf.generic import DictionaryObject, PdfObject

MOST_FILES = 200
LARGEST_FILE = 1_000_000  # bytes

_Kind = TypeVar("_Kind", bound="PdfObject")


class NotAPdf(ValueError):
    """Bytes that are no PDF, or one that is damaged, locked or carries too much."""


def attached(pdf: bytes) -> tuple[AttachedFile, ...]:
    """Return the files that a PDF carries, in the order of its list.

    Raises NotAPdf, also for more than MOST_FILES files or one over LARGEST_FILE.
    """
    from pypdf import PdfReader

    # Without a handler of its own, the library's remarks on a damaged file go to the terminal.
    logging.getLogger("pypdf").addHandler(logging.NullHandler())
    try:
        reader = PdfReader(BytesIO(pdf))
        if reader.is_encrypted:
            raise NotAPdf("the PDF is locked; save a copy without a password")
        files = tuple(islice(_files(reader.root_object), MOST_FILES + 1))
    except NotAPdf:
        raise
    except Exception as fault:  # whatever a parser meets in a stranger's bytes
        raise NotAPdf("this is not a PDF, or it is damaged") from fault
    if len(files) > MOST_FILES:
        raise NotAPdf(f"the PDF carries more than {MOST_FILES} files")
    return files


def _files(catalogue: "DictionaryObject") -> Iterator[AttachedFile]:
    # The tree of names (ISO 32000-1, 7.9.6): a node has names, each before its file, or kids.
    from pypdf.generic import ArrayObject, DictionaryObject

    names = _as(DictionaryObject, catalogue.get("/Names"))
    waiting, seen = [_as(DictionaryObject, names.get("/EmbeddedFiles"))], 0
    while waiting:
        node = waiting.pop(0)
        seen += 1
        if seen > MOST_FILES:
            raise NotAPdf("the PDF's list of files has no end")
        kids = _as(ArrayObject, node.get("/Kids"))
        waiting += [_as(DictionaryObject, kid) for kid in kids[:MOST_FILES]]
        for specification in _as(ArrayObject, node.get("/Names"))[1::2]:
            yield _file(_as(DictionaryObject, specification))


def _file(specification: "DictionaryObject") -> AttachedFile:
    from pypdf.generic import DictionaryObject, StreamObject

    name = str(specification["/UF" if "/UF" in specification else "/F"])
    contents = _as(DictionaryObject, specification["/EF"])
    stream = _as(StreamObject, contents["/F" if "/F" in contents else "/UF"])
    data = stream.get_data()
    if len(data) > LARGEST_FILE:
        raise NotAPdf(f"the file {name!r} in the PDF is larger than {LARGEST_FILE:,} bytes")
    media_type = str(stream.get("/Subtype", "/application/octet-stream")).removeprefix("/")
    return AttachedFile(name, media_type, data, str(specification.get("/Desc", "")))


def _as(kind: type[_Kind], value: "PdfObject | None") -> _Kind:
    found = kind() if value is None else value.get_object()
    if not isinstance(found, kind):
        raise NotAPdf("the PDF's list of files is damaged")
    return found
