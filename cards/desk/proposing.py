"""A taper asked for with sliders: the best few drawn beside each other, and one of them kept."""

from collections.abc import Callable, Sequence
from typing import TypeVar

from cfractions import Fraction
from msgspec.structs import replace
from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.base.shown_lengths import long_length, thickness
from tagend.cards.base.units import Diameter, parse_diameter, parse_length
from tagend.cards.base.value_readers import plain_text
from tagend.cards.desk.book_here import read_field
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.leader import written
from tagend.cards.desk.page import Json, Shown, page, part, posted, shown
from tagend.cards.desk.tapers_drawn import pictures, told_of
from tagend.cards.leader.worksheet import worksheet
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.propose.asking import AskedTaper, wish_of
from tagend.cards.propose.proposal import propose
from tagend.cards.propose.wish import USUAL_SHARES, Shares, read_shares
from tagend.cards.recipe.recipe import NAME_MOST
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.recipe.recipe_text import recipe_text
from tagend.cards.words.taper_words import taper_name
from tagend.layouts.base.faults import refused, under
from tagend.layouts.base.quantities import INCH_MM

T = TypeVar("T")

_SHARES = ("butt_share", "taper_share", "tippet_share")
# Where the sliders stand first: a trout leader of common practice.
_FIRST_MM = {"total": Fraction(2743), "butt": Fraction("0.55"), "tippet": Fraction("0.25")}


# What a slider runs over: in mm, and as it is written.
Run = Sequence[tuple[Fraction, str]]


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/rack/taper", taper_page),
        posted("/rack/propose", proposed),
        posted("/rack/keep", keep),
    ]


def taper_page(desk: Desk, request: Request) -> Shown:
    """Show the sliders."""
    practice, rack = desk.job().practice, desk.rack()
    sizes = _sizes(rack, practice)
    runs = {"total": _totals(practice), "butt": sizes, "tippet": sizes}
    return page(
        desk,
        "rack",
        part="taper",
        rack=rack,
        sliders={
            name: {"texts": [text for _, text in run], "place": _nearest(run, _FIRST_MM[name])}
            for name, run in runs.items()
        },
        shares=dict(zip(_SHARES, _of(USUAL_SHARES), strict=True)),
        materials=[each.name for each in practice.materials],
    )


def proposed(desk: Desk, said: Json) -> Json:
    """Return the best few tapers for what is asked: told, drawn to one scale, and their recipes."""
    job = desk.job()
    sizes = read_field(said, "diameters", _read_sizes)
    rack = desk.rack()
    if sizes is None and rack is None:
        raise refused("there is no rack in this folder", "write sizes that can be had", "diameters")
    wish, strands = wish_of(_asked(said), sizes or rack or (), job.practice)
    name = taper_name(wish.total, wish.thickest, wish.tippet.diameter, job.wording)
    found = propose(wish, strands, job.practice, name)
    named = [replace(each.recipe, name=str(place)) for place, each in enumerate(found, 1)]
    all_told = job.told([worksheet(recipe, job.practice) for recipe in named])
    return {
        "html": part(
            desk,
            "proposals",
            proposals=[told_of(*each) for each in zip(found, all_told, strict=True)],
        ),
        "pictures": list(pictures(job, all_told, float(said.get("width", 0)))),
        "recipes": [recipe_text(each.recipe) for each in found],
        "places": {
            "total": _nearest(_totals(job.practice), wish.total.mm),
            "butt": _nearest(_sizes(rack, job.practice), wish.butt.mm),
            "tippet": _nearest(_sizes(rack, job.practice), wish.tippet.diameter.mm),
        },
    }


def keep(desk: Desk, said: Json) -> Json:
    """Write a taper that was proposed into the folder, under the name that a person gives it."""
    recipe = read_recipe(str(said["recipe"]).encode(), desk.job().practice)
    name = read_field(said, "name", lambda text: plain_text(text, NAME_MOST))
    return written(desk, replace(recipe, name=name or recipe.name))


def _asked(said: Json) -> AskedTaper:
    """Return what the fields of the page ask for; raises `Refused`, which names the field."""
    bought, line_tip = read_field(said, "bought", str), _diameter(said, "line_tip")
    tippet = " ".join(str(said.get(name) or "").strip() for name in ("tippet", "tippet_material"))
    with under("butt_share"):
        shares = read_shares("/".join(str(said.get(name) or "") for name in _SHARES))
    return AskedTaper(
        total=_given(said, "total", parse_length),
        tippet=tippet.strip(),
        butt=None if bought or line_tip else _given(said, "butt", parse_diameter),
        line_tip=line_tip,
        step=_diameter(said, "step"),
        shares=shares,
        material=read_field(said, "material", str),
        bought=bought,
        sighter=read_field(said, "sighter", str),
        guard=read_field(said, "guard", str),
    )


def _given(said: Json, name: str, read: Callable[[str], T]) -> T:
    value = read_field(said, name, read)
    if value is None:
        raise refused("nothing is written here", "write a measure with its unit", name)
    return value


def _diameter(said: Json, name: str) -> Diameter | None:
    return read_field(said, name, parse_diameter)


def _read_sizes(text: str) -> tuple[Diameter, ...]:
    return tuple(parse_diameter(size) for size in text.split(","))


def _totals(practice: Practice) -> Run:
    """Return the lengths of leaders: every quarter of a foot, or every 10 cm."""
    unit = practice.unit or "in"
    step = 3 * INCH_MM if unit == "in" else Fraction(100)
    return [(place * step, long_length(place * step, unit)) for place in range(14, 81)]


def _sizes(rack: Rack | None, practice: Practice) -> Run:
    """Return the sizes that the rack has, or those that are common, thinnest first."""
    if rack is not None:
        of = {spool.diameter.mm: spool.diameter.plain for spool in rack.spools}
        return sorted(of.items())
    unit = practice.unit or "in"
    step = INCH_MM / 1000 if unit == "in" else Fraction("0.02")
    return [(place * step, thickness(place * step, unit)) for place in range(5, 31)]


def _nearest(run: Run, mm: Fraction) -> int:
    return min(range(len(run)), key=lambda at: abs(run[at][0] - mm))


def _of(shares: Shares) -> tuple[int, int, int]:
    return shares.butt, shares.taper, shares.tippet
