import os
import re
from io import BytesIO
from pathlib import Path
from xml.etree import ElementTree

import pypdf
import pytest

from tagend.cards.disk.seal import origin, sealed
from tagend.layouts.paper.face import MM
from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import boxes, text

SVG = "{http://www.w3.org/2000/svg}"
KEPT = sealed(b"# kept as it was\n")


@pytest.fixture
def output(demo: Path) -> Path:
    """Return where to write; a file of ours is there already."""
    path = demo / "out.pdf"
    path.write_bytes(KEPT)
    return path


def named(demo: Path, name: str) -> Path:
    path = demo / "named.toml"
    sample = (demo / "sandbar-eight.toml").read_text(encoding="utf-8")
    path.write_text(sample.replace("Sandbar eight", name, 1), encoding="utf-8")
    return path


def pages(pdf: Path) -> int:
    return len(pypdf.PdfReader(BytesIO(pdf.read_bytes())).pages)


def test_a_card_is_written_and_how_to_print_it_is_told(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "-o", output)
    assert (run.status, run.out) == (0, "")
    assert re.fullmatch(
        rf"wrote {re.escape(str(output))}: 1 page, \d cards? on \d sides; "
        r"print it at 100 %, not fitted to the page",
        run.err.splitlines()[0],
    )
    assert "Sandbar eight" in text(output.read_bytes())


def test_a_hand_out_is_planned_and_nothing_written(tagend: Tagend, demo: Path) -> None:
    recipe, out = demo / "sandbar-eight.toml", demo / "none.pdf"
    options = ["--brief", "--copies", "24", "--plan"]
    run = tagend("cards", recipe, *options, "-o", out)
    # Within 5 mm, a letter page has 269.4 mm of height for folded cards of 53.98 mm: four.
    assert (run.status, run.out) == (0, "6 pages, 24 cards on 48 sides\n")
    assert not out.exists()
    assert tagend("cards", recipe, *options).out == run.out


def test_pages_printed_on_both_sides_are_told_with_their_sheets(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    options = ["--brief", "--copies", "24", "--backs", "long-edge", "--plan"]
    run = tagend("cards", demo / "sandbar-eight.toml", *options)
    # Two times four cards are a sheet.
    assert run.out == "6 pages on 3 sheets, 24 cards on 48 sides\n"


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--press"], "4 pages, 2 cards on 4 sides"),
        (["--backs", "separate"], "1 page, 4 cards"),
        (["--wet"], "2 pages, 2 cards on 4 sides"),
    ],
)
def test_what_is_cut_from_the_pages_is_told(
    tagend: Tagend, demo: Path, options: list[str], told: str
) -> None:
    card = ("--brief", "--copies", "2", "--plan")
    run = tagend("cards", demo / "sandbar-eight.toml", *card, *options)
    assert run.out == f"{told}\n"


def test_a_plan_of_nothing_that_fits_is_refused(tagend: Tagend, demo: Path) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "--size", "20x20mm", "--plan")
    assert run.status == 2
    assert "--size" in run.faults[-1]


def test_standard_input_is_read(tagend: Tagend, demo: Path, output: Path) -> None:
    recipe = (demo / "reedbed-six.toml").read_bytes()
    assert tagend("cards", "-", "-o", output, stdin=recipe).status == 0
    assert "Reedbed six" in text(output.read_bytes())


