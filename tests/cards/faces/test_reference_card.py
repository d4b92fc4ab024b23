import pytest
from msgspec.structs import replace

from tagend.cards.base.units import parse_diameter, parse_length
from tagend.cards.faces.deck import Reference
from tagend.cards.faces.reference_card import reference_tables
from tagend.cards.leader.choosing import butt_end, fly_end, joints
from tagend.cards.practice.shop_file import Shop, practice_of, read_shop
from tagend.cards.words.language import ENGLISH, languages, wording_in
from tests.written import PRACTICE, recipe, section

THUMBED = ("butt_by_line", "salt_butt", "loop_sizes", "tippet_by_hook", "discard")


def table(heading: str, units: str | None = None) -> Reference:
    practice = practice_of(Shop(units=units))
    (found,) = (t for t in reference_tables(practice, ENGLISH) if t.heading.startswith(heading))
    return found


@pytest.mark.parametrize("language", languages())
def test_what_is_common_practice_says_so(language: str) -> None:
    wording = wording_in(language, None)
    headings = [each.heading for each in reference_tables(PRACTICE, wording)]
    for key in THUMBED:
        said = wording.say("common_practice", what=wording.say(key, unit="in"))
        assert said in headings


def test_the_butt_and_the_tip_stand_below_the_weight() -> None:
    (_, *weights), (_, *tips), (_, *butts) = table("Butt by").rows
    assert dict(zip(weights, zip(tips, butts, strict=True), strict=True))["5-6"] == (
        "0.032",  # 0.0315, and halves go up
        "0.021",
    )


def test_metric_sizes_are_in_millimetres() -> None:
    found = table("Butt by", "cm")
    assert "mm" in found.heading
    (_, *butts) = found.rows[2]
    assert butts[2] == f"{float(parse_diameter('0.021 in').mm):.2f}"


def test_salt_water_takes_a_least_strength_or_a_range() -> None:
    # neflyrodders.org, Building your own saltwater leaders.
    assert table("Butt in salt").rows == (
        ("line 8", "30 lb or more"),
        ("line 9-10", "40 lb to 50 lb"),
    )


def test_the_loops_are_a_persons_own() -> None:
    knots = replace(PRACTICE.knots, loop_mm=parse_length("1 1/2 in").mm)
    tables = reference_tables(replace(PRACTICE, knots=knots), ENGLISH)
    rows = next(t.rows for t in tables if t.heading.startswith("Loops"))
    assert rows == (("butt", "1 1/2 in"), ("fly", "1/4 in"))


def test_a_tippet_is_never_one_size() -> None:
    assert ("hook 12", "3X-4X") in table("Tippet by hook").rows


def test_discarding_names_no_figure() -> None:
    rows = table("Discard").rows
    assert len(rows) == 4
    assert not any(sign.isdigit() for (cell,) in rows for sign in cell)


# A recipe for each row of "Knot by job", and the place in it that the row tells of.
JOBS = {
    "job_step": (recipe(section("3 ft", "0.012 in"), section("3 ft", "0.010 in")), "joint"),
    "job_mixed": (
        recipe(section("3 ft", "0.012 in"), section("3 ft", "0.010 in", "fluorocarbon")),
        "joint",
    ),
    "job_guard": (recipe(section("3 ft", "0.017 in"), section("3 ft", "0.010 in")), "joint"),
    "job_wire": (recipe(section("3 ft", "0.015 in"), section("6 in", "0.012 in", "wire")), "joint"),
    "job_bought": (
        recipe(section("3 ft", "0.030 in", "furled thread"), section("3 ft", "0.017 in")),
        "joint",
    ),
    "job_butt": (recipe(section("3 ft", "0.021 in"), section("3 ft", "0.017 in")), "butt"),
    "job_level": (recipe(section("9 ft", "0.015 in")), "butt"),
    "job_fly": (recipe(section("3 ft", "0.008 in")), "fly"),
}
OWN = (
    "",
    '"same line" = "uni to uni"\nfly = "davy"',
    # The first can't be tied there, or only where practice speaks against it.
    'wire = ["blood"]\n"bought butt" = ["blood"]\n"nylon to fluorocarbon" = ["blood"]',
    '"big step" = ["blood", "albright"]\nbutt = "perfection loop"\nfly = "haywire twist"',
)


@pytest.mark.parametrize("own", OWN)
def test_the_knot_of_each_job_is_the_rules_choice(own: str) -> None:
    practice = practice_of(read_shop(f"[choice]\n{own}\n".encode()))
    ratio = f"{float(practice.rules['step'].limits[0]):g}"
    (found,) = (
        each.rows
        for each in reference_tables(practice, ENGLISH)
        if each.heading == ENGLISH.say("knot_by_job")
    )
    rows = {row[0]: row[1] for row in found}
    assert len(rows) == len(JOBS)
    for job, (leader, place) in JOBS.items():
        tied = {"butt": butt_end(leader, practice).knot, "fly": fly_end(leader, practice).knot}
        tied["joint"] = next((joint.knot for joint in joints(leader, practice)), None)
        assert rows[ENGLISH.say(job, ratio=ratio)] == getattr(tied[place], "name", None), job
