import csv
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pypdf
import pytest

from tagend.cards.cli.disk import write_whole
from tests.cards.cli.conftest import Tagend
from tests.cards.cli.test_commands import spawn


def rows(register: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(register.read_text("utf-8-sig").splitlines()))


def text_of(pdf: Path) -> str:
    return "\n".join(page.extract_text() for page in pypdf.PdfReader(pdf).pages)


def label(demo: Path, count: int = 3, out: str = "labels.pdf") -> tuple[str | Path, ...]:
    return (
        *("labels", demo / "sandbar-eight.toml", demo / "reedbed-six.toml"),
        *("--count", str(count), "--tied", "2026-05-31", "-o", demo / out),
        *("--register", demo / "tied.csv", "--rack", demo / "rack.toml"),
    )


def test_labels_are_numbered_on_from_the_register(tagend: Tagend, demo: Path) -> None:
    first, second = (tagend(*label(demo)) for _ in range(2))
    assert first.err.startswith(f"entered in {demo / 'tied.csv'}: no. 1 to no. 6\n")
    assert second.err.startswith(f"entered in {demo / 'tied.csv'}: no. 7 to no. 12\n")
    entered = rows(demo / "tied.csv")
    assert [row["number"] for row in entered] == [str(number) for number in range(1, 13)]
    assert [row["recipe"] for row in entered] == (["Sandbar eight"] * 3 + ["Reedbed six"] * 3) * 2
    assert entered[0]["lots"] == "Stiff 25: K 114; Clear 8: F 7"
    printed = text_of(demo / "labels.pdf")
    assert all(f"no. {number} · tied 2026-05-31" in printed for number in range(7, 13))
    assert "no. 6 " not in printed


def test_labels_that_cannot_be_written_enter_nothing(tagend: Tagend, demo: Path) -> None:
    tagend(*label(demo))
    before = (demo / "tied.csv").read_bytes()
    wrong = tagend(*label(demo, out="no folder/labels.pdf"))
    assert wrong.status == 2
    small = tagend(*label(demo), "--stock", "no such sheet")
    assert small.status == 2
    assert (demo / "tied.csv").read_bytes() == before


def test_a_register_that_cannot_be_written_leaves_the_labels_as_they_were(
    tagend: Tagend, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tagend(*label(demo))
    before = [(demo / name).read_bytes() for name in ("labels.pdf", "tied.csv")]

    def full_disk(name: str, data: bytes) -> None:
        if name.endswith(".csv"):
            raise OSError("no space left")
        write_whole(name, data)

    monkeypatch.setattr("tagend.cards.cli.disk.write_whole", full_disk)
    with pytest.raises(OSError, match="no space"):
        tagend(*label(demo))
    assert [(demo / name).read_bytes() for name in ("labels.pdf", "tied.csv")] == before
    (demo / "labels.pdf").unlink()
    with pytest.raises(OSError, match="no space"):
        tagend(*label(demo))
    assert not (demo / "labels.pdf").exists()


def test_a_damaged_register_is_named_and_left_alone(tagend: Tagend, demo: Path) -> None:
    (demo / "tied.csv").write_text("number,name\n1,x\n")
    run = tagend(*label(demo))
    assert run.status == 2
    assert run.faults[0].startswith(f"{demo / 'tied.csv'}: row 1: there is not one column called")
    assert (demo / "tied.csv").read_text() == "number,name\n1,x\n"
    assert not (demo / "labels.pdf").exists()


def test_a_leader_without_a_day_is_not_entered(tagend: Tagend, demo: Path) -> None:
    run = tagend(
        *("labels", demo / "sandbar-eight.toml", "-o", demo / "labels.pdf"),
        *("--register", demo / "tied.csv"),
    )
    assert run.status == 2
    assert run.faults == ["Sandbar eight: no day is given; say when it was tied, with --tied"]
    assert not (demo / "tied.csv").exists()


@pytest.mark.parametrize(
    ("options", "fault"),
    [
        (["--rack", "r.toml"], "--rack goes with --register, for the lots."),
        (["--numbered", "--register", "t.csv"], "Give --numbered or --register, not both."),
    ],
)
def test_options_that_do_not_go_together_are_told(
    tagend: Tagend, demo: Path, options: list[str], fault: str
) -> None:
    run = tagend("labels", demo / "sandbar-eight.toml", "-o", "x.pdf", *options)
    assert run.faults == [f"tagend labels: {fault} See 'tagend labels --help'."]


def test_runs_at_once_never_share_a_number_nor_lose_a_row(demo: Path) -> None:
    with ThreadPoolExecutor(5) as pool:
        runs = list(pool.map(lambda n: spawn(*label(demo, 4, f"{n}.pdf")), range(5)))
    assert [run.returncode for run in runs] == [0] * 5
    numbers = [int(row["number"]) for row in rows(demo / "tied.csv")]
    assert numbers == list(range(1, 41))
    for place in range(5):
        printed = text_of(demo / f"{place}.pdf")
        (span,) = (run.stderr for run in runs if f"{place}.pdf" in run.stderr)
        first = int(span.split("no. ")[1].split(" ")[0])
        assert all(f"no. {number} " in printed for number in range(first, first + 8))


def test_the_register_lists_the_oldest_first(tagend: Tagend, demo: Path) -> None:
    tagend(*label(demo, 1))
    tagend(*(word if word != "2026-05-31" else "2026-05-01" for word in label(demo, 1)))
    run = tagend("register", demo / "tied.csv", "--on", "2026-06-10")
    assert run.err == "4 of 4 leaders\n"
    assert [line.split("  ")[:3] for line in run.out.splitlines()] == [
        ["no. 3", "2026-05-01", "40 days"],
        ["no. 4", "2026-05-01", "40 days"],
        ["no. 1", "2026-05-31", "10 days"],
        ["no. 2", "2026-05-31", "10 days"],
    ]


def test_the_register_finds_by_lot_recipe_and_age(tagend: Tagend, demo: Path) -> None:
    tagend(*label(demo, 1))
    register = ("register", demo / "tied.csv", "--on", "2027-06-10")

    def found(*options: str) -> list[str]:
        return [line[:5] for line in tagend(*register, *options).out.splitlines()]

    assert found("--lot", "K 114") == ["no. 1"]
    assert found("--recipe", "Reedbed six") == ["no. 2"]
    assert found("--older-than", "374") == ["no. 1", "no. 2"]
    assert found("--older-than", "375") == []
    assert found("--lot", "Z 9") == []


def test_the_register_goes_by_recipe_or_lot(tagend: Tagend, demo: Path) -> None:
    tagend(*label(demo, 1))
    by_lot = tagend("register", demo / "tied.csv", "--by", "lot").out.splitlines()
    headings = [line for line in by_lot if not line.startswith("  ")]
    assert headings == ["Stiff 25: K 114", "Clear 8: F 7", "no lot known"]
    by_recipe = tagend("register", demo / "tied.csv", "--by", "recipe").out.splitlines()
    assert by_recipe[0] == "Sandbar eight"
    assert by_recipe[2] == "Reedbed six"


def test_what_a_terminal_obeys_is_not_shown(tagend: Tagend, demo: Path) -> None:
    tagend(*label(demo, 1))
    register = demo / "tied.csv"
    register.write_text(register.read_text("utf-8").replace("Reedbed", "\x1b[31mReed"), "utf-8")
    run = tagend("register", register, "--by", "recipe")
    assert "\x1b" not in run.out
    assert "?[31mReed six" in run.out
