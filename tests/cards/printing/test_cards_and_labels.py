"""Cards and labels as they come out of a printer: rendered, read and decoded by other libraries."""

import os
import re
import subprocess
import sys
from collections.abc import Iterator, Sequence
from contextlib import suppress
from functools import cache
from io import BytesIO
from itertools import islice

import pypdf
import pytest
import zxingcpp
from msgspec.structs import replace
from PIL import Image

from tagend.cards.base.shown_lengths import length_number
from tagend.cards.code.notation import read_notation
from tagend.cards.leader.leader import check_tieable, work_out
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.printing.card_sheets import SheetWishes
from tagend.cards.printing.cards import CardWishes, cards_pdf
from tagend.cards.printing.codes import code_text
from tagend.cards.printing.job import recipe_files
from tagend.cards.printing.labels import LabelNote, LabelWishes, labels_pdf
from tagend.cards.printing.recover import recipes_in
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.language import ENGLISH
from tagend.cards.words.leader_words import Told
from tagend.layouts.base import cores
from tagend.layouts.base.faults import Refused
from tagend.layouts.paper.typeset import prepare
from tests.layouts.drawn import page_image, text
from tests.plausible import plausible_recipes
from tests.told import JOB
from tests.tree import ROOT, SAMPLES
from tests.written import PRACTICE, recipe, section

RECIPES = sorted(
    file.name
    for file in sorted(SAMPLES.iterdir())
    if file.name.endswith(".toml") and b"[[section]]" in file.read_bytes()
)
CARDS = (
    CardWishes(),
    CardWishes(size="index-3x5", paper="A4"),
    CardWishes(sheets=SheetWishes(backs="long-edge")),
    CardWishes(size="A6", taught=False),
)
LABELS = ("letter-3x10-66.7x25.4", "a4-3x7-63.5x38.1", "62x40mm")
DPI = 300


@cache
def sample(name: str) -> Worksheet:
    return worksheet(read_recipe((SAMPLES / name).read_bytes(), PRACTICE), PRACTICE)


@cache
def cards(name: str, wishes: CardWishes = CARDS[0]) -> bytes:
    return cards_pdf(JOB, [sample(name)], wishes)


@cache
def labels(name: str, stock: str = LABELS[0]) -> bytes:
    return labels_pdf(JOB, [sample(name)], LabelWishes(stock, ((LabelNote(),) * 2,)))


def pages(pdf: bytes) -> int:
    return len(pypdf.PdfReader(BytesIO(pdf)).pages)


def codes(pdf: bytes) -> list[str]:
    """Return the text of every code that a reader finds in the pixels of the pages."""
    images = [page_image(pdf, DPI, page) for page in range(pages(pdf))]
    return [found.text for image in images for found in _codes(image)]


def _codes(image: Image.Image) -> Sequence[zxingcpp.Barcode]:
    found: Sequence[zxingcpp.Barcode] = zxingcpp.read_barcodes(image)
    return found


def notation(of: Recipe) -> str:
    return code_text(work_out(of, PRACTICE), PRACTICE)


def extracted(pdf: bytes) -> str:
    """Return the text of all pages without what spaces and line ends a reader puts in."""
    return re.sub(r"\s+", "", "".join(text(pdf, page) for page in range(pages(pdf))))


def typeset(words: str) -> str:
    return re.sub(r"\s+", "", prepare(words))


# ---- what a camera sees ------------------------------------------------------------------------


@pytest.mark.parametrize("name", RECIPES)
@pytest.mark.parametrize("wishes", CARDS, ids=["usual", "index-3x5 on A4", "long-edge", "A6"])
def test_the_code_of_every_card_holds_its_recipe(name: str, wishes: CardWishes) -> None:
    of = sample(name).leader.recipe
    (found,) = codes(cards(name, wishes))
    assert found == notation(of)
    assert read_notation(found, PRACTICE.knots, PRACTICE.materials) == replace(of, variants=())


@pytest.mark.parametrize("name", RECIPES)
@pytest.mark.parametrize("stock", LABELS)
def test_the_code_of_every_label_holds_its_recipe(name: str, stock: str) -> None:
    of = sample(name).leader.recipe
    first, second = codes(labels(name, stock))
    assert first == second == notation(of)
    assert read_notation(first, PRACTICE.knots, PRACTICE.materials) == replace(of, variants=())


