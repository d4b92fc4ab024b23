import tomllib
from pathlib import Path

import pytest

from tests.cards.cli.conftest import Tagend

BEST = """\
1. 11 ft, 5 knots; butt 60 %, taper 20 %, tippet 20 %
  steps of 0.003 in, 0.003 in, 0.002 in, 0.002 in, 0.003 in; ratios 1.15, 1.18, 1.13, 1.15, 1.30
  7 %, 8 %, 6 %, 7 %, 2 % of a wave turn back; 98 % of its energy passes \
(computed for an ideal string: to compare leaders)
  37 in  0.023 in  hard nylon    25 lb   butt    Stiff 25
  25 in  0.020 in  hard nylon    18 lb   butt    Stiff 18
  17 in  0.017 in  hard nylon    13 lb   butt    Stiff 13
  14 in  0.015 in  hard nylon    10 lb   taper   Stiff 10
  13 in  0.013 in  hard nylon    8 lb    taper   Stiff 8
  26 in  0.010 in  fluorocarbon  8.5 lb  tippet  Clear 8
  note: section 5 (8 lb) is weaker than the tippet (8.5 lb)"""


def asked(demo: Path, step: str) -> tuple[str | Path, ...]:
    return (
        *("propose", "--rack", demo / "rack.toml", "--total", "11 ft", "--butt", "0.023 in"),
        *("--tippet", "0.010 in fluorocarbon", "--step", step, "-o", demo / "out.toml"),
    )


def test_the_best_is_printed_with_its_spools_and_audit_and_written(
    tagend: Tagend, demo: Path
) -> None:
    run = tagend(*asked(demo, "0.003 in"))
    assert (run.status, run.err) == (0, f"wrote the first into {demo / 'out.toml'}\n")
    assert run.out.startswith(BEST)
    written = tomllib.loads((demo / "out.toml").read_text())
    assert written["name"] == "11 ft, 0.023 in to 0.010 in"
    assert [section["length"] for section in written["section"]] == (
        ["37 in", "25 in", "17 in", "14 in", "13 in", "26 in"]
    )
    check = tagend("check", demo / "out.toml")
    assert check.status == 0


def test_several_proposals_take_different_spools(tagend: Tagend, demo: Path) -> None:
    first, second = tagend(*asked(demo, "0.004 in")).out.split("\n\n")
    assert ("Stiff 10" in first, "Stiff 10" in second) == (False, True)


def test_a_missing_spool_ends_it_and_nothing_is_written(tagend: Tagend, demo: Path) -> None:
    run = tagend(*asked(demo, "0.0025 in"))
    assert run.status == 2
    assert len(run.faults) == 3
    assert run.faults[0].endswith("buy 0.022 in hard nylon, or allow a larger step")
    assert not (demo / "out.toml").exists()


def test_the_usual_step_is_the_limit_of_the_shops_own_audit(
    tagend: Tagend, demo: Path, tmp_path: Path
) -> None:
    arguments = [part for part in asked(demo, "") if part not in ("--step", "")]
    assert ", 2 knots;" in tagend(*arguments).out.splitlines()[0]
    shop = tmp_path / "fine.toml"
    shop.write_text("[rules.step]\nlimit = 1.31\n")
    with_shop = tagend(*arguments, "--shop", shop).out
    assert ", 2 knots;" not in with_shop
    for line in with_shop.splitlines():
        _, here, ratios = line.partition("ratios ")  # the last into denser fluorocarbon
        assert not here or max(map(float, ratios.split(", ")[:-1])) <= 1.31


def test_sighter_bought_butt_and_guard_are_asked_for(tagend: Tagend, tmp_path: Path) -> None:
    spools = (("nylon", "0.011 in"), ("nylon", "0.008 in"), ("sighter nylon", "0.009 in"),
              ("coated wire", "0.015 in"))  # fmt: skip
    rack = tmp_path / "rack.toml"
    rack.write_text(
        "".join(
            f'[[spool]]\nlabel = "{size}"\nmaterial = "{material}"\ndiameter = "{size}"\n'
            'left = "20 yd"\n'
            for material, size in spools
        )
    )
    run = tagend(
        *("propose", "--rack", rack, "--total", "9 ft", "--tippet", "0.008 in"),
        *("--bought", "5 ft 0.021 in to 0.014 in nylon", "--sighter", "12 in"),
        *("--guard", "6 in wire", "-o", tmp_path / "out.toml"),
    )
    assert run.status == 0
    written = tomllib.loads((tmp_path / "out.toml").read_text())["section"]
    assert [section["part"] for section in written] == (
        ["butt", "taper", "sighter", "tippet", "bite guard"]
    )
    assert (written[0]["bought"], written[-1]["material"]) == (True, "coated wire")
    assert tagend("check", tmp_path / "out.toml").status == 0


