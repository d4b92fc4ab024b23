from pathlib import Path

import pytest

from tagend.cards.disk.seal import sealed
from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import text

KEPT = sealed(b"# kept as it was\n")
EMPTY_RACK = """\
[[spool]]
label = "Odd"
material = "nylon"
diameter = "0.031 in"
left = "5 yd"
"""


@pytest.fixture
def output(demo: Path) -> Path:
    """Return where to write; a file of ours is there already."""
    path = demo / "out.pdf"
    path.write_bytes(KEPT)
    return path


def shown(pdf: Path, page: int = 0) -> str:
    return " ".join(text(pdf.read_bytes(), page).split())


def test_a_bench_sheet_is_written(tagend: Tagend, demo: Path, output: Path) -> None:
    run = tagend("bench", demo / "sandbar-eight.toml", "--count", "12", "-o", output)
    assert (run.status, run.out) == (0, "")
    assert run.err.startswith(f"wrote {output}: 1 page")
    assert "12 × Sandbar eight, 11 ft" in shown(output)
    assert "Cut, one spool at a time" in shown(output)


def test_the_spools_of_a_rack_are_named(tagend: Tagend, demo: Path, output: Path) -> None:
    options = ["--count", "12", "--rack", demo / "rack.toml"]
    assert tagend("bench", demo / "sandbar-eight.toml", *options, "-o", output).status == 0
    # 12 pieces of 57 1/4 in are 687 in = 19.08 yd of 40 yd
    assert "Stiff 25, lot K 114 0.023 in hard nylon" in shown(output)
    assert "draws 19.1 yd; 20.9 yd stays" in shown(output)


def test_a_rack_without_the_spools_is_a_list_of_what_to_buy(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    rack = demo / "poor.toml"
    rack.write_text(EMPTY_RACK)
    run = tagend(
        "bench", demo / "sandbar-eight.toml", "--count", "12", "--rack", rack, "-o", output
    )
    assert run.status == 0
    assert "Buy" in shown(output)
    assert (
        "19.1 yd of 0.023 in hard nylon, 25 lb, for 12 pieces "
        "from leader 1 of Sandbar eight on" in shown(output)
    )


def test_cuts_tell_the_same_in_words(tagend: Tagend, demo: Path) -> None:
    rack = demo / "poor.toml"
    rack.write_text(EMPTY_RACK)
    run = tagend("cuts", demo / "sandbar-eight.toml", "--count", "12", "--rack", rack)
    assert (run.status, run.err) == (0, "")
    assert (
        "  to buy: 19.1 yd of 0.023 in hard nylon, 25 lb, for 12 pieces "
        "from leader 1 of Sandbar eight on" in run.out.splitlines()
    )


def test_the_sheet_and_the_terminal_cut_alike(tagend: Tagend, demo: Path, output: Path) -> None:
    # Leader by leader the emptier spool gives 25, the other 40, and no 20 is left; but 40 from the
    # one and 25 + 20 from the other is all.
    names = []
    for inches in (25, 40, 20):
        path = demo / f"{inches}.toml"
        path.write_text(
            f'name = "Cut {inches}"\nlengths = "cut"\n[[section]]\nlength = "{inches} in"\n'
            'diameter = "0.020 in"\nmaterial = "nylon"\n'
        )
        names.append(path)
    rack = demo / "two.toml"
    rack.write_text(
        "".join(
            f'[[spool]]\nlabel = "{left}"\nmaterial = "nylon"\ndiameter = "0.020 in"\n'
            f'left = "{left} in"\n'
            for left in (40, 45)
        )
    )
    run = tagend("cuts", *names, "--count", "1", "--rack", rack)
    assert "to buy" not in run.out
    assert tagend("bench", *names, "--rack", rack, "-o", output).status == 0
    assert "Buy" not in shown(output)


def test_cuts_go_spool_by_spool(tagend: Tagend, demo: Path) -> None:
    run = tagend("cuts", demo / "sandbar-eight.toml", "--count", "30", "--rack", demo / "rack.toml")
    lines = run.out.splitlines()
    start = lines.index("30 leaders, spool by spool")
    # 40 yd are 1440 in: 25 pieces of 57 1/4 in, 1431 1/4 in = 39.76 yd
    assert lines[start + 1 : start + 3] == [
        "  Stiff 25: 0.023 in hard nylon, 0.2 yd left after it; draws 39.8 yd",
        "      25 × 57 1/4 in  Sandbar eight, section 1",
    ]
    # the other 5: 286 1/4 in = 7.95 yd
    assert (
        "  to buy: 8 yd of 0.023 in hard nylon, 25 lb, for 5 pieces "
        "from leader 26 of Sandbar eight on" in lines
    )


@pytest.mark.parametrize("command", ["bench", "cuts"])
@pytest.mark.parametrize("count", ["0", "1000000000", "-1", "dozens"])
def test_a_batch_is_of_a_likely_number(
    tagend: Tagend, demo: Path, output: Path, command: str, count: str
) -> None:
    more = ["-o", output] if command == "bench" else []
    run = tagend(command, demo / "sandbar-eight.toml", "--count", count, *more)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(f"tagend {command}: Invalid value for '--count': ")
    assert output.read_bytes() == KEPT


def test_a_broken_rack_is_refused_by_file_and_key(tagend: Tagend, demo: Path, output: Path) -> None:
    rack = demo / "broken.toml"
    rack.write_text(EMPTY_RACK.replace('"5 yd"', "5"))
    for command in (["bench", "-o", output], ["cuts"], ["cards", "-o", output]):
        run = tagend(*command, demo / "sandbar-eight.toml", "--rack", rack)
        assert run.status == 2
        (line,) = run.faults
        assert line.startswith(f"{rack}: spool 1, left: 5 has no unit; write a length")
    assert output.read_bytes() == KEPT


def test_an_unknown_paper_is_met_with_the_near_ones(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    run = tagend("bench", demo / "sandbar-eight.toml", "--paper", "Leter", "-o", output)
    assert run.status == 2
    assert run.faults[0].startswith("no paper is called 'Leter'; did you mean Letter")
    assert output.read_bytes() == KEPT


def test_paper_too_small_for_large_type_is_refused(
    tagend: Tagend, demo: Path, output: Path
) -> None:
    for paper in ("A7", "A8"):
        run = tagend("bench", demo / "sandbar-eight.toml", "--paper", paper, "-o", output)
        assert run.status == 2
        (line,) = run.faults
        assert line.endswith("; choose a larger size; see `tagend stock`")
        assert output.read_bytes() == KEPT


def test_own_paper_is_known(tagend: Tagend, demo: Path, output: Path) -> None:
    shop = demo / "own.toml"
    shop.write_text('[stock.paper]\nlong = "8 x 16 in"\n')
    run = tagend(
        "bench", demo / "sandbar-eight.toml", "--paper", "long", "--shop", shop, "-o", output
    )
    assert run.status == 0


def test_a_variant_can_be_tied_instead(tagend: Tagend, demo: Path, output: Path) -> None:
    named = ("--variant", "in hard wind")
    assert tagend("bench", demo / "sandbar-eight.toml", *named, "-o", output).status == 0
    assert "Sandbar eight, in hard wind" in shown(output)
    assert "83 1/4" in shown(output)  # 72 in, its loop 6 1/4 in and the blood 5 in
    run = tagend("bench", demo / "sandbar-eight.toml", "--variant", "in fog", "-o", output)
    assert run.status == 2
