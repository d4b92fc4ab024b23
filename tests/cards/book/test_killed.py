"""A run that is killed at any moment leaves each change whole, or none of it.

`KILLS=500 pytest -n 0 -s tests/cards/book/test_killed.py` kills more, and tells how many hit.
"""

import os
import re
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from tagend.cards.book.file import opened
from tagend.cards.book.history import history
from tests.bookkeeping import check_book, new_book, spool
from tests.tree import ROOT

KILLS = int(os.environ.get("KILLS", "25"))

pytestmark = pytest.mark.skipif(os.name == "nt", reason="it has no such signal")

WORK = """
import sys
from random import Random
from tests.bookkeeping import *
from tagend.cards.book.history import undo
from tagend.cards.book.correcting import Used, correct_use
from tagend.cards.book.leaders import mark
file, random, known = Path(sys.argv[1]), Random(sys.argv[2]), []
print("ready", flush=True)
while True:
    with opened(str(file)) as db:
        known = [row["id"] for row in db.execute("SELECT id FROM leader")]
        with changing(db, NOW) as change:
            what = random.choice("tmcuu") if known else "t"
            some = sorted(random.sample(known, min(len(known), 200)))
            if what == "t":
                names = random.sample(list(RECIPES), 2)
                orders = [order(name, random.randint(20, 150)) for name in names]
                done = tie(change, orders, TODAY, None)
                change.tell(f"batch {done.number} of {sum(one.count for one in orders)}")
            elif what == "m":
                mark(change, some, "given", TODAY, "x" * random.randint(1, 50))
            elif what == "c":
                correct_use(change, some, Used(section=1, spoiled=True))
            else:
                undo(change)
    print(change.number, flush=True)
"""

WRITE = """
import sys
from tagend.cards.disk.disk import write_whole
for number in range(10**6):
    write_whole(sys.argv[1], bytes([number % 256]) * 2_000_000)
    if number == 0:
        print("ready", flush=True)  # there is an old one
"""

COPY = """
import sys
from tagend.cards.book.file import copied, opened
print("ready", flush=True)
with opened(sys.argv[1]) as db:
    for number in range(10**6):
        copied(db, f"{sys.argv[1]}-copy-{number}")
"""


def killed(script: str, *arguments: str | Path, after: float) -> list[str]:
    """Kill a run so many seconds after it has begun; return what it said."""
    run = subprocess.Popen(
        [sys.executable, "-c", script, *map(str, arguments)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert run.stdout is not None
    assert run.stdout.readline() == "ready\n"
    time.sleep(after)
    run.kill()
    said = run.communicate()[0].splitlines()
    assert run.returncode < 0  # it was at work until then
    return said


def test_every_change_is_whole_or_nothing(tmp_path: Path) -> None:
    thick = [spool(f"Thick {n}", "10000 m") for n in range(3)]
    thin = [spool(f"Thin {n}", "10000 m", diameter="0.012 in") for n in range(3)]
    random = Random(1)
    begun = hot = 0
    for kill in range(KILLS):
        file = tmp_path / f"{kill // 20}.db"
        if not file.exists():
            new_book(file, [*thick, *thin])
        said = killed(WORK, file, str(kill), after=random.uniform(0, 0.15))
        journal = file.with_name(f"{file.name}-journal")
        begun += journal.exists()
        # Its first bytes are written last: with them, the book itself may be half written.
        hot += journal.exists() and any(journal.read_bytes()[:8])
        check_book(file)
        with opened(str(file)) as db:
            entries = history(db)
            # What was told is there, and no more than the one after it.
            kept = entries[-1].number
            assert kept - 1 <= int(said[-1]) <= kept if said else True
            standing = [entry.told for entry in entries if entry.stands]
            told = map(re.compile(r"batch (\d+) of (\d+)").fullmatch, standing)
            batches = {int(match[1]): int(match[2]) for match in told if match}
            found = db.execute("SELECT batch, count(*) FROM leader GROUP BY batch")
            assert dict(map(tuple, found)) == batches
    sys.stdout.write(f"{KILLS} kills hit {begun} changes, {hot} of them as it was kept\n")
    assert begun


@pytest.mark.parametrize("seed", range(max(5, KILLS // 10)))
def test_a_pdf_is_the_old_or_the_new_one(tmp_path: Path, seed: int) -> None:
    file = tmp_path / "out.pdf"
    killed(WRITE, file, after=Random(seed).uniform(0.01, 0.1))
    data = file.read_bytes()
    assert len(data) == 2_000_000
    assert len(set(data)) == 1


@pytest.mark.parametrize("seed", range(max(5, KILLS // 10)))
def test_a_copy_is_whole_or_not_there(tmp_path: Path, seed: int) -> None:
    file = new_book(tmp_path / "book.db")
    with closing(sqlite3.connect(file)) as db, db:  # so that a copy takes its time
        db.execute("UPDATE spool SET remark = hex(randomblob(100000))")
    killed(COPY, file, after=Random(seed).uniform(0, 0.1))
    copies = [path for path in tmp_path.iterdir() if path.name.startswith("book.db-copy-")]
    rows = check_book(file)
    assert all(check_book(copy) == rows for copy in copies)
