import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image

from tagend.cards.code.check_characters import check_characters
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.printing import recover
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.labels import LabelNote, LabelWishes, labels_pdf
from tagend.cards.printing.recover import Recovered, recipes_in
from tagend.cards.recipe.recipe import Recipe
from tagend.layouts.base.faults import Refused
from tagend.layouts.strangers.apart import SECONDS
from tests.leaders import PLAIN, SANDBAR, SANDBAR_TEXT, write
from tests.pictures import beside, code_picture, file_of, pages
from tests.told import JOB
from tests.written import PRACTICE

FOREIGN = "https://example.org/menu"


def found(data: bytes) -> Recovered:
    return recipes_in(data, PRACTICE)


def fault(data: bytes) -> str:
    with pytest.raises(Refused) as refusal:
        found(data)
    (only,) = refusal.value.faults
    return str(only)


def labels(*recipes: Recipe, count: int = 1) -> bytes:
    sheets = [worksheet(recipe, PRACTICE) for recipe in recipes]
    return labels_pdf(JOB, sheets, LabelWishes(notes=((LabelNote(),) * count,) * len(sheets)))


@pytest.mark.parametrize(
    "spelled", [SANDBAR_TEXT, SANDBAR_TEXT.lower(), f"\ufeff {SANDBAR_TEXT}\n"]
)
def test_a_codes_text_is_read(spelled: str) -> None:
    assert found(spelled.encode()) == Recovered("the text of a code", (SANDBAR,))


def test_a_pdf_of_ours_gives_the_files_it_carries() -> None:
    assert found(labels(SANDBAR, PLAIN)) == Recovered("a file in a PDF", (PLAIN, SANDBAR))


def test_a_printed_sheet_of_labels_is_read_from_its_picture() -> None:
    (sheet,) = pages(labels(SANDBAR, PLAIN, count=15))
    read = found(file_of(sheet, "JPEG"))
    assert read.what == "a code in a picture"
    assert sorted(read.recipes, key=lambda recipe: recipe.name) == [PLAIN, SANDBAR]


def test_a_printed_card_is_read_from_a_turned_photo() -> None:
    (sheet,) = pages(cards_pdf(JOB, [worksheet(SANDBAR, PRACTICE)], CardWishes()))
    photo = sheet.rotate(17, Image.Resampling.BICUBIC, expand=True, fillcolor=120)
    assert found(file_of(photo)) == Recovered("a code in a picture", (SANDBAR,))


def test_a_scanned_label_is_read_from_a_pdf_without_files() -> None:
    (sheet,) = pages(labels(SANDBAR))
    assert found(file_of(sheet, "PDF")) == Recovered("a code on a page", (SANDBAR,))


def test_codes_of_others_beside_ours_are_told() -> None:
    photo = beside(code_picture(FOREIGN), code_picture(SANDBAR_TEXT))
    assert found(file_of(photo)) == Recovered("a code in a picture", (SANDBAR,), (repr(FOREIGN),))


def test_a_code_of_others_is_no_recipe() -> None:
    assert fault(file_of(code_picture(FOREIGN))) == (
        "this code is not one of a label: 'https://example.org/menu'; "
        "give one whose text begins TAG3:"
    )


