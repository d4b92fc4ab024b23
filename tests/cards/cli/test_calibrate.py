"""`tagend calibrate`: pages to measure with, and what was measured kept in the shop file."""

from pathlib import Path

import pytest

from tagend.layouts.paper.face import MM
from tests.cards.cli.conftest import Tagend
from tests.layouts.drawn import boxes, text


def test_a_page_for_one_side_and_two_for_both(tagend: Tagend, tmp_path: Path) -> None:
    out = tmp_path / "page.pdf"
    run = tagend("calibrate", "-o", out)
    assert (run.status, run.out) == (0, "")
    assert "print it at 100 %" in run.err
    assert "front_x" in text(out.read_bytes())
    run = tagend("calibrate", "-o", out, "--backs", "long-edge", "--paper", "A4")
    assert run.status == 0
    assert "back_x" in text(out.read_bytes(), 1)


def test_what_was_measured_is_stored_and_the_rest_stays(tagend: Tagend, demo: Path) -> None:
    shop = demo / "shop.toml"
    before = shop.read_text(encoding="utf-8")
    run = tagend(
        "calibrate", "--store", shop, "--front-x", "-0.4mm", "--front-y", "1/32 in",
        "--rule-x", "99.6 mm",
    )  # fmt: skip
    assert (run.status, run.out) == (0, "")
    assert run.err == (
        f"stored in {shop}: [printer] front_x = '-0.4mm', front_y = '1/32 in', rule_x = '99.6 mm'\n"
    )
    after = shop.read_text(encoding="utf-8")
    assert after == (
        before + '\n[printer]\nfront_x = "-0.4mm"\nfront_y = "1/32 in"\nrule_x = "99.6 mm"\n'
    )


def test_measuring_again_replaces_only_what_was_measured_again(
    tagend: Tagend, tmp_path: Path
) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        '# Ours.\n[printer]   # the old one in the shed\nfront_x = "1 mm"  # in June\n'
        'rule_x = "99 mm"\n\n[rules.step]\nlimit = 1.3  # ours\n'
    )
    before = shop.read_bytes()
    run = tagend("calibrate", "--store", shop, "--front-x", "0.5 mm", "--rule-x", "99 mm")
    assert run.status == 2
    assert run.faults == [f"{shop}: [printer] front_x: was '1 mm', now '0.5 mm'; say --replace"]
    assert shop.read_bytes() == before
    run = tagend("calibrate", "--store", shop, "--front-x", "0.5 mm", "--replace")
    assert run.err == f"stored in {shop}: [printer] front_x = '0.5 mm' (was '1 mm')\n"
    assert shop.read_text() == (
        '# Ours.\n[printer]   # the old one in the shed\nfront_x = "0.5 mm"  # in June\n'
        'rule_x = "99 mm"\n\n[rules.step]\nlimit = 1.3  # ours\n'
    )


def test_cards_are_printed_where_the_printer_then_puts_them_right(
    tagend: Tagend, demo: Path
) -> None:
    shop, out = demo / "shop.toml", demo / "cards.pdf"
    recipe = demo / "sandbar-eight.toml"
    tagend("cards", recipe, "--shop", shop, "-o", out)
    plain = boxes(out.read_bytes())
    tagend("calibrate", "--store", shop, "--front-x", "2 mm", "--front-y", "-1 mm")
    tagend("cards", recipe, "--shop", shop, "-o", out)
    for before, after in zip(plain, boxes(out.read_bytes()), strict=True):
        moved = (after[0] - before[0], after[1] - before[1])
        assert moved == pytest.approx((-2 * MM, MM), abs=0.02)


def test_the_page_to_check_is_corrected_and_says_so(tagend: Tagend, demo: Path) -> None:
    shop, out = demo / "shop.toml", demo / "page.pdf"
    tagend("calibrate", "--store", shop, "--front-x", "2 mm")
    tagend("calibrate", "-o", out, "--shop", shop)
    plain = boxes(out.read_bytes())
    run = tagend("calibrate", "-o", out, "--shop", shop, "--corrected")
    assert run.status == 0
    assert boxes(out.read_bytes())[0][0] - plain[0][0] == pytest.approx(-2 * MM, abs=0.01)
    assert "drawn as your shop file corrects it" in " ".join(text(out.read_bytes()).split())


@pytest.mark.parametrize(
    ("arguments", "fault"),
    [
        ([], "tagend calibrate: Missing option '-o' / '--output' or '--store'."),
        (["-o", "x.pdf", "--front-x", "1mm"], "tagend calibrate: Name the shop file to store"),
        (["--store", "shop.toml"], "tagend calibrate: Give what was measured, such as"),
        (["-o", "x.pdf", "--corrected"], "tagend calibrate: Name the shop file that corrects it"),
        (["-o", "x.pdf", "--paper", "A6"], "A6, 105 × 148 mm, is too small to measure a printer"),
        (["-o", "x.pdf", "--paper", "A44"], "no paper is called 'A44'; did you mean A4"),
        (
            ["--store", "none.toml", "--front-x", "1mm"],
            "none.toml: there is no such file; check its name and folder",
        ),
    ],
)
def test_a_wrong_call_is_told_in_one_line(
    tagend: Tagend,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    arguments: list[str],
    fault: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    run = tagend("calibrate", *arguments)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(fault)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("option", "length", "fault"),
    [
        ("--rule-x", "96 mm", "rule_x: 96 mm for 100 mm is off by 4.0 %, more than printers are; "),
        ("--front-x", "20.8 mm", "front_x: 20.8 mm is more than 10 mm; write how far the mark"),
        ("--back-y", "1", "back_y: '1' has no unit; write a length with its unit"),
    ],
)
def test_what_cannot_be_is_not_stored(
    tagend: Tagend, demo: Path, option: str, length: str, fault: str
) -> None:
    shop = demo / "shop.toml"
    before = shop.read_bytes()
    run = tagend("calibrate", "--store", shop, option, length)
    assert run.status == 2
    (line,) = run.faults
    assert line.startswith(fault)
    assert shop.read_bytes() == before


def test_a_shop_file_that_is_wrong_already_is_left_alone(tagend: Tagend, tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text('[printer]\nfront_z = "1 mm"\n')
    run = tagend("calibrate", "--store", shop, "--front-x", "1 mm")
    assert run.faults == [
        f"{shop}: printer, front_z: no such key; did you mean front_y or front_x?"
    ]
    assert shop.read_text() == '[printer]\nfront_z = "1 mm"\n'
