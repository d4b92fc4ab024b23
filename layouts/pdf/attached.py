"""The bytes of a PDF in, the files that it carries out.

Bounded, and read apart: it may be a stranger's.
"""

from collections.abc import Iterator
from io import BytesIO
from typing import TYPE_CHECKING, TypeVar

from tagend.layouts.pdf.attach import AttachedFile
from tagend.layouts.strangers.apart import apart
from tagend.layouts.strangers.unreadable import Unreadable

if TYPE_CHECKING:
    from pypdf.generic import DictionaryObject, PdfObject

MOST_FILES = 10_000  # more recipes than anyone prints at once
LARGEST_FILE = 1_000_000  # bytes
LARGEST_ALL = 50_000_000  # bytes; a recipe has one thousand

_OURS = "give a PDF that tagend made"

_Kind = TypeVar("_Kind", bound="PdfObject")


def attached(pdf: bytes) -> tuple[AttachedFile, ...]:
    """Return the files that a PDF carries, in the order of its list.

    Raises `Unreadable`, also for more than MOST_FILES files, one over LARGEST_FILE, or all
    together over LARGEST_ALL.
    """
    return tuple(AttachedFile(*fields) for fields in apart(attached_files, pdf))


def attached_files(pdf: bytes) -> list[tuple[str, str, bytes, str]]:
    """Return the fields of what `attached` does, in this process."""
    from pypdf import PdfReader

    reader = PdfReader(BytesIO(pdf))
    if reader.is_encrypted:
        raise Unreadable("this PDF is locked", "save a copy without a password")
    files: list[tuple[str, str, bytes, str]] = []
    size = 0
    for file in _files(reader.root_object):
        files.append(file)
        size += len(file[2])
        if len(files) > MOST_FILES:
            raise Unreadable(f"this PDF carries more than {MOST_FILES} files", _OURS)
        if size > LARGEST_ALL:
            found = f"the files in this PDF are larger than {LARGEST_ALL:,} bytes together"
            raise Unreadable(found, _OURS)
    return files


def _files(catalogue: "DictionaryObject") -> Iterator[tuple[str, str, bytes, str]]:
    # The tree of names (ISO 32000-1, 7.9.6): a node has names, each before its file, or kids.
    from pypdf.generic import ArrayObject, DictionaryObject

    names = _as(DictionaryObject, catalogue.get("/Names"))
    waiting, seen = [_as(DictionaryObject, names.get("/EmbeddedFiles"))], 0
    while waiting:
        node = waiting.pop(0)
        seen += 1
        if seen > MOST_FILES:
            raise Unreadable("the PDF's list of files has no end", _OURS)
        kids = _as(ArrayObject, node.get("/Kids"))
        waiting += [_as(DictionaryObject, kid) for kid in kids[:MOST_FILES]]
        for specification in _as(ArrayObject, node.get("/Names"))[1::2]:
            yield _file(_as(DictionaryObject, specification))


def _file(specification: "DictionaryObject") -> tuple[str, str, bytes, str]:
    from pypdf.generic import DictionaryObject, StreamObject

    name = str(specification["/UF" if "/UF" in specification else "/F"])
    contents = _as(DictionaryObject, specification["/EF"])
    stream = _as(StreamObject, contents["/F" if "/F" in contents else "/UF"])
    data = stream.get_data()
    if len(data) > LARGEST_FILE:
        found = f"the file {name!r} in the PDF is larger than {LARGEST_FILE:,} bytes"
        raise Unreadable(found, _OURS)
    media_type = str(stream.get("/Subtype", "/application/octet-stream")).removeprefix("/")
    return name, media_type, data, str(specification.get("/Desc", ""))


def _as(kind: type[_Kind], value: "PdfObject | None") -> _Kind:
    found = kind() if value is None else value.get_object()
    if not isinstance(found, kind):
        raise Unreadable("the PDF's list of files is damaged", _OURS)
    return found
