"""Files go into a PDF and come back out of it; a stranger's PDF does no harm."""

import subprocess
import sys
from collections.abc import Sequence
from io import BytesIO
from pathlib import Path

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, TextStringObject

from tagend.layouts.pdf.attach import AttachedFile
from tagend.layouts.pdf.attached import LARGEST_FILE, MOST_FILES, attached, attached_files
from tagend.layouts.pdf.pdf import write_pdf
from tagend.layouts.sheets.sheet import Sheet
from tagend.layouts.strangers.unreadable import Unreadable

RECIPE = AttachedFile("sandbar.toml", "application/toml", b'name = "Sandbar"\n', "A recipe")
NAMES = st.text(st.characters(codec="utf-8", exclude_categories=["C"]), min_size=1, max_size=30)
FILES = st.builds(
    AttachedFile,
    NAMES,
    st.sampled_from(["text/plain", "application/vnd.a+json", "application/toml"]),
    st.binary(max_size=2000),
    NAMES,
)


def pdf_with(files: Sequence[AttachedFile]) -> bytes:
    return write_pdf([Sheet(100, 100, ())], title="", creator="", files=files)


def edited(**entries: object) -> bytes:
    """Return a PDF whose tree of files holds these entries instead."""
    writer = pypdf.PdfWriter(clone_from=BytesIO(pdf_with([RECIPE])))
    tree = writer.root_object["/Names"]["/EmbeddedFiles"]  # type: ignore[index]
    tree.clear()
    for key, entry in entries.items():
        tree[NameObject(f"/{key}")] = entry
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


@given(st.lists(FILES, max_size=8, unique_by=lambda file: file.name))
def test_files_come_back_as_they_went_in(files: list[AttachedFile]) -> None:
    assert sorted(
        (AttachedFile(*each) for each in attached_files(pdf_with(files))), key=str
    ) == sorted(files, key=str)


@pytest.mark.parametrize("words", ["þÿ00", "ÿþ00", "ï»¿00"])
def test_words_that_begin_as_a_mark_of_an_encoding_does_come_back(words: str) -> None:
    """ISO 32000-2, 7.9.2.2: FE FF marks UTF-16, EF BB BF marks UTF-8; readers take FF FE too."""
    file = AttachedFile("a.toml", "text/plain", b"", words)
    (found,) = attached_files(pdf_with([file]))
    assert AttachedFile(*found) == file


@pytest.mark.parametrize("name", ["a(1).toml", "a\\b", "Łódź – ½.toml", "naïve.toml", "a#2F%41"])
def test_awkward_names_come_back(name: str) -> None:
    (file,) = attached(pdf_with([AttachedFile(name, "text/plain", b"")]))
    assert file.name == name


def test_a_pdf_without_files_has_none() -> None:
    pdf = pdf_with([])
    assert attached(pdf) == ()
    assert b"/Names" not in pdf


def test_files_are_listed_in_one_order_whatever_order_they_came_in() -> None:
    files = [AttachedFile(name, "text/plain", name.encode()) for name in ("b", "ä", "a", "Ł")]
    assert pdf_with(files) == pdf_with(files[::-1])


def test_two_files_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="two attached files have one name"):
        pdf_with([RECIPE, RECIPE])


def test_another_reader_finds_each_file_once() -> None:
    files = [RECIPE, AttachedFile("Łódź.toml", "text/plain", b"\x00\xff")]
    found = pypdf.PdfReader(BytesIO(pdf_with(files))).attachments
    assert {name: list(data) for name, data in found.items()} == {
        file.name: [file.data] for file in files
    }


def test_the_document_names_its_files_as_its_sources() -> None:
    root = pypdf.PdfReader(BytesIO(pdf_with([RECIPE]))).root_object
    (specification,) = (found.get_object() for found in root["/AF"])  # type: ignore[attr-defined]
    assert specification["/AFRelationship"] == "/Source"
    assert specification["/F"] == specification["/UF"] == "sandbar.toml"
    assert specification["/Desc"] == "A recipe"
    stream = specification["/EF"]["/F"]
    assert (stream["/Subtype"], stream["/Params"]["/Size"]) == ("/application/toml", 17)
    assert b"/application#2Ftoml" in pdf_with([RECIPE])  # a bare slash would end the name


def test_a_file_saved_again_by_another_program_still_has_them() -> None:
    out = BytesIO()
    pypdf.PdfWriter(clone_from=BytesIO(pdf_with([RECIPE]))).write(out)
    assert attached(out.getvalue()) == (RECIPE,)


