"""Pocket cards as numbers: every card size that comes with the program, over many leaders."""

from itertools import chain

import pytest
from hypothesis import example, given, settings
from msgspec.structs import replace

from tagend.cards.faces.block import TooSmall
from tagend.cards.faces.card_text import CardText
from tagend.cards.faces.panel import INSET
from tagend.cards.faces.pocket import pocket_card
from tagend.cards.leader.leader import Leader
from tagend.cards.leader.worksheet import Worksheet
from tagend.cards.practice.shop_file import Shop
from tagend.cards.printing.cards import CardWishes, card_text
from tagend.cards.printing.codes import code_of
from tagend.cards.printing.job import job_of
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.cards.words.language import ENGLISH, languages
from tagend.cards.words.leader_words import Told
from tagend.fonts import OURS, NoGlyph
from tagend.layouts.codes.code import TextTooLong
from tagend.layouts.paper.face import MM, Face
from tagend.layouts.paper.typeset import prepare
from tagend.layouts.stock.formats import CardSize
from tagend.layouts.stock.stock import card_size, shipped
from tests.seen import codes, faults, paths, runs, words
from tests.strategies import recipes
from tests.tieable import counts, is_tieable, seeds, tieable
from tests.written import PRACTICE, SIX, leader, recipe, section

SHOP = Shop(name="The Wrack Line Bench", line="Leaders tied by hand, one knot at a time")
JOB = job_of(SHOP)
SIZES = [card.name for card in shipped().cards.values()]
ID_1, INDEX = card_size("ID-1"), card_size("index-3x5")


def says(of: Leader, style: CardWishes | None = None) -> CardText:
    return card_text(JOB, Worksheet(of, ()), style or CardWishes())


def sides(of: Leader, size: CardSize, style: CardWishes | None = None) -> tuple[Face, ...]:
    return pocket_card(says(of, style), size, OURS).faces


def level(count: int) -> Leader:
    """Return a leader of so many sections, each a thousandth thinner than the one above."""
    thou = [80 - place for place in range(count)]
    parts: list[Section] = [section(f"{10 + t} in", f"0.0{t} in") for t in thou]
    return leader(recipe(*parts, butt="none", fly="clinch"))


def test_a_short_leader_is_one_front_and_its_back() -> None:
    front, *_ = sides(leader(SIX), INDEX)
    assert "Under test" in words(front)
    assert "11 ft" in words(front)
    for text in ("1", "6", "CUT, in", "57", "perfection loop 3/4 in", "non-slip loop 1/4 in"):
        assert text in [run.text for run in runs(front)]
    assert "fly 0" in words(front)  # the origin of the drawing
    assert "blood 4 thick, 5 thin" in words(front)
    assert codes(front) == []


def test_exactly_one_code_stands_on_a_card() -> None:
    for name in ("ID-1", "index-3x5", "A6"):
        found = [code for side in sides(leader(SIX), card_size(name)) for code in codes(side)]
        assert len(found) == 1
        assert found[0].symbol == code_of(leader(SIX), PRACTICE)


def test_sides_are_as_large_as_the_card_and_numbered() -> None:
    card = sides(leader(SIX), ID_1)
    assert {(side.width, side.height) for side in card} == {(ID_1.width, ID_1.height)}
    assert [side.name for side in card] == [
        f"Under test, side {number}" for number in range(1, len(card) + 1)
    ]


def test_cuts_are_the_largest_numbers_on_the_front() -> None:
    front, *_ = sides(leader(SIX), INDEX)
    (cut,) = [run for run in runs(front) if run.text == "57"]
    numbers = [run for run in runs(front) if run.text.isdigit() and run is not cut]
    assert all(run.size <= cut.size for run in numbers)


def test_large_type_is_14_points_on_every_side() -> None:
    for size in ("A6", "index-5x8"):
        card = sides(leader(SIX), card_size(size), CardWishes(large=True))
        assert all(run.size >= 14 - 1e-9 for side in card for run in runs(side))


def test_a_brief_card_leaves_the_lessons_out() -> None:
    brief = " ".join(words(side) for side in sides(leader(SIX), INDEX, CardWishes(taught=False)))
    assert not any(prepare(lesson.seat) in brief for lesson in says(leader(SIX)).lessons)
    assert len(sides(leader(SIX), INDEX, CardWishes(taught=False))) <= 2


@pytest.mark.parametrize("name", ["ID-1", "A7", "index-3x5", "A6"])
def test_every_knot_is_drawn_in_frames_with_numbers(name: str) -> None:
    text = says(leader(SIX))
    faces = pocket_card(text, card_size(name), OURS).faces
    bold = [run.text for side in faces for run in runs(side) if "bold" in run.font]
    for lesson in text.lessons:
        assert any(prepare(lesson.name[1:]) in heading for heading in bold)
    assert bold.count("1") == bold.count("2") >= len(text.lessons)


def test_the_eye_is_the_first_caution_of_every_card() -> None:
    text = says(leader(SIX))
    for size in (ID_1, INDEX, card_size("A6")):
        shown = " ".join(words(side) for side in pocket_card(text, size, OURS).faces)
        found = [shown.index(each.short[:20]) for each in text.cautions if each.short[:20] in shown]
        assert shown.index(text.cautions[0].short[:20]) == min(found)


def test_a_note_is_told() -> None:
    noted = replace(SIX, note="Renewed when it is down to a foot.")
    for size in (ID_1, INDEX):
        assert "down to a foot" in " ".join(words(side) for side in sides(leader(noted), size))


