import csv
import tomllib
from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction
from pathlib import Path

import pytest

from tagend.cards.base.units import parse_line_length
from tests.cards.cli.conftest import Tagend
from tests.cards.cli.test_commands import spawn

SANDBAR = "sandbar-eight.toml"


def left(rack: Path) -> dict[str, str]:
    return {spool["label"]: spool["left"] for spool in tomllib.loads(rack.read_text())["spool"]}


def changed_lines(before: str, after: str) -> list[tuple[str, str]]:
    pairs = zip(before.splitlines(), after.splitlines(), strict=True)
    return [(one, other) for one, other in pairs if one != other]


def test_a_rack_tells_how_many_whole_leaders_it_makes(tagend: Tagend, demo: Path) -> None:
    # 12 yd are 432 in: 19 pieces of 22 1/2 in. 30 yd are 1080 in: 18 of 60 in.
    run = tagend("cuts", demo / SANDBAR, demo / "breakwater-ten.toml", "--rack", demo / "rack.toml")
    assert run.out.endswith(
        "\n\nwhole leaders from this rack, each by itself\n"
        "  Sandbar eight: 19; for more there is too little 0.017 in hard nylon\n"
        "  Breakwater ten: 18; for more there is too little 0.028 in hard nylon\n"
    )


def test_line_that_the_rack_has_not_is_named(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "millrace-three.toml", "--rack", demo / "rack.toml")
    last = run.out.splitlines()[-1]
    assert last.startswith("  Millrace three: 0; for more there is too little 0.0169 in nylon and ")


def test_a_mix_has_a_number_for_each_recipe(tagend: Tagend, demo: Path) -> None:
    names = (demo / SANDBAR, demo / "breakwater-ten.toml")
    run = tagend("cuts", *names, "--rack", demo / "rack.toml", "--mix", "12, 8")
    assert "\n20 leaders, spool by spool\n" in run.out
    assert "      12 × 57 1/4 in  Sandbar eight, section 1\n" in run.out
    assert "      8 × 60 in  Breakwater ten, section 1\n" in run.out


def test_too_large_a_batch_tells_the_best_mix_and_what_to_buy(tagend: Tagend, demo: Path) -> None:
    names = (demo / SANDBAR, demo / "breakwater-ten.toml")
    run = tagend("cuts", *names, "--rack", demo / "rack.toml", "--mix", "20,4")
    assert "\nthis rack makes 23 of them whole: 19 Sandbar eight, 4 Breakwater ten\n" in run.out
    assert (
        "  to buy: 0.7 yd of 0.017 in hard nylon, 13 lb, for 1 piece from leader 20 on" in run.out
    )


@pytest.mark.parametrize("mix", ["12", "12,6,4", "12,0", "12,x", "12,-3", "12,20000", ""])
def test_another_mix_is_refused(tagend: Tagend, demo: Path, mix: str) -> None:
    run = tagend("cuts", demo / SANDBAR, demo / "reedbed-six.toml", "--mix", mix)
    assert run.status == 2
    assert run.faults == [
        f"mix: {mix!r} is not a number for each of 2 recipes; "
        "write numbers from 1 to 10000, such as 12,6"
    ]


def test_drawing_changes_what_is_left_and_nothing_else(tagend: Tagend, demo: Path) -> None:
    rack = demo / "rack.toml"
    rack.write_text(
        rack.read_text().replace('left = "40 yd"', "left   = '40 yd'  # new in May"), "utf-8"
    )
    before = rack.read_text()
    run = tagend("cuts", demo / SANDBAR, "--rack", rack, "--count", "2", "--draw")
    assert (run.status, run.err) == (0, f"drawn from {rack}\n")
    changed = changed_lines(before, rack.read_text())
    assert len(changed) == 6
    # 40 yd - 2 × 57 1/4 in = 36.8194 yd; 50 m - 2 × 37 1/4 in = 48.1077 m: both rounded down.
    assert ("left   = '40 yd'  # new in May", 'left   = "36.81 yd"  # new in May') in changed
    assert ('left = "50 m"', 'left = "48.1 m"') in changed


def test_every_draw_takes_off_at_least_what_was_cut(tagend: Tagend, demo: Path) -> None:
    rack = demo / "rack.toml"
    before = left(rack)
    for _ in range(3):
        tagend("cuts", demo / SANDBAR, "--rack", rack, "--count", "1", "--draw")
    taken = parse_line_length(before["Stiff 13"]).mm - parse_line_length(left(rack)["Stiff 13"]).mm
    drawn = 3 * Fraction("22.5") * Fraction("25.4")
    assert drawn <= taken < drawn + 3 * Fraction("9.144")  # a hundredth of a yard each time