def test_a_whole_sheet_of_labels_is_read() -> None:
    worksheets = [sample(name) for name in RECIPES]
    of_each = (LabelNote(),) * (30 // len(worksheets))
    pdf = labels_pdf(JOB, worksheets, LabelWishes(notes=(of_each,) * len(worksheets)))
    assert sorted(set(codes(pdf))) == sorted(notation(sheet.leader.recipe) for sheet in worksheets)
    assert len(codes(pdf)) == len(worksheets) * (30 // len(worksheets))


# ---- what an eye sees --------------------------------------------------------------------------


@pytest.mark.parametrize("name", RECIPES)
def test_a_card_holds_name_cuts_laps_and_knots(name: str) -> None:
    leader = sample(name).leader
    shown = extracted(cards(name))
    told = [leader.recipe.name]
    told += [Told(leader, ENGLISH).end_name(end) for end in (leader.butt, leader.fly)]
    told += [joint.knot.name for joint in leader.joints]
    told += Told(leader, ENGLISH).lap_numbers()
    for piece in leader.pieces:
        cut = length_number(piece.cut_mm, leader.unit)
        told += [piece.section.length.plain, "BUY"] if piece.bought else [cut]
    told += [piece.section.material for piece in leader.pieces]
    for words in told:
        assert typeset(words) in shown


@pytest.mark.parametrize("name", RECIPES)
def test_a_label_holds_name_and_tippet(name: str) -> None:
    leader = sample(name).leader
    shown = extracted(labels(name))
    for words in (leader.recipe.name, "tippet", leader.tippet.section.diameter.plain, "tied"):
        assert typeset(words) in shown


def test_a_cut_with_a_fraction_is_set_in_figures_of_one_size() -> None:
    of = worksheet(recipe(section("46 1/2 in", "0.013 in"), section("20 in", "4X")), PRACTICE)
    shown = extracted(cards_pdf(JOB, [of], CardWishes()))
    assert "461/2" in shown


def both(of: Recipe) -> tuple[bytes, bytes]:
    """Return the card and the label of a recipe."""
    sheets = [worksheet(of, PRACTICE)]
    return (
        cards_pdf(JOB, sheets, CardWishes()),
        labels_pdf(JOB, sheets, LabelWishes()),
    )


PLAIN = recipe(section("9 ft", "0.013 in"), section("20 in", "4X"))


def test_cyrillic_is_set_in_the_second_font() -> None:
    for pdf in both(replace(PLAIN, name="Жук и муха")):
        assert "Жукимуха" in extracted(pdf)
        assert b"FiraSansCondensed" in pdf
        assert codes(pdf) == [notation(replace(PLAIN, name="Жук и муха"))]


def test_an_emoji_is_refused_by_its_name() -> None:
    with pytest.raises(Refused) as caught:
        both(replace(PLAIN, name="Fish 🐟"))
    assert str(caught.value) == (
        "Fish 🐟: no font has the character 🐟 (U+1F41F, FISH); "
        "write it with letters and common signs"
    )


# ---- the file ----------------------------------------------------------------------------------


def made(kind: str) -> bytes:
    """Return a document with all samples."""
    worksheets = [sample(name) for name in RECIPES]
    if kind == "cards":
        return cards_pdf(JOB, worksheets, CardWishes())
    return labels_pdf(JOB, worksheets, LabelWishes(notes=((LabelNote(),) * 3,) * len(worksheets)))


@pytest.mark.parametrize("kind", ["cards", "labels"])
def test_the_same_recipes_give_the_same_bytes(kind: str) -> None:
    assert made(kind) == made(kind)


@pytest.mark.parametrize("kind", ["cards", "labels"])
def test_two_processes_give_the_same_bytes(kind: str) -> None:
    script = (
        "import sys; from tests.cards.printing.test_cards_and_labels import made; "
        f"sys.stdout.buffer.write(made({kind!r}))"
    )

    def run(seed: str) -> bytes:
        return subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            check=True,
            cwd=ROOT,
            env=os.environ | {"PYTHONHASHSEED": seed},
        ).stdout

    assert run("1") == run("4711") == made(kind)


@pytest.mark.parametrize("kind", ["cards", "labels"])
def test_every_font_is_embedded(kind: str) -> None:
    reader = pypdf.PdfReader(BytesIO(made(kind)))
    names = set()
    for page in reader.pages:
        for reference in page["/Resources"]["/Font"].values():  # type: ignore[index]
            font = reference.get_object()
            assert font["/FontDescriptor"]["/FontFile2"].get_data()
            names.add(font["/BaseFont"].split("+")[1])
    assert {"IBMPlexSansCond-Medium", "IBMPlexSansCond-Bold"} <= names


@pytest.mark.parametrize("kind", ["cards", "labels"])
def test_the_viewer_is_asked_not_to_scale(kind: str) -> None:
    preferences = pypdf.PdfReader(BytesIO(made(kind))).root_object["/ViewerPreferences"]
    assert preferences["/PrintScaling"] == "/None"  # type: ignore[index]


def test_a_printer_that_turns_the_paper_is_told_how() -> None:
    reader = pypdf.PdfReader(BytesIO(cards(RECIPES[0], CARDS[2])))
    preferences = reader.root_object["/ViewerPreferences"]
    assert preferences["/Duplex"] == "/DuplexFlipLongEdge"  # type: ignore[index]


def inside(pdf: bytes) -> tuple[Recipe, ...]:
    """Return the recipes that a document carries as files."""
    return recipes_in(pdf, PRACTICE).recipes


def name_of(of: Recipe) -> str:
    return of.name


@pytest.mark.parametrize("kind", ["cards", "labels"])
def test_the_recipes_travel_inside(kind: str) -> None:
    written = [sample(name).leader.recipe for name in RECIPES]
    assert sorted(inside(made(kind)), key=name_of) == sorted(written, key=name_of)


def test_recipes_of_one_name_are_told_apart() -> None:
    first = PLAIN
    second = replace(PLAIN, lengths="cut")
    third = replace(second, note="The third.")
    worksheets = [worksheet(one, PRACTICE) for one in (first, second, third)]
    pdf = cards_pdf(JOB, worksheets, CardWishes())
    assert len(inside(pdf)) == 3
    assert set(inside(pdf)) == {first, second, third}
    names = [file.name for file in recipe_files([first, second, third])]
    assert len(set(names)) == 3


def test_copies_of_a_card_need_no_more_recipes() -> None:
    pdf = cards_pdf(JOB, [sample(RECIPES[0])], CardWishes(copies=4))
    assert len(inside(pdf)) == 1
    assert len(codes(pdf)) == 4


def test_a_document_says_what_it_is() -> None:
    one, many = (
        pypdf.PdfReader(BytesIO(cards(RECIPES[0]))),
        pypdf.PdfReader(BytesIO(made("labels"))),
    )
    assert one.metadata is not None
    assert many.metadata is not None
    assert one.metadata.title == f"{sample(RECIPES[0]).leader.recipe.name}: tying cards"
    assert many.metadata.title == f"{len(RECIPES)} leaders: wallet labels"
    assert one.metadata.creator == "tagend"


# ---- refusals ----------------------------------------------------------------------------------


def test_knots_that_take_up_a_piece_leave_nothing_to_print() -> None:
    parts = section("20 in", "0.013 in"), section("3 in", "0.011 in"), section("20 in", "4X")
    of = worksheet(recipe(*parts, lengths="cut"), PRACTICE)
    with pytest.raises(Refused) as caught:
        cards_pdf(JOB, [of], CardWishes())
    assert str(caught.value).startswith("Under test, section 2: its knots take ")
    assert str(caught.value).endswith(
        'all of the 3 in that it is cut; cut it longer, or write lengths = "finished"'
    )
    with pytest.raises(Refused, match="all of the 3 in that it is cut"):
        labels_pdf(JOB, [of], LabelWishes())


def test_many_are_made_by_all_cores_in_the_same_bytes(monkeypatch: pytest.MonkeyPatch) -> None:
    sheets = [worksheet(recipe, PRACTICE) for recipe in islice(tieable(), 50)]
    pages = {}
    for number in (1, 2, 5):
        monkeypatch.setattr(cores, "_cores", lambda number=number: number)
        made = cards_pdf(JOB, sheets, CardWishes()), labels_pdf(JOB, sheets, LabelWishes())
        pages[number] = [(bytes(pdf), pdf.left_out) for pdf in made]
    assert pages[1] == pages[2] == pages[5]


def tieable() -> Iterator[Recipe]:
    for each in plausible_recipes(200):
        with suppress(Refused):
            check_tieable(work_out(each, PRACTICE))
            yield each
