"""A season from an empty folder to a recall, in ten commands, its finds worked out by hand."""

import json
from pathlib import Path

from tests.cards.cli.book.conftest import shown
from tests.cards.cli.conftest import Tagend

# Four leaders of two or three sections. All lengths are cut, so that the sums below are plain.
LEADERS = {
    "marl": ("24 in 0.020", "20 in 0.013"),
    "quay": ("24 in 0.020", "24 in 0.017", "20 in 0.013"),
    "sluice": ("60 in 0.024", "18 in 0.017"),
    "tern": ("48 in 0.024", "24 in 0.017"),
}
SPOOLS = (
    ("Old 20", "0.020", "250 in", "B 22"),  # ten pieces of 24 in, and 10 in over
    ("New 20", "0.020", "30 yd", "C 7"),
    ("Thick", "0.024", "50 yd", "A 1"),
    ("Middle", "0.017", "60 yd", "A 2"),
    ("Thin", "0.013", "60 yd", "A 3"),
)


def test_a_season(tagend: Tagend, tmp_path: Path) -> None:
    for name, sections in LEADERS.items():
        (tmp_path / f"{name}.toml").write_text(
            f'name = "{name.title()}"\nlengths = "cut"\n'
            + "".join(
                f'[[section]]\nlength = "{of.rsplit(" ", 1)[0]}"\n'
                f'diameter = "{of.rsplit(" ", 1)[1]} in"\nmaterial = "nylon"\n'
                for of in sections
            )
        )
    (tmp_path / "rack.toml").write_text(
        "".join(
            f'[[spool]]\nlabel = "{label}"\nmaterial = "nylon"\ndiameter = "{diameter} in"\n'
            f'left = "{left}"\nlot = "{lot}"\n'
            for label, diameter, left, lot in SPOOLS
        )
    )
    fifteen = [f"{tmp_path}/{name}.toml=15" for name in LEADERS]
    file, batch, pull = tmp_path / "s.db", tmp_path / "batch.pdf", tmp_path / "pull.pdf"

    def book(command: str, *words: str | Path) -> str:
        run = tagend("book", command, *words, "--book", file)
        assert run.status == 0, run.err
        return run.out

    book("start", "--rack", tmp_path / "rack.toml")  # 1
    assert "to buy" not in book("plan", *fifteen)  # 2
    book("tie", *fifteen, "--tied", "2026-03-14")  # 3
    book("print", "1", "--bench", "--labels", "--cards", "-o", batch)  # 4
    assert "no. 60" in shown(batch)
    book("mark", "3-4", "given", "--remark", "to a guest", "--on", "2026-05-30")  # 5
    book("mark", "--spool", "old20", "bad", "--remark", "brittle")  # 6
    # Marl and Quay take 30 pieces of 24 in of the 0.020. The emptier spool is used up first, leader
    # after leader: 250 in / 24 in = 10, so no. 1 to 10, all of Marl, hold its lot.
    found = json.loads(book("recall", "--lot", "b22", "-o", pull, "--json"))  # 7
    assert found["numbers"] == list(range(1, 11))
    assert {leader["recipe"] for leader in found["leaders"]} == {"Marl"}
    assert found["of"] == 60
    text = shown(pull)
    assert "Pull from the wallets: 8" in text
    assert "to a guest" in text
    book("mark", "1-2,5-10", "discarded", "--remark", "lot B 22")  # 8
    again = json.loads(book("tie", "--again", "1-2,5-10", "--tied", "2026-06-20", "--json"))  # 9
    assert again["leaders"] == [{"recipe": "Marl", "count": 8, "numbers": list(range(61, 69))}]
    assert {spool["lot"] for spool in again["spools"]} == {"C 7", "A 3"}  # none of the bad one
    # 15 + 15 - 10 + 8 pieces of 24 in are 672 in of 30 yd, 1080 in: 408 in, 11 1/3 yd, are left.
    assert "New 20, lot C 7" in (left := book("show"))  # 10
    assert "11.33 yd left" in left
