import tomllib
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend

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
    assert last.startswith("  Millrace three: 0; for more there is too little 0.43 mm nylon and ")


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
        "  to buy: 0.7 yd of 0.017 in hard nylon, 13 lb, for 1 piece "
        "from leader 20 of Sandbar eight on" in run.out
    )


@pytest.mark.parametrize("mix", ["12", "12,6,4", "12,0", "12,x", "12,-3", "12,20000", ""])
def test_another_mix_is_refused(tagend: Tagend, demo: Path, mix: str) -> None:
    run = tagend("cuts", demo / SANDBAR, demo / "reedbed-six.toml", "--mix", mix)
    assert run.status == 2
    assert run.faults == [
        f"mix: {mix!r} is not a number for each of 2 recipes; "
        "write numbers from 1 to 10000, such as 12,6"
    ]
