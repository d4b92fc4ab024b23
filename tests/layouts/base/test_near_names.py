from tagend.layouts.base.near_names import suggestion

NAMES = ("blood", "doubled blood", "surgeon's", "davy")


def test_a_misspelt_name_is_met_with_those_like_it_the_nearest_first() -> None:
    assert suggestion("blod", NAMES) == "did you mean blood?"
    assert suggestion("A44", ("A2", "A3", "A4", "B4")).startswith("did you mean A4")


def test_several_are_joined_as_people_speak() -> None:
    sizes = ("index 3", "index 4", "index 5", "index 6")
    assert suggestion("index 5", sizes).startswith("did you mean index 5, index ")
    assert suggestion("letter", ("Letter",), "a size") == "did you mean Letter or a size?"


def test_a_name_unlike_any_is_met_with_all() -> None:
    assert suggestion("zzz", NAMES) == f"write one of: {', '.join(NAMES)}"
    assert suggestion("zzz", ("A4",), "a size") == "write one of: A4, or a size"
    assert suggestion("zzz", ("A4",)) == "write 'A4'"


def test_too_many_to_read_are_cut_short() -> None:
    said = suggestion("?", [f"name {number}" for number in range(200)])
    assert said.endswith(", …")
    assert len(said) < 500


def test_a_name_is_shown_once_and_as_it_is_written() -> None:
    known = {"surgeons": "surgeon's", "surgeon": "surgeon's"}
    assert suggestion("surgons", known) == "did you mean surgeon's?"