def test_copies_share_sheets(tagend: Tagend, demo: Path, output: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    assert tagend("cards", recipe, "--copies", "20", "-o", output).status == 0
    many = pages(output)
    assert tagend("cards", recipe, "-o", output).status == 0
    assert pages(output) < many < 20


def test_backs_may_be_printed_behind_their_fronts(tagend: Tagend, demo: Path, output: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    assert tagend("cards", recipe, "--backs", "long-edge", "-o", output).status == 0
    assert pages(output) % 2 == 0


@pytest.mark.parametrize(
    ("options", "fault"),
    [
        (["--size", "ID1x"], "no card size is called 'ID1x'; did you mean ID-1"),
        (["--size", "indx-3x5"], "no card size is called 'indx-3x5'; did you mean index-3x5"),
        (["--paper", "Leter"], "no paper is called 'Leter'; did you mean Letter"),
        (["--paper", "A44"], "no paper is called 'A44'; did you mean A4"),
    ],
)
def test_an_unknown_name_is_met_with_the_near_ones(
    tagend: Tagend, demo: Path, output: Path, options: list[str], fault: str
) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "-o", output, *options)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(fault)
    assert line.endswith(" or a size with its unit, such as 85x54mm?")
    assert output.read_bytes() == KEPT


def test_a_size_may_be_given_in_figures_and_a_name_in_any_spelling(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    for size in ("85x54mm", "5 x 3 in", "INDEX 3X5", "a7"):
        run = tagend("cards", demo / "sandbar-eight.toml", "--size", size, "-o", output)
        assert run.status == 0, run.err


def test_a_card_too_small_is_refused_with_sizes_that_do(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipe = demo / "reedbed-six.toml"
    run = tagend("cards", recipe, "--size", "40x30mm", "-o", output)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith("Reedbed six: this leader needs more room than 40 × 30 mm")
    assert output.read_bytes() == KEPT
    _, _, names = line.partition("use --size ")
    for name in names.split(" or "):
        assert tagend("cards", recipe, "--size", name, "-o", output).status == 0


def test_a_card_larger_than_the_paper_is_refused(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend(
        "cards", demo / "sandbar-eight.toml", "--size", "A6", "--paper", "A6", "-o", output
    )
    assert run.status == 2
    assert len(run.faults) == 1
    assert "does not fit A6" in run.err
    assert output.read_bytes() == KEPT


def test_a_cyrillic_name_is_printed(tagend: Tagend, demo: Path, output: Path) -> None:
    assert tagend("cards", named(demo, "Жук восемь"), "-o", output).status == 0
    assert "Жук восемь" in text(output.read_bytes())


def test_an_emoji_is_refused_and_nothing_written(tagend: Tagend, demo: Path, output: Path) -> None:
    recipe = named(demo, "Fish 🐟")
    run = tagend("cards", recipe, "-o", output)
    assert run.status == 2
    assert run.faults == [f"{recipe}: name: U+1F41F (fish) cannot be printed; leave it out"]
    assert output.read_bytes() == KEPT
    assert not [name for name in os.listdir(demo) if name.endswith(".part")]


@pytest.mark.parametrize("copies", ["0", "-1", "1000000000", "many"])
def test_copies_are_a_likely_number(tagend: Tagend, demo: Path, output: Path, copies: str) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "--copies", copies, "-o", output)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith("tagend cards: Invalid value for '--copies': ")
    assert output.read_bytes() == KEPT


def test_a_piece_that_its_knots_take_up_is_refused(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipe = demo / "breakwater-ten.toml"
    recipe.write_text(recipe.read_text().replace('length = "26 in"', 'length = "4 in"'))
    run = tagend("cards", recipe, "--anyway", "-o", output)
    assert run.status == 2
    assert run.faults[-1].startswith("Breakwater ten, section 2: its knots take ")
    assert output.read_bytes() == KEPT


def test_own_spools_are_named_from_the_rack(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend("cards", demo / "sandbar-eight.toml", "--rack", demo / "rack.toml", "-o", output)
    assert run.status == 0
    assert "Stiff 25" in text(output.read_bytes())


def test_a_hole_stands_in_the_paper_or_in_the_film_and_never_in_both(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    def holes(*options: str) -> list[int]:
        run = tagend("cards", demo / "sandbar-eight.toml", "--hole", *options, "-o", output)
        assert run.status == 0
        found = (boxes(output.read_bytes(), page) for page in range(pages(output)))
        across = pytest.approx((5 * MM, 5 * MM), abs=0.02)
        return [sum((b[2] - b[0], b[3] - b[1]) == across for b in page) for page in found]

    assert holes() == [2]  # on the front and on the back
    assert holes("--wet") == holes("--dry") == [0, 1]
    assert "through film alone" in " ".join(text(output.read_bytes(), 1).split())


def left_out(err: str) -> dict[str, str]:
    """Return what each card has no room for, by the leader's name."""
    lines = (line.partition(": no room for ") for line in err.splitlines())
    return {name: what for name, found, what in lines if found}


def test_what_a_card_has_no_room_for_is_told_with_a_size_that_has(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipes = [demo / "sandbar-eight.toml", demo / "gravel-five.toml"]
    run = tagend("cards", *recipes, "-o", output)
    told = left_out(run.err)
    assert list(told) == ["Sandbar eight", "Gravel five"]
    assert "In hard wind" not in text(output.read_bytes())
    assert "the variants" in told["Sandbar eight"]
    for recipe, what in zip(recipes, told.values(), strict=True):
        (size,) = re.findall(r"--size (\S+)", what)
        assert left_out(tagend("cards", recipe, "--size", size, "-o", output).err) == {}
        words = text(output.read_bytes())
        assert "Each new section" in words
        assert words.count("Wet; ") >= 4  # how each knot is seated
    # So large a card has all of it, of two leaders on one page.
    assert tagend("cards", *recipes, "--size", "index-5x8", "-o", output).err.count("\n") == 1


@pytest.mark.parametrize("size", ["ID-1", "78x46mm"])
def test_a_plan_tells_the_knots_apart_just_where_that_saves_pages(
    tagend: Tagend, demo: Path, size: str
) -> None:
    recipes = [demo / "sandbar-eight.toml", demo / "gravel-five.toml"]

    def planned(*options: str) -> str:
        return tagend("cards", *recipes, "--size", size, "--copies", "8", "--plan", *options).out

    said, ways = planned(), [planned("--brief"), planned("--knots")]
    apart = sum(int(way.split()[0]) for way in ways) if all(ways) else None
    saves = apart is not None and apart < int(said.split()[0])
    assert (f"; {apart} pages as --brief and --knots cards" in said) == saves


def test_one_leaders_card_is_an_svg_with_all_sides_true_to_size(tagend: Tagend, demo: Path) -> None:
    recipe, out = demo / "sandbar-eight.toml", demo / "card.SVG"
    run = tagend("cards", recipe, "--size", "ID-1", "-o", out)
    assert (run.status, run.out) == (0, "")
    assert run.err.splitlines()[0] == f"wrote {out}: 1 page, 1 card on 2 sides"
    data = out.read_bytes()
    assert origin(data) == "ours"
    root = ElementTree.fromstring(data)
    assert "Sandbar eight" in (root.findtext(f"{SVG}title") or "")
    # ISO/IEC 7810: 85.6 mm by 53.98 mm, of which two and what is between them.
    assert float(root.attrib["width"].removesuffix("mm")) == pytest.approx(85.6, abs=0.01)
    assert float(root.attrib["height"].removesuffix("mm")) > 2 * 53.98
    tagend("cards", recipe, "--size", "ID-1", "-o", demo / "again.svg")
    assert (demo / "again.svg").read_bytes() == data


def test_an_svg_says_all_that_the_pdf_does_cautions_too(tagend: Tagend, demo: Path) -> None:
    told: dict[str, list[str]] = {}
    for name in ("card.svg", "card.pdf"):
        run = tagend("cards", demo / "sandbar-eight.toml", "-o", demo / name)
        told[name] = run.err.splitlines()[1:]
    assert told["card.svg"] == told["card.pdf"] != []
    said = ElementTree.fromstring((demo / "card.svg").read_bytes()).findtext(f"{SVG}desc") or ""
    printed = text((demo / "card.pdf").read_bytes())
    assert "Hook in or near an eye" in said
    assert {word for word in said.split() if word.isalpha()} <= set(printed.split())


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["gravel-five.toml"], "name one recipe, or a PDF"),
        (["--variants"], "name one recipe, or a PDF"),
        (["--paper", "A4"], "leave out --paper"),
        (["--backs", "long-edge"], "leave out --backs"),
        (["--wet"], "leave out --wet and --dry"),
        (["--press"], "leave out --press"),
        (["--copies", "2"], "leave out --copies"),
    ],
)
def test_an_svg_has_no_paper_and_one_leader(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], says: str
) -> None:
    monkeypatch.chdir(demo)
    run = tagend("cards", "sandbar-eight.toml", *words, "-o", "card.svg")
    assert run.status == 2
    (line,) = run.faults
    assert says in line
    assert not (demo / "card.svg").exists()


def test_what_is_printed_as_a_pdf_alone_takes_no_name_of_an_svg(tagend: Tagend, demo: Path) -> None:
    for command in ("labels", "bench", "counter"):
        run = tagend(command, demo / "sandbar-eight.toml", "-o", demo / "out.svg")
        assert run.status == 2
        assert ".pdf" in run.faults[0]
    assert not (demo / "out.svg").exists()
