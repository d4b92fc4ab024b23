"""Leaders written to new files of the folder, by many windows at once."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.leader import written
from tagend.cards.recipe.recipe_file import read_recipe
from tests.tree import SAMPLES
from tests.written import PRACTICE


def test_two_windows_never_write_one_leader_over_the_other(tmp_path: Path) -> None:
    desk = Desk(tmp_path)
    recipe = read_recipe((SAMPLES / "sandbar-eight.toml").read_bytes(), PRACTICE)
    with ThreadPoolExecutor(8) as windows:
        names = [made["name"] for made in windows.map(lambda _: written(desk, recipe), range(24))]
    assert len(set(names)) == 24
    assert {path.name for path in tmp_path.glob("*.toml")} == set(names)
