"""A checksum in what is written: it harms no reader, and tells whose a file is."""

import tomllib
import warnings
import zipfile
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pypdf
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tagend.cards.disk.seal import origin, sealed
from tests.cards.cli.conftest import Tagend


def zipped(**files: str) -> bytes:
    data = BytesIO()
    with zipfile.ZipFile(data, "w") as archive:
        for name, text in files.items():
            archive.writestr(zipfile.ZipInfo(name), text * 50, zipfile.ZIP_DEFLATED)
    return data.getvalue()


# By kind, the least that a reader of it takes.
BARE = {
    "toml": b'name = "Alder run"\n\n[[section]]\nlength = "30 in"\n',
    "toml in CRLF": 'name = "Erle – Ünder"\r\n'.encode(),
    "svg": b'<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg"/>\n',
    "zip": zipped(one="1", two="2"),
    "pdf": b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\nstartxref\n9\n%%EOF\n",
}


@pytest.mark.parametrize("data", BARE.values(), ids=BARE)
def test_a_sealed_file_is_ours_until_a_byte_changes(data: bytes) -> None:
    ours = sealed(data)
    assert origin(data) == "not ours"
    assert origin(ours) == "ours"
    assert sealed(data) == ours
    for place in range(len(ours)):
        other = ours[:place] + bytes([ours[place] ^ 1]) + ours[place + 1 :]
        assert origin(other) != "ours", place
    for other in (ours + b"\n", ours[:-1], b"\n" + ours):
        assert origin(other) == "changed"


@given(st.sampled_from(list(BARE.values())), st.binary(min_size=1, max_size=50))
def test_whatever_is_added_at_the_end_is_seen(data: bytes, more: bytes) -> None:
    assert origin(sealed(data) + more) == "changed"


@given(
    st.dictionaries(st.text("abc", min_size=1), st.text(st.characters(exclude_categories=["C"])))
)
def test_any_toml_says_what_it_said(texts: dict[str, str]) -> None:
    from tomlkit import dumps

    ours = sealed(dumps(texts).encode())
    assert tomllib.loads(ours.decode()) == texts
    assert origin(ours) == "ours"


def test_the_seals_own_words_in_a_file_do_not_confuse_it() -> None:
    first = sealed(BARE["toml"])
    twice = sealed(first)
    assert twice != first
    assert origin(twice) == "ours"
    assert origin(twice.replace(b"Alder", b"Birch")) == "changed"


@pytest.mark.parametrize("data", [b"name,length\r\nAlder run,30 in\r\n", b"\x89PNG\r\n\x1a\n\x00"])
def test_what_can_hold_no_comment_stays_as_it_is(data: bytes) -> None:
    assert sealed(data) == data
    assert origin(data) == "not ours"


def test_a_zip_still_unpacks_without_a_fault() -> None:
    with zipfile.ZipFile(BytesIO(sealed(BARE["zip"]))) as archive:
        assert archive.testzip() is None
        assert archive.read("two") == b"2" * 50


@pytest.mark.parametrize("command", ["cards", "labels", "bench", "counter"])
def test_a_pdf_is_still_read_strictly(tagend: Tagend, demo: Path, command: str) -> None:
    out = demo / "out.pdf"
    shop = ("--shop", demo / "shop.toml")
    assert tagend(command, demo / "sandbar-eight.toml", "-o", out, *shop).status == 0
    data = out.read_bytes()
    assert origin(data) == "ours"
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        reader = pypdf.PdfReader(BytesIO(data), strict=True)
        assert None not in [reader.get_object(number) for number in reader.xref[0]]
    with pypdfium2.PdfDocument(data) as document:
        assert len(document) == len(reader.pages)
        assert document[0].get_textpage().get_text_range()


def test_an_svg_is_still_one_drawing(tagend: Tagend, demo: Path) -> None:
    out = demo / "out.svg"
    recipes = (demo / "sandbar-eight.toml", demo / "reedbed-six.toml")
    assert tagend("compare", *recipes, "-o", out).status == 0
    assert origin(out.read_bytes()) == "ours"
    assert ElementTree.fromstring(out.read_bytes()).tag.endswith("svg")
