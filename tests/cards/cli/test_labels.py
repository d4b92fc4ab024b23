import re
from io import BytesIO
from pathlib import Path

import pypdf
import pytest
import zxingcpp

from tagend.cards.disk.seal import sealed
from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import page_image, text

KEPT = sealed(b"# kept as it was\n")
CODES = re.compile("TAG3:")


@pytest.fixture
def output(demo: Path) -> Path:
    """Return where to write; a file of ours is there already."""
    path = demo / "out.pdf"
    path.write_bytes(KEPT)
    return path


def places(pdf: Path, page: int = 0) -> list[tuple[int, int]]:
    """Return the row and column of each code on a Letter sheet of 3 × 10 labels, from 0."""
    dots = 200
    found = zxingcpp.read_barcodes(page_image(pdf.read_bytes(), dots, page))
    # Labels are 2 3/4 in from left to left and 1 in from top to top, after 1/2 in of margin.
    return sorted(
        (
            int((code.position.top_left.y / dots - 0.5) // 1),
            int((code.position.top_left.x / dots - 3 / 16) // 2.75),
        )
        for code in found
    )


def pages(pdf: Path) -> int:
    return len(pypdf.PdfReader(BytesIO(pdf.read_bytes())).pages)


def test_labels_fill_a_sheet_row_by_row(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "--count", "4", "-o", output)
    assert (run.status, run.out) == (0, "")
    assert (
        run.err == f"wrote {output}: 1 page, 4 labels; print it at 100 %, not fitted to the page\n"
    )
    assert places(output) == [(0, 0), (0, 1), (0, 2), (1, 0)]


def test_a_used_sheet_is_begun_further_on_and_spoiled_labels_skipped(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    options = ["--count", "4", "--start", "7", "--skip", "8", "--skip", "10"]
    assert tagend("labels", demo / "sandbar-eight.toml", *options, "-o", output).status == 0
    # 7 and 9 on the third row, 11 and 12 on the fourth
    assert places(output) == [(2, 0), (2, 2), (3, 1), (3, 2)]


def test_what_a_sheet_does_not_hold_goes_on_the_next(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    options = ["--count", "31", "--start", "30"]
    assert tagend("labels", demo / "sandbar-eight.toml", *options, "-o", output).status == 0
    assert pages(output) == 2
    assert places(output) == [(9, 2)]
    assert len(places(output, 1)) == 30


@pytest.mark.parametrize(
    "options", [["--start", "31"], ["--skip", "31"], ["--skip", "1", "--skip", "99"]]
)
def test_a_label_that_the_sheet_does_not_have_is_refused(
    tagend: Tagend, demo: Path, output: Path, options: list[str]
) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "-o", output, *options)
    assert run.status == 2
    assert run.faults == [
        f"{options[0][2:]}: letter-3x10-66.7x25.4 has no label {options[-1]}; write 1 to 30"
    ]
    assert output.read_bytes() == KEPT


@pytest.mark.parametrize("option", ["--count", "--start", "--skip"])
@pytest.mark.parametrize("value", ["0", "-3", "few"])
def test_labels_are_counted_from_one(
    tagend: Tagend, demo: Path, output: Path, option: str, value: str
) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", option, value, "-o", output)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(f"tagend labels: Invalid value for '{option}': ")
    assert output.read_bytes() == KEPT


def test_a_batch_of_a_billion_is_refused(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "--count", "1000000000", "-o", output)
    assert run.status == 2
    assert "1000000000 is not in the range 1<=x<=10000." in run.faults[0]
    assert output.read_bytes() == KEPT


def test_the_day_is_printed_and_kept_in_the_code(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "--tied", "2026-05-31", "-o", output)
    assert run.status == 0
    assert "tied 2026-05-31" in text(output.read_bytes())
    back = tagend("read", output, "--keep-tied")
    assert 'tied = "2026-05-31"' in back.out or "tied = 2026-05-31" in back.out


@pytest.mark.parametrize(
    ("day", "told"),
    [("3/4/2026", "2026-03-04"), ("2026-13-01", "2026-05-31"), ("yesterday", "2026-05-31")],
)
def test_a_wrong_day_is_told_how_to_be_written(
    tagend: Tagend, demo: Path, output: Path, day: str, told: str
) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "--tied", day, "-o", output)
    assert run.status == 2
    assert len(run.faults) == 1
    assert run.err.startswith("tied: ")
    assert told in run.err
    assert output.read_bytes() == KEPT


def test_a_day_is_read_as_the_shops_language_writes_it(
    tagend: Tagend, demo: Path, tmp_path: Path
) -> None:
    output, options = tmp_path / "labels.pdf", ("--shop", demo / "taller.toml")
    for day in ("3/4/2026", "3 de abril de 2026"):
        run = tagend("labels", demo / "sandbar-eight.toml", "--tied", day, "-o", output, *options)
        assert run.status == 0, run.err
        assert "2026-04-03" in text(output.read_bytes())


def test_labels_may_be_numbered(tagend: Tagend, demo: Path, output: Path) -> None:
    options = ["--count", "3", "--numbered", "--stock", "letter-2x5-101.6x50.8"]
    assert tagend("labels", demo / "sandbar-eight.toml", *options, "-o", output).status == 0
    shown = text(output.read_bytes())
    assert [f"{k} of 3" in shown for k in (1, 2, 3, 4)] == [True, True, True, False]


@pytest.mark.parametrize(
    ("stock", "near"),
    [("letter-3x10", "letter-3x10-66.7x25.4"), ("a4-3x7-63.5x38", "a4-3x7-63.5x38.1")],
)
def test_an_unknown_sheet_is_met_with_the_near_ones(
    tagend: Tagend, demo: Path, output: Path, stock: str, near: str
) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "--stock", stock, "-o", output)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(f"no label sheet is called '{stock}'; did you mean ")
    assert near in line
    assert output.read_bytes() == KEPT


def test_a_label_too_small_is_refused_with_sheets_that_do(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    recipe = demo / "reedbed-six.toml"
    run = tagend("labels", recipe, "--stock", "a4-7x27-25.4x10", "-o", output)
    assert run.status == 2
    (line,) = run.faults
    assert output.read_bytes() == KEPT
    names = line.partition("use --stock ")[2].partition(",")[0]
    for name in names.split(" or "):
        assert tagend("labels", recipe, "--stock", name, "-o", output).status == 0


def test_an_emoji_is_refused_and_cyrillic_printed(tagend: Tagend, demo: Path, output: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    sample = recipe.read_text(encoding="utf-8")
    recipe.write_text(sample.replace("Sandbar eight", "Fish 🐟"), encoding="utf-8")
    run = tagend("labels", recipe, "-o", output)
    assert run.status == 2
    assert len(run.faults) == 1
    assert "U+1F41F" in run.err
    assert output.read_bytes() == KEPT
    recipe.write_text(sample.replace("Sandbar eight", "Жук восемь"), encoding="utf-8")
    assert tagend("labels", recipe, "-o", output).status == 0
    assert "Жук восемь" in text(output.read_bytes())
