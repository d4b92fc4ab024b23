from pathlib import Path

from tests.cards.cli.book.conftest import Book, left, shown, told


def test_a_plan_says_what_to_cut_and_records_nothing(book: Book, demo: Path) -> None:
    before = book("history").out, left(book)
    run = book("plan", f"{demo}/sandbar-eight.toml=12", f"{demo}/breakwater-ten.toml=3")
    assert run.status == 0
    assert "15 leaders, spool by spool" in run.out
    assert (book("history").out, left(book)) == before


def test_a_plan_is_one_for_all_its_recipes(book: Book, demo: Path) -> None:
    both = told(
        book("plan", f"{demo}/sandbar-eight.toml=4", f"{demo}/breakwater-ten.toml=3", "--json")
    )
    assert [(of["recipe"], of["count"]) for of in both["leaders"]] == [
        ("Sandbar eight", 4),
        ("Breakwater ten", 3),
    ]
    spools = {of["spool"]: of for of in both["spools"]}
    # 4 × 57 1/4 in = 229 in = 5816.6 mm of 40 yd = 36,576 mm
    assert spools["Stiff 25"]["drawn_mm"] == 5816.6
    assert spools["Stiff 25"]["left_mm"] == 36_576 - 5816.6
    assert both["to_buy"] == []


def test_what_lacks_is_told_by_the_leader_of_its_recipe(book: Book, demo: Path) -> None:
    run = book("plan", f"{demo}/breakwater-ten.toml=3", f"{demo}/sandbar-eight.toml=30")
    assert "runs out at leader 20 of Sandbar eight" in run.out
    assert "from leader 20 of Sandbar eight on" in run.out
    short = told(book("plan", f"{demo}/sandbar-eight.toml=30", "--json"))["to_buy"]
    assert {"recipe": "Sandbar eight", "leader": 20} in [lack["from"] for lack in short]


def test_one_recipe_named_twice_is_one_order(book: Book, demo: Path) -> None:
    plan = book("plan", f"{demo}/sandbar-eight.toml=4", f"{demo}/sandbar-eight.toml=3", "--json")
    assert [of["count"] for of in told(plan)["leaders"]] == [7]


def test_a_bench_sheet_of_a_plan_bears_no_numbers(book: Book, demo: Path, output: Path) -> None:
    assert book("plan", f"{demo}/sandbar-eight.toml=4", "--bench", output).status == 0
    assert "Sandbar eight" in shown(output)
    assert "no. 1" not in shown(output)


def test_a_count_must_be_said(book: Book, demo: Path) -> None:
    for word in (f"{demo}/sandbar-eight.toml", "a.toml=0", "a.toml=many", "=3", "a.toml=10001"):
        run = book("plan", word)
        assert run.status == 2
        assert "such as" in run.err
    assert book("plan").status == 2


def test_a_wrong_leader_is_not_planned_unless_told(book: Book, demo: Path) -> None:
    assert book("plan", f"{demo}/hasty-seven.toml=1").status == 2
    assert book("plan", f"{demo}/hasty-seven.toml=1", "--anyway").status == 0


def test_bad_and_empty_spools_are_not_planned_with(book: Book, demo: Path) -> None:
    book("mark", "--spool", "Clear 8", "bad", "--remark", "brittle")
    book("mark", "--spool", "Stiff 8", "empty")
    short = told(book("plan", f"{demo}/sandbar-eight.toml=1", "--json"))["to_buy"]
    assert [lack["cuts"][0]["section"] for lack in short] == [5, 6]
