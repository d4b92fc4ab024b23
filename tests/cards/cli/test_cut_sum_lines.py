from tagend.cards.cli.worksheet_lines import cut_sum_lines
from tests.written import leader, recipe, section

TWO = recipe(
    section("46 in", "0.023 in", "hard nylon"),
    section("24 in", "0.020 in", "hard nylon"),
    butt="perfection loop",
    fly="none",
)


def test_a_cut_is_explained_as_a_sum_of_its_parts() -> None:
    # The same sums stand, in millimetres, in tests/cards/test_leader.py.
    assert cut_sum_lines(leader(TWO))[:13] == [
        "  section 1, 0.023 in hard nylon, butt",
        "    46 in knot to knot, as the recipe says",
        "    + 6.14 in at the butt end, perfection loop",  # 155.8975 / 25.4
        "         0.58 in  body: bends and bights, 25 diameters",
        "         1.50 in  loop: twice the loop",
        "         0.06 in  tag: left on when trimmed",
        "         4.00 in  hand: held, and trimmed off",
        "    + 4.77 in at the fly end, blood",  # 121.1375 / 25.4
        "         0.71 in  wraps: 4 turns round 2 strands of 0.020 in",
        "         0.06 in  tag: left on when trimmed",
        "         4.00 in  hand: held, and trimmed off",
        "    = 56.91 in, cut 57 in (rounded up to the tape)",
        "  section 2, 0.020 in hard nylon, tippet",
    ]


def test_a_bare_end_takes_nothing() -> None:
    assert "    + 0.00 in at the fly end, bare end" in cut_sum_lines(leader(TWO))


def test_cut_lengths_are_explained_downwards() -> None:
    of = leader(recipe(*TWO.sections, butt="none", fly="none", lengths="cut"))
    lines = cut_sum_lines(of)
    assert lines[1] == "    46 in cut, as the recipe says"
    assert lines[2] == "    - 0.00 in at the butt end, bare end"
    assert lines[3] == "    - 4.77 in at the fly end, blood"
    # 46 - 4.77 = 41.23, to a sixteenth 41 1/4 in
    assert "    = 41 1/4 in knot to knot" in lines


def test_what_is_bought_has_no_sum() -> None:
    of = leader(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "0.010 in")))
    assert cut_sum_lines(of)[:2] == [
        "  section 1, 0.024 in nylon, butt",
        "    5 ft bought ready made",
    ]
