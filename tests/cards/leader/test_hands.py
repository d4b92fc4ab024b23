"""A leader tied as hands tie it from the printed list comes out as long as it was asked for."""

import json
import tomllib
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tagend.cards.cli.worksheet_lines import cut_lines
from tagend.cards.leader.leader import check_tieable
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.leader.worksheet_json import json_line
from tagend.cards.practice.shop_file import practice_of, read_shop
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.layouts.base.faults import Refused
from tests.hands import Page, Split, knots_mm, length_mm, middles, read_page, sections_mm
from tests.tree import ROOT

INCH = Fraction("25.4")

STRANDS = {
    "nylon": "line",
    "hard nylon": "line",
    "fluorocarbon": "line",
    "wire": "wire",
    "coated wire": "stranded wire",
    "furled thread": "thread",
}
KNOTS = {
    name: knot
    for name, knot in tomllib.loads((ROOT / "cards/practice/knots.toml").read_text()).items()
    if isinstance(knot, dict)
}
ENDS = {
    place: [name for name in KNOTS if place in KNOTS[name]["places"]]
    for place in ("butt", "line", "fly")
}


def joints(above: str, below: str) -> list[str]:
    """Return the knots that can join two strands: wire winds on nothing, nor wire on it."""
    both, strands = {above, below}, {"wire", "stranded wire"}
    return [
        name
        for name, knot in KNOTS.items()
        if "joint" in knot["places"]
        and both <= set(knot.get("on", ["line"]))
        and ("ties" in knot or not both <= strands)
    ]


@dataclass(frozen=True, slots=True)
class Bench:
    """A recipe as it is written, the marks of the tape, and what the tape shows of the recipe."""

    recipe: str
    shop: str
    mark_mm: Fraction
    wanted: tuple[str, ...]  # the length of each section
    as_cut: bool


@dataclass(frozen=True, slots=True)
class Printed:
    page: Page
    takes: list[Split]  # of each joint, of the pieces above and below it


# The tape of a shop, in the unit that lengths are written in, and how far its marks are apart.
TAPES = {
    "in": {"": INCH / 4, "1/16 in": INCH / 16, "1/8 in": INCH / 8, "1/2 in": INCH / 2},
    "cm": {"": Fraction(5), "1 mm": Fraction(1), "2 mm": Fraction(2), "1 cm": Fraction(10)},
}


@st.composite
def benches(draw: st.DrawFn, as_cut: bool = False) -> Bench:
    """Return any recipe whose lengths a tape shows, as a person writes it."""
    unit = draw(st.sampled_from(["in", "cm"]))
    count = draw(st.integers(1, 12))
    least = 14 if as_cut else 3
    kinds = [draw(st.sampled_from(["nylon", "hard nylon", "fluorocarbon"])) for _ in range(count)]
    if draw(st.booleans()):
        kinds[-1] = draw(st.sampled_from(["wire", "coated wire"]))
    if count > 1 and draw(st.booleans()):
        kinds[0] = "furled thread"
    lengths = [draw(_lengths(unit, least)) for _ in range(count)]
    text = [f'name = "Any"\nlengths = "{"cut" if as_cut else "finished"}"', _butt(draw, kinds[0])]
    for place, (kind, length) in enumerate(zip(kinds, lengths, strict=True)):
        below = kinds[place + 1] if place + 1 < count else None
        text.append(_section(draw, kind, length, below, unit))
    if (fly := draw(st.sampled_from(["", *ENDS["fly"], "none"]))) and _holds(fly, kinds[-1]):
        text.append(f'[fly]\nknot = "{fly}"')
    tape, mark_mm = draw(st.sampled_from(sorted(TAPES[unit].items())))
    shop = 'name = "Bench"\n' + (f'tape = "{tape}"\n' if tape else "")
    shop += draw(st.sampled_from(["", '[lap]\nblood = "11 in"\n']))
    return Bench("\n".join(text), shop, mark_mm, tuple(lengths), as_cut)


@st.composite
def _lengths(draw: st.DrawFn, unit: str, least_in: int) -> str:
    """Return a length on the marks of a tape, now and then a range."""
    if unit == "cm":
        tenths = st.integers(25 * least_in, 2000)
        low, high = sorted((draw(tenths), draw(tenths)))
        low_text, text = (f"{each // 10}.{each % 10} cm" for each in (low, high))
    else:
        sixteenths = st.integers(16 * least_in, 16 * 70)
        low, high = sorted((draw(sixteenths), draw(sixteenths)))
        low_text, text = (f"{each // 16} {each % 16}/16 in" for each in (low, high))
    return f"{low_text} to {text}" if low < high and draw(st.integers(0, 4)) == 0 else text


def _holds(knot: str, kind: str) -> bool:
    return knot == "none" or STRANDS[kind] in KNOTS[knot].get("on", ["line"])


def _butt(draw: st.DrawFn, kind: str) -> str:
    end = draw(st.sampled_from(["", *ENDS["butt"], *ENDS["line"], "none"]))
    if not end or not _holds(end, kind):
        return ""
    loop = draw(st.sampled_from(["", 'loop = "1/2 in"', 'loop = "3 cm"']))
    return f'[butt]\nend = "{end}"\n{loop if end != "none" else ""}'


def _section(draw: st.DrawFn, kind: str, length: str, below: str | None, unit: str) -> str:
    thou = draw(st.integers(4, 30))
    diameter = f"0.{thou:03} in" if unit == "in" else f"{thou * 0.0254:.2f} mm"
    text = [f'[[section]]\nlength = "{length}"\ndiameter = "{diameter}"\nmaterial = "{kind}"']
    text += ["bought = true"] * (STRANDS[kind] == "line" and draw(st.integers(0, 9)) == 0)
    if below is not None:
        can = joints(STRANDS[kind], STRANDS[below])
        if knot := draw(st.sampled_from([None, *can, *can])):
            text.append(f'knot = "{knot}"')
        if STRANDS[kind] != "thread" and draw(st.integers(0, 6)) == 0:
            text.append(f'dropper = "{draw(_lengths(unit, 2)).split(" to ")[0]}"')
    return "\n".join(text)


def printed(bench: Bench) -> Printed:
    """Return what `tagend cuts` prints, and what its JSON says of each joint's two sides."""
    practice = practice_of(read_shop(bench.shop.encode()))
    sheet = worksheet(read_recipe(bench.recipe.encode(), practice), practice)
    try:
        check_tieable(sheet.leader)
    except Refused:
        assume(False)
    sections = json.loads(json_line(sheet))["sections"]
    takes = [tuple(Fraction(str(mm)) for mm in each["takes_mm"]) for each in sections[:-1]]
    return Printed(read_page(cut_lines(sheet.leader)), [(a, b) for a, b in takes])


@given(benches())
@settings(max_examples=150, deadline=None)
def test_a_leader_tied_from_the_list_is_as_long_as_it_was_asked_for(bench: Bench) -> None:
    of = printed(bench)
    page = of.page
    asked = [
        length_mm(row.tied if row.bought else wanted)
        for row, wanted in zip(page.rows, bench.wanted, strict=True)
    ]
    knots = knots_mm(page, of.takes)
    for measured, wanted in zip(sections_mm(knots), asked, strict=True):
        assert abs(measured - wanted) <= bench.mark_mm
    for total in (knots, knots_mm(page, middles(page))):
        assert abs(total[-1] - total[0] - sum(asked)) <= bench.mark_mm
    rounded = INCH / 32 if " in" in page.total or " ft" in page.total else 5
    assert abs(length_mm(page.total) - sum(asked)) <= rounded