@pytest.mark.parametrize("language", languages())
def test_a_brief_card_still_tells_to_break_wire(language: str) -> None:
    wire = leader(recipe(section("9 ft", "0.015 in"), section("6 in", "0.014 in", "wire")))
    says = card_text(job_of(Shop(language=language)), Worksheet(wire, ()), CardWishes(taught=False))
    (told,) = [row for row in says.cautions if row.when == "wire"]
    for name in ("ID-1", "index-3x5", "A6"):
        shown = " ".join(words(side) for side in pocket_card(says, card_size(name), OURS).faces)
        assert told.short in shown, name


def test_a_shop_is_named_on_the_card() -> None:
    everything = " ".join(words(side) for side in sides(leader(SIX), ID_1))
    assert "The Wrack Line Bench" in everything


@pytest.mark.parametrize("count", [1, 6, 12, 20, 30])
@pytest.mark.parametrize("name", ["ID-1", "index-3x5", "pocket-tall"])
def test_no_row_is_lost_however_long_the_leader(name: str, count: int) -> None:
    of = level(count)
    shown = [run.text for side in sides(of, card_size(name)) for run in runs(side)]
    diameters = [f".0{80 - place}" for place in range(count)]
    assert [text for text in shown if text in diameters] == diameters  # each once, in their order


def test_a_long_leader_goes_on_under_its_name() -> None:
    card = sides(level(30), ID_1)
    assert len(card) > 3
    assert "Under test, continued" in words(card[1])
    for side in card[1:]:
        if "continued" in words(side):
            assert "CUT, in" in [run.text for run in runs(side)]


def test_more_sides_are_used_only_where_fewer_do_not_do() -> None:
    counts = [len(sides(level(count), ID_1)) for count in (1, 6, 12, 20, 30)]
    assert counts == sorted(counts)
    assert counts[:3] == [2, 2, 4]


def test_a_card_too_small_for_its_table_is_refused() -> None:
    with pytest.raises(TooSmall):
        sides(leader(SIX), CardSize("tiny", 30 * MM, 30 * MM))


def test_a_long_imprint_is_too_small_and_no_crash() -> None:
    job = job_of(replace(SHOP, name="W" * 60))
    text = card_text(job, Worksheet(leader(SIX), ()), CardWishes())
    with pytest.raises(TooSmall, match="mm wide, its place only"):
        pocket_card(text, ID_1, OURS)


def knots(told: Told) -> list[str]:
    """Return what is said of knots, loops and laps as it is set."""
    of = told.leader
    between = map(told.tied, range(1, len(of.pieces)))
    ends = (told.end_and_loop(of.butt), told.end_and_loop(of.fly))
    return [prepare(word) for word in (*between, *ends, *told.lap_numbers())]


@pytest.mark.parametrize("name", SIZES)
@given(seed=seeds, count=counts)
@example(seed=7467, count=None)  # a knot's words ran into its lap on a trading card
@settings(max_examples=8, deadline=None)
def test_a_card_is_readable_and_whole(name: str, seed: int, count: int | None) -> None:
    of, size = tieable(seed, count), card_size(name)
    for way in (size, CardSize(size.name, size.height, size.width)):
        try:
            card = sides(of, way)
        except TooSmall:
            continue
        for side in card:
            assert faults(side, INSET) == []
        shown = " ".join(words(side) for side in card)
        assert all(knot in shown for knot in knots(Told(of, ENGLISH)))


@given(written=recipes)
@settings(max_examples=25, deadline=None)
def test_any_recipe_is_set_readably_or_refused(written: Recipe) -> None:
    of = leader(written)
    if not is_tieable(of):
        return
    for size in (ID_1, INDEX, card_size("A6")):
        try:
            card = sides(of, size)
        except (TooSmall, NoGlyph, TextTooLong):
            continue
        assert list(chain.from_iterable(faults(side, INSET) for side in card)) == []


def test_a_ruled_card_has_its_ruler_at_the_edge_of_the_last_side() -> None:
    plain = sides(leader(SIX), card_size("index-5x8"), CardWishes())
    ruled = sides(leader(SIX), card_size("index-5x8"), CardWishes(ruler=True))
    # Its zero stands at the inset, and its ticks begin on the card's own edge, at y = 0.
    assert any(("move", INSET, 0.0) in path.steps for path in paths(ruled[-1]))
    for face in (*ruled[:-1], *plain):
        assert not any(("move", INSET, 0.0) in path.steps for path in paths(face))


@pytest.mark.parametrize("count", [2, 6, 14, 20, 30])
@pytest.mark.parametrize("name", ["ID-1", "A7", "index-3x5"])
def test_the_front_of_every_card_of_a_leader_bears_its_name(name: str, count: int) -> None:
    for front in sides(level(count), card_size(name))[::2]:
        assert "Under test" in words(front)


def test_a_new_tippet_s_cost_takes_no_side_of_its_own() -> None:
    text = says(leader(SIX))
    for size in (ID_1, INDEX):
        silent = pocket_card(replace(text, renewals=()), size, OURS).faces
        assert len(pocket_card(text, size, OURS).faces) == len(silent)


def test_a_new_tippet_s_cost_is_told_where_there_is_room() -> None:
    told = pocket_card(says(leader(SIX)), card_size("A6"), OURS).faces
    assert any("of section 5: good for 1" in words(face) for face in told)
