import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend
from tests.tree import ROOT

SHOP = """\
# Mine.
name = "The Wrack Line Bench"  # on each card

[lap]
"Blood knot" = "8 in"  # tied wet

[rules.step]
limit = 1.3
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    path = tmp_path / "shop.toml"
    path.write_text(SHOP)
    return path


def test_the_sum_is_shown_and_stored(tagend: Tagend, shop: Path) -> None:
    run = tagend("learn", "clinch", "--from", "10 in", "--to", "6 1/4 in", "--shop", shop)
    assert run.status == 0
    assert run.out == "clinch: 10 in - 6 1/4 in = 3 3/4 in, the fold\n"
    assert run.err == f"stored in {shop}: [lap] clinch = '3 3/4 in'\n"
    assert shop.read_text() == SHOP.replace("[lap]\n", '[lap]\nclinch = "3 3/4 in"\n')


def test_a_figure_that_is_there_is_replaced_by_whatever_name_it_has(
    tagend: Tagend, shop: Path
) -> None:
    learn = ["learn", "blood", "--from", "12 in", "--from", "10 in", "--to", "15 in"]
    run = tagend(*learn, "--shop", shop)
    assert run.status == 2
    assert run.faults == [f"{shop}: [lap] Blood knot: was '8 in', now '7 in'; say --replace"]
    assert shop.read_text() == SHOP
    run = tagend(*learn, "--shop", shop, "--replace")
    assert run.err == f"stored in {shop}: [lap] Blood knot = '7 in' (was '8 in')\n"
    assert run.out == "blood: 12 in + 10 in - 15 in = 7 in, the lap\n"
    assert shop.read_text() == SHOP.replace('"8 in"', '"7 in"')


def test_what_was_learned_is_cut_by(tagend: Tagend, shop: Path, demo: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    learned = ["--from", "12 in", "--from", "10 in", "--to", "15 in", "--shop", shop, "--replace"]
    assert tagend("learn", "blood", *learned).status == 0
    run = tagend("cuts", recipe, "--explain", "--shop", shop)
    # half of 12 + 10 - 15 = 7 in for each side
    assert "    + 3 1/2 in at the fly end, blood, your own lap" in run.out.splitlines()
    assert "blood 4+4         lap 7 in" in run.out


def test_the_shop_file_may_be_named_once_for_all(
    tagend: Tagend, shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TAGEND_SHOP", str(shop))
    assert tagend("learn", "clinch", "--from", "10 in", "--to", "6 in").status == 0
    assert 'clinch = "4 in"' in shop.read_text()


@pytest.mark.parametrize(
    ("arguments", "fault"),
    [
        (["blodd", "--from", "1 in", "--to", "1 in"], "no knot is called 'blodd'; did you mean "),
        (["clinch", "--from", "10", "--to", "6 in"], "'10' has no unit; write a length "),
        (["clinch", "--from", "10 in", "--to", "6 lb"], "'6 lb': 'lb' is not a unit for this"),
        (["clinch", "--from", "6 in", "--to", "10 in"], "the line is no shorter than before"),
        (["blood", "--from", "6 in", "--to", "10 in"], "'blood' is tied with 2 pieces of line"),
        (
            ["albright", "--from", "9 in", "--from", "9 in", "--to", "9 in"],
            "'albright' has a fold on each side",
        ),
        (["clinch", "--to", "6 in"], "tagend learn: Missing option '--from'."),
        (["clinch", "--from", "6 in"], "tagend learn: Missing option '--to'."),
    ],
)
def test_what_cannot_be_learned_leaves_the_file_as_it_was(
    tagend: Tagend, shop: Path, arguments: list[str], fault: str
) -> None:
    run = tagend("learn", *arguments, "--shop", shop)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(fault)
    assert shop.read_text() == SHOP


def test_a_shop_file_is_asked_for(tagend: Tagend) -> None:
    run = tagend("learn", "clinch", "--from", "10 in", "--to", "6 in")
    assert run.status == 2
    assert run.faults[0].startswith("tagend learn: Missing option '--shop'")


def test_a_broken_shop_file_is_named_and_left(tagend: Tagend, shop: Path) -> None:
    shop.write_text("[lap\n")
    run = tagend("learn", "clinch", "--from", "10 in", "--to", "6 in", "--shop", shop)
    assert run.status == 2
    assert run.err.startswith(f"{shop}: line 1")
    assert shop.read_text() == "[lap\n"


FOLDED = ("improved clinch", "clinch", "non-slip loop", "palomar", "figure-eight")


def test_runs_at_once_lose_no_figure(shop: Path) -> None:
    runs = [
        *(["learn", knot, "--from", "10 in", "--to", "6 in", "--shop", shop] for knot in FOLDED),
        ["calibrate", "--store", shop, "--front-x", "0.4 mm"],
    ]
    started = [
        subprocess.Popen([sys.executable, "-m", "tagend.cards", *map(str, run)], cwd=ROOT)
        for run in runs
    ]
    assert [process.wait() for process in started] == [0] * len(runs)
    stored = tomllib.loads(shop.read_text())
    assert stored["lap"] == {"Blood knot": "8 in", **dict.fromkeys(FOLDED, "4 in")}
    assert stored["printer"] == {"front_x": "0.4 mm"}
    assert [path.name for path in shop.parent.iterdir()] == ["shop.toml"]


def test_of_two_that_learn_one_knot_at_once_the_second_is_told(shop: Path) -> None:
    commands = [
        ["learn", "clinch", "--from", "10 in", "--to", left, "--shop", str(shop)]
        for left in ("6 in", "5 in")
    ]
    started = [
        subprocess.Popen(
            [sys.executable, "-m", "tagend.cards", *command], cwd=ROOT, stderr=subprocess.PIPE
        )
        for command in commands
    ]
    told = {process.communicate()[1].decode(): process.returncode for process in started}
    assert sorted(told.values()) == [0, 2]
    (refusal,) = (words for words, status in told.items() if status == 2)
    assert f"was {tomllib.loads(shop.read_text())['lap']['clinch']!r}" in refusal


def test_a_figure_of_two_sides_is_told_whole(tagend: Tagend, shop: Path) -> None:
    sides = '{ above = "3 in", below = "2 in" }'
    shop.write_text(SHOP.replace('"8 in"', sides))
    pieces = ("--from", "12 in", "--from", "10 in", "--to", "14 in")
    run = tagend("learn", "blood", *pieces, "--shop", shop)
    assert run.status == 2
    (fault,) = run.faults
    assert "'3 in'" in fault
    assert "'2 in'" in fault
    assert sides in shop.read_text()


def test_what_is_there_already_is_stored_again_without_a_word(tagend: Tagend, shop: Path) -> None:
    learned = ["learn", "blood", "--from", "12 in", "--from", "10 in", "--to", "14 in"]
    run = tagend(*learned, "--shop", shop)
    assert run.err == f"stored in {shop}: [lap] Blood knot = '8 in'\n"
    assert shop.read_text() == SHOP


@pytest.mark.parametrize(("mark", "end"), [("\ufeff", "\r\n"), ("", "\r\n"), ("\ufeff", "\n")])
def test_line_ends_and_a_byte_order_mark_stay(
    tagend: Tagend, shop: Path, mark: str, end: str
) -> None:
    before = (mark + SHOP.replace("\n", end)).encode()
    shop.write_bytes(before)
    run = tagend("learn", "clinch", "--from", "10 in", "--to", "6 in", "--shop", shop)
    assert run.status == 0
    heading = f"[lap]{end}"
    told = before.decode().replace(heading, f'{heading}clinch = "4 in"{end}')
    assert shop.read_bytes() == told.encode()