def test_an_empty_spool_stays_on_the_rack(tagend: Tagend, demo: Path) -> None:
    rack = demo / "rack.toml"
    rack.write_text(rack.read_text().replace('left = "12 yd"', 'left = "22 1/2 in"'), "utf-8")
    tagend("cuts", demo / SANDBAR, "--rack", rack, "--count", "1", "--draw")
    assert left(rack)["Stiff 13"] == "0 in"
    run = tagend("cuts", demo / SANDBAR, "--rack", rack)
    assert "  Sandbar eight: 0; for more there is too little 0.017 in hard nylon\n" in run.out


def test_a_rack_with_too_little_stays_as_it_is(tagend: Tagend, demo: Path) -> None:
    rack, record = demo / "rack.toml", demo / "drawn.csv"
    before = rack.read_bytes()
    run = tagend(
        *("cuts", demo / SANDBAR, "--rack", rack, "--count", "20", "--draw", "--record", record)
    )
    assert run.status == 2
    assert run.faults == [
        f"{rack}: to buy: 0.7 yd of 0.017 in hard nylon, from leader 20 on; nothing was drawn"
    ]
    assert rack.read_bytes() == before
    assert not record.exists()


def test_the_record_grows_by_what_was_drawn(tagend: Tagend, demo: Path) -> None:
    rack, record = demo / "rack.toml", demo / "drawn.csv"
    for day in ("2026-05-30", "2026-05-31"):
        tagend(
            *("cuts", demo / SANDBAR, "--rack", rack, "--count", "2", "--draw"),
            *("--record", record, "--on", day),
        )
    rows = list(csv.DictReader(record.read_text("utf-8-sig").splitlines()))
    assert [row["date"] for row in rows] == ["2026-05-30"] * 6 + ["2026-05-31"] * 6
    assert rows[0] == {
        "date": "2026-05-30",
        "spool": "Stiff 25",
        "lot": "K 114",
        "diameter": "0.023 in",
        "material": "hard nylon",
        "recipe": "Sandbar eight",
        "section": "1",
        "pieces": "2",
        "cut_mm": "1454.15",  # 57 1/4 in
        "drawn_mm": "2908.3",
        "left": "36.81 yd",
    }


def test_a_record_that_is_none_leaves_the_rack_alone(tagend: Tagend, demo: Path) -> None:
    rack, record = demo / "rack.toml", demo / "drawn.csv"
    record.write_text("what,else\n1,2\n")
    before = rack.read_bytes()
    run = tagend(
        *("cuts", demo / SANDBAR, "--rack", rack, "--count", "2", "--draw", "--record", record)
    )
    assert run.status == 2
    assert run.faults[0].startswith(f"{record}: row 1: there is not one column called 'date'; ")
    assert (rack.read_bytes(), record.read_text()) == (before, "what,else\n1,2\n")


def test_a_record_that_cannot_be_written_leaves_the_rack_as_it_was(
    tagend: Tagend, demo: Path
) -> None:
    rack = demo / "rack.toml"
    before = rack.read_bytes()
    run = tagend(
        *("cuts", demo / SANDBAR, "--rack", rack, "--count", "2", "--draw"),
        *("--record", demo / "no folder" / "drawn.csv"),
    )
    assert run.status == 2
    assert rack.read_bytes() == before
    assert sorted(path.name for path in demo.iterdir() if path.name.startswith(".")) == []


@pytest.mark.parametrize(
    "options",
    [
        ["--draw"],
        ["--draw", "--rack", "r.toml"],
        ["--draw", "--count", "2"],
        ["--draw", "--rack", "r.toml", "--count", "2", "--json"],
        ["--draw", "--rack", "r.toml", "--count", "2", "--mix", "2"],
    ],
)
def test_drawing_asks_for_a_rack_and_a_number(
    tagend: Tagend, demo: Path, options: list[str]
) -> None:
    run = tagend("cuts", demo / SANDBAR, *options)
    assert run.status == 2
    assert run.faults == [
        "tagend cuts: --draw goes with --rack and either --count or --mix, and without --json. "
        "See 'tagend cuts --help'."
    ]


def test_two_runs_at_once_both_draw(demo: Path) -> None:
    rack = demo / "rack.toml"
    words = ("cuts", demo / SANDBAR, "--rack", rack, "--count", "1", "--draw")
    with ThreadPoolExecutor(6) as pool:
        runs = list(pool.map(lambda _: spawn(*words), range(6)))
    assert [run.returncode for run in runs] == [0] * 6
    # Six times 57 1/4 in of 40 yd, each time rounded down: no draw is lost.
    drawn = parse_line_length("40 yd").mm - parse_line_length(left(rack)["Stiff 25"]).mm
    assert drawn >= 6 * Fraction("57.25") * Fraction("25.4")