@pytest.mark.parametrize(
    ("more", "fault"),
    [
        (["--guard", "12 in wire"], "there is no wire for the bite guard; buy a spool of it"),
        (["--guard", "wire"], "guard: 'wire' gives no length"),
        (["--sighter", "18"], "sighter: '18' gives no length"),
        (["--sighter", "11 ft"], "the pieces whose lengths you ask for leave 0 in"),
        (["--bought", "5 ft 4X nylon"], "tagend propose: Give one of --butt, --line-tip and"),
    ],
)
def test_a_mistake_in_a_piece_is_named_and_nothing_written(
    tagend: Tagend, demo: Path, more: list[str], fault: str
) -> None:
    (demo / "rack.toml").write_text(
        (demo / "rack.toml").read_text()
        + '[[spool]]\nlabel = "S"\nmaterial = "sighter"\ndiameter = "0.012 in"\nleft = "9 yd"\n'
    )
    run = tagend(*asked(demo, "0.004 in"), *more)
    assert run.status == 2
    assert run.faults[0].startswith(fault)
    assert not (demo / "out.toml").exists()


def test_diameters_stand_in_for_a_rack(tagend: Tagend, tmp_path: Path) -> None:
    out = tmp_path / "out.toml"
    run = tagend(
        *("propose", "--diameters", "0.021 in, 0.019 in, 17 thou, 15 thou, 13 thou, 0X, 2X, 4X"),
        *("--total", "2.7 m", "--line-tip", "0.8 mm", "--tippet", "4X fluoro 5 lb"),
        *("--step", "2 thou", "--name", "Reedbed five", "--shares", "50/25/25", "-o", out),
    )
    assert run.status == 0
    written = tomllib.loads(out.read_text())
    assert (written["name"], written["line_tip"]) == ("Reedbed five", "0.8 mm")
    assert written["section"][0] == {
        "length": "56 cm",
        "diameter": "0.021 in",
        "material": "nylon",
        "part": "butt",
    }
    assert written["section"][-1]["strength"] == "5 lb"
    lengths = [float(section["length"].removesuffix(" cm")) for section in written["section"]]
    assert sum(lengths) == 270


@pytest.mark.parametrize(
    ("more", "fault"),
    [
        (["--rack", "r.toml", "--diameters", "4X"], "Give either --rack or --diameters."),
        ([], "Give either --rack or --diameters."),
    ],
)
def test_line_comes_from_one_place(tagend: Tagend, more: list[str], fault: str) -> None:
    run = tagend(
        *("propose", "--total", "9 ft", "--butt", "20 thou", "--tippet", "4X", "-o", "x.toml"),
        *more,
    )
    assert run.status == 2
    assert run.faults == [f"tagend propose: {fault} See 'tagend propose --help'."]


@pytest.mark.parametrize(
    ("option", "value", "fault"),
    [
        ("--total", "9", "total: '9' has no unit"),
        ("--total", "9.3 ft", "no tape shows 9.3 ft; write a total such as 111 5/8 in"),
        ("--butt", "thick", "butt: 'thick' cannot be read"),
        ("--step", "2", "step: '2' has no unit"),
        ("--shares", "60/40", "shares: '60/40' is not a share for each"),
        ("--tippet", "4X silk", "tippet: "),
        ("--material", "silk", "material: "),
        ("--name", "\x07", "name: U+0007"),
        ("--diameters", "20 thou, x", "diameters: 'x' cannot be read"),
    ],
)
def test_a_word_that_cannot_be_read_is_named(
    tagend: Tagend, option: str, value: str, fault: str
) -> None:
    usual = {
        "--diameters": "20 thou, 10 thou",
        "--total": "9 ft",
        "--butt": "20 thou",
        "--tippet": "10 thou",
        "-o": "never.toml",
    }
    words = [word for pair in {**usual, option: value}.items() for word in pair]
    run = tagend("propose", *words)
    assert run.status == 2
    assert run.faults[0].startswith(fault)
