from tagend.cards.cli.worksheet_lines import cut_sum_lines
from tests.told import told
from tests.written import leader, recipe, section

TWO = recipe(
    section("46 in", "0.023 in", "hard nylon"),
    section("24 in", "0.020 in", "hard nylon"),
    butt="perfection loop",
    fly="none",
)


def test_a_cut_is_explained_as_a_sum_of_its_parts() -> None:
    assert cut_sum_lines(told(leader(TWO)))[:14] == [
        "  section 1, 0.023 in hard nylon, butt",
        "    46 in knot to knot, as the recipe says",
        # 25 x 0.023 + 2 x 3/4 + 1/16 + 4 = 6.1375, up to a quarter inch
        "    + 6 1/4 in at the butt end, perfection loop, 6.14 in up to a mark",
        "         0.58 in  body: bends and bights, 25 diameters",
        "         1.50 in  loop: twice the loop",
        "         0.06 in  tag: left on when trimmed",
        "         4.00 in  hand: held, and trimmed off",
        # a turn 2 x 0.020 + pi x 0.043 = 0.1751 round and 0.023 along: 4 x 0.1766 = 0.7064
        # 0.7064 + 1/16 + 4 = 4.7689; of section 2 0.7288 + 1/16 + 4 = 4.7913, up to a quarter inch
        "    + 5 in at the fly end, blood, 4.79 in up to a mark",
        "         0.71 in  wraps: 4 turns round 2 strands of 0.020 in",
        "         0.06 in  tag: left on when trimmed",
        "         4.00 in  hand: held, and trimmed off",
        "         0.02 in  lap: as much as the other side, so that the knot is in the middle",
        "    = cut 57 1/4 in",  # 46 + 6 1/4 + 5
        "  section 2, 0.020 in hard nylon, tippet",
    ]


def test_a_bare_end_takes_nothing() -> None:
    assert "    + 0 in at the fly end, nothing to tie" in cut_sum_lines(told(leader(TWO)))


def test_cut_lengths_are_explained_downwards() -> None:
    of = leader(recipe(*TWO.sections, butt="none", fly="none", lengths="cut"))
    lines = cut_sum_lines(told(of))
    assert lines[1] == "    46 in cut, as the recipe says"
    assert lines[2] == "    - 0.00 in at the butt end, nothing to tie"
    assert lines[3] == "    - 4.79 in at the fly end, blood"
    # 46 - 4.79 = 41.21, to a sixteenth 41 3/16 in
    assert "    = 41 3/16 in knot to knot" in lines


def test_what_is_bought_is_explained_downwards() -> None:
    of = leader(recipe(section("5 ft", "0.024 in", bought=True), section("20 in", "0.010 in")))
    lines = cut_sum_lines(told(of))
    assert lines[:3] == [
        "  section 1, 0.024 in nylon, butt",
        "    5 ft bought ready made, as the recipe says",
        "    - 0 in at the butt end, nothing to tie",
    ]
    # folded for an albright, 2.4 times as thick: 15 x 0.024 + 1/16 + 4 = 4.4225 of 60
    assert "    - 4 1/2 in at the fly end, albright, 4.42 in up to a mark" in lines
    assert "    = 55 1/2 in knot to knot" in lines
