from pathlib import Path

from tests.cards.cli.book.conftest import Book, left, told


def test_a_batch_is_drawn_numbered_and_recorded(book: Book, demo: Path) -> None:
    before = left(book)
    run = book(
        *("tie", f"{demo}/sandbar-eight.toml=4", f"{demo}/breakwater-ten.toml=3"),
        *("--tied", "2026-05-31", "--who", "R", "--json"),
    )
    done = told(run)
    assert (done["batch"], done["tied"], done["who"]) == (1, "2026-05-31", "R")
    assert [of["numbers"] for of in done["leaders"]] == [[1, 2, 3, 4], [5, 6, 7]]
    # 4 × 57 1/4 in = 5816.6 mm; 3 × 60 in = 4572 mm
    after = left(book)
    assert round(before["Stiff 25"] - after["Stiff 25"], 4) == 5816.6
    assert round(before["Stiff 36"] - after["Stiff 36"], 4) == 4572
    assert "tied batch 1" in book("history").out


def test_numbers_go_on_and_are_never_given_again(book: Book, demo: Path) -> None:
    one = f"{demo}/sandbar-eight.toml=2"
    book("tie", one)
    book("tie", one)
    book("undo")
    done = told(book("tie", one, "--json"))
    assert (done["batch"], done["leaders"][0]["numbers"]) == (3, [5, 6])


def test_with_too_little_line_nothing_is_done(book: Book, demo: Path) -> None:
    before = book("history").out, left(book)
    run = book("tie", f"{demo}/sandbar-eight.toml=20")
    assert run.status == 2
    assert "0.7 yd of 0.017 in hard nylon" in run.err
    assert "from leader 20 of Sandbar eight on; nothing was tied or drawn" in run.err
    assert run.out == ""
    assert (book("history").out, left(book)) == before
    assert book("recall").err == "0 of 0 leaders\n"


def test_the_old_day_of_a_recipe_is_not_carried_on(book: Book, demo: Path) -> None:
    recipe = demo / "sandbar-eight.toml"
    recipe.write_text('tied = "2020-01-01"\n' + recipe.read_text("utf-8"), "utf-8")
    book("tie", f"{recipe}=1", "--tied", "2026-05-31")
    (leader,) = told(book("recall", "--json"))["leaders"]
    assert leader["tied"] == "2026-05-31"


def test_a_leader_is_tied_again_from_the_book(book: Book, demo: Path) -> None:
    book("tie", f"{demo}/sandbar-eight.toml=2", f"{demo}/breakwater-ten.toml=1")
    (demo / "sandbar-eight.toml").unlink()
    done = told(book("tie", "--again", "3", "--again", "1-2", "--json"))
    assert [(of["recipe"], of["numbers"]) for of in done["leaders"]] == [
        ("Sandbar eight", [4, 5]),
        ("Breakwater ten", [6]),
    ]
    run = book("tie", "--again", "9")
    assert run.status == 2
    assert "1-6" in run.err


def test_a_wrong_leader_draws_nothing_unless_told(book: Book, demo: Path) -> None:
    recipe = demo / "breakwater-ten.toml"
    text = recipe.read_text("utf-8")
    recipe.write_text(text.replace("name =", 'total = "20 ft"\nname =', 1), "utf-8")
    before = left(book)
    assert book("tie", f"{recipe}=1").status == 2
    assert left(book) == before
    assert book("tie", f"{recipe}=1", "--anyway").status == 0
    assert left(book) != before