def test_a_file_without_kind_or_description_is_still_a_file() -> None:
    writer = pypdf.PdfWriter()
    writer.add_blank_page(100, 100)
    writer.add_attachment("plain.txt", b"text")
    out = BytesIO()
    writer.write(out)
    plain = AttachedFile("plain.txt", "application/octet-stream", b"text")
    assert attached(out.getvalue()) == (plain,)


@pytest.mark.parametrize(
    "data", [b"", b"no PDF at all", b"%PDF-1.7\n", pdf_with([RECIPE])[:400], b"\x00" * 5000]
)
def test_what_is_no_whole_pdf_is_refused(data: bytes) -> None:
    with pytest.raises(Unreadable, match=r"^it is damaged or cut off"):
        attached(data)


def test_the_library_below_says_nothing_about_damage(tmp_path: Path) -> None:
    # Cut after the last object: it can be mended, and the library would remark on it.
    whole = pdf_with([RECIPE])
    (tmp_path / "cut.pdf").write_bytes(whole[: whole.index(b"startxref")] + b"startxref\n9\n%%EOF")
    script = (
        "import sys; from pathlib import Path; from tagend.layouts.pdf.attached import attached\n"
        "print(len(attached(Path(sys.argv[1]).read_bytes())))"
    )
    command = [sys.executable, "-c", script, str(tmp_path / "cut.pdf")]
    done = subprocess.run(command, capture_output=True, text=True)
    assert (done.stdout, done.stderr) == ("1\n", "")


@settings(max_examples=8, deadline=None)  # a process each
@given(st.data())
def test_damage_is_refused_or_overcome_but_never_a_crash(data: st.DataObject) -> None:
    whole = bytearray(pdf_with([RECIPE]))
    for _ in range(data.draw(st.integers(1, 20))):
        whole[data.draw(st.integers(0, len(whole) - 1))] = data.draw(st.integers(0, 255))
    try:
        files = attached(bytes(whole))
    except Unreadable:
        return
    assert len(files) <= 1


def test_a_locked_pdf_is_refused() -> None:
    writer = pypdf.PdfWriter(clone_from=BytesIO(pdf_with([RECIPE])))
    writer.encrypt("secret", algorithm="RC4-128")
    out = BytesIO()
    writer.write(out)
    with pytest.raises(Unreadable, match=r"^this PDF is locked; save a copy"):
        attached(out.getvalue())


def test_as_many_files_as_allowed_are_read_and_not_one_more() -> None:
    assert MOST_FILES >= 1000  # as labels of so many recipes have
    files = [AttachedFile(f"{k:05}.txt", "text/plain", b"") for k in range(MOST_FILES + 1)]
    assert attached(pdf_with(files[:-1])) == tuple(files[:-1])
    with pytest.raises(Unreadable, match=f"more than {MOST_FILES} files"):
        attached(pdf_with(files))


def test_a_file_as_large_as_allowed_is_read_and_not_one_byte_more() -> None:
    large = AttachedFile("zeros.bin", "application/octet-stream", bytes(LARGEST_FILE))
    assert attached(pdf_with([large])) == (large,)
    larger = AttachedFile("zeros.bin", "application/octet-stream", bytes(LARGEST_FILE + 1))
    with pytest.raises(Unreadable, match=r"'zeros\.bin' in the PDF is larger than 1,000,000 bytes"):
        attached(pdf_with([larger]))


def test_files_that_are_too_much_together_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tagend.layouts.pdf.attached.LARGEST_ALL", 2 * len(RECIPE.data))
    files = [replace(RECIPE, name=f"{k}.toml") for k in range(3)]
    assert len(attached_files(pdf_with(files[:2]))) == 2
    with pytest.raises(Unreadable, match="together"):
        attached_files(pdf_with(files))


def test_a_list_of_files_that_holds_itself_is_refused() -> None:
    writer = pypdf.PdfWriter(clone_from=BytesIO(pdf_with([RECIPE])))
    names = writer.root_object["/Names"]
    tree = DictionaryObject()
    reference = writer._add_object(tree)
    tree[NameObject("/Kids")] = ArrayObject([reference])
    names[NameObject("/EmbeddedFiles")] = reference  # type: ignore[index]
    out = BytesIO()
    writer.write(out)
    with pytest.raises(Unreadable, match="list of files has no end"):
        attached(out.getvalue())


def test_a_list_of_files_that_is_no_list_is_refused() -> None:
    with pytest.raises(Unreadable, match="list of files is damaged"):
        attached(edited(Names=TextStringObject("nothing")))
    with pytest.raises(Unreadable, match="list of files is damaged"):
        attached(edited(Names=ArrayObject([TextStringObject("a"), TextStringObject("b")])))