def test_a_strangers_text_is_cut_and_cannot_move_the_cursor() -> None:
    told = fault(file_of(code_picture("\x1b[2J\a" + "x" * 100)))
    assert told.isprintable()
    assert told.startswith("this code is not one of a label: '")
    assert "x' …; give one whose text begins TAG3:" in told
    assert len(told) < 160


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (SANDBAR_TEXT.replace("TAG3", "TAG4"), "this code is of version 4 of the notation"),
        (SANDBAR_TEXT[:-2] + "5G", "the text and the two check characters at its end"),
    ],
)
def test_a_code_of_ours_that_cannot_be_read_is_a_fault_of_the_picture(text: str, said: str) -> None:
    photo = beside(code_picture(SANDBAR_TEXT), code_picture(text))
    assert fault(file_of(photo)).startswith(f"code 'TAG{text[3]}:SANDBAR EIGHT:")
    assert said in fault(file_of(photo))


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "this holds no code's text; give the text of a label's code, which begins TAG3:"),
        (
            b"\xff\xfeT\x00A\x00G\x001\x00",
            "this is no text, picture or PDF; "
            "give a code's text, a PNG or JPEG of it, or a PDF that tagend made",
        ),
        (
            file_of(Image.new("L", (90, 90), 200)),
            "no code can be read in this picture; take it from nearer, flat and in even light",
        ),
        (
            file_of(code_picture(SANDBAR_TEXT))[:90],
            "this picture cannot be read: it is damaged or cut off; save it again",
        ),
        (
            file_of(Image.new("L", (300, 300), 255), "PDF"),
            "this PDF carries no recipe; give a PDF that tagend made",
        ),
        (
            b"%PDF-1.7\n",
            "it is damaged or cut off; save it again",
        ),
    ],
)
def test_what_holds_no_recipe_says_what_to_give(data: bytes, said: str) -> None:
    assert fault(data) == said


def read_or_refused(data: bytes) -> None:
    try:
        read = found(data)
    except Refused as refusal:
        for told in map(str, refusal.faults):
            assert told.isprintable()
            assert 10 < len(told) < 700
    else:
        assert read.recipes
        assert all(write(recipe) for recipe in read.recipes)


@settings(deadline=None)  # what begins as a picture does is read in a process
@given(st.binary(max_size=400))
@example(b"A" * 100_000)
@example(b" " * 100_000)
@example(b"tag" + b" " * 100_000)
@example(b"TAG3:" + b"9" * 100_000)
@example(b"\xf0\x9f\x8e\xa3" * 25_000)
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    read_or_refused(data)


# Where a kind of file begins, so that what comes behind is taken for it.
STARTS = [
    b"%PDF-1.7\n",
    b"\x89PNG\r\n\x1a\n",
    b"\xff\xd8\xff",
    b"RIFF\x99\x00\x00\x00WEBP",
    b"TAG3:",
]


@settings(max_examples=20, deadline=None)  # a process each
@given(st.sampled_from(STARTS), st.binary(max_size=200))
def test_any_bytes_behind_a_files_mark_are_read_or_refused(start: bytes, rest: bytes) -> None:
    read_or_refused(start + rest)


WHOLE = [
    labels(replace(PLAIN, note="Short.")),
    file_of(code_picture(SANDBAR_TEXT)),
    file_of(code_picture(SANDBAR_TEXT), "JPEG"),
]


@settings(max_examples=20, deadline=None)  # a process each
@given(st.sampled_from(WHOLE), st.data())
def test_files_with_a_few_bytes_changed_are_read_or_refused(
    whole: bytes, data: st.DataObject
) -> None:
    changed = bytearray(whole)
    for _ in range(data.draw(st.integers(1, 5))):
        changed[data.draw(st.integers(0, len(changed) - 1))] = data.draw(st.integers(0, 255))
    read_or_refused(bytes(changed[: data.draw(st.integers(10, len(changed)))]))


@given(st.text("0123456789*.:/+-BHNW ", max_size=60))
def test_a_code_with_a_right_check_is_read_or_refused(body: str) -> None:
    text = f"TAG3:{body}:"
    read_or_refused((text + check_characters(text)).encode())


def test_both_readings_of_a_pdf_share_one_deadline(monkeypatch: pytest.MonkeyPatch) -> None:
    clock = iter([100.0, 103.0])
    patience: list[float] = []
    monkeypatch.setattr(recover, "monotonic", lambda: next(clock))
    monkeypatch.setattr(recover, "attached", lambda _: ())
    monkeypatch.setattr(recover, "texts_in_pages", lambda _, left: patience.append(left))
    with pytest.raises(Refused):
        recover.recipes_in(b"%PDF", PRACTICE)
    assert patience == [SECONDS - 3]
