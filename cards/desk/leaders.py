"""The leaders of the folder as small cards: found, sorted, begun, copied."""

from msgspec import Struct
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute

from tagend.cards.base.toml_edit import with_keys
from tagend.cards.desk.desk import SHOP, Desk, Kept
from tagend.cards.desk.draft import recipe_in
from tagend.cards.desk.leader import unit_of, written
from tagend.cards.desk.leader_drawn import front_of, title
from tagend.cards.desk.page import Json, Shown, page, posted, shown
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.sample_files import sample_files
from tagend.cards.recipe.recipe_file import read_recipe
from tagend.cards.words.desk_words import refusal_lines
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import Refused, refused
from tagend.layouts.paper.face import Face
from tagend.layouts.svg.svg import write_svg


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/", leaders_page),
        shown("/picture/{name}", picture),
        posted("/copy", copy),
        posted("/begin", begin),
        posted("/samples", samples),
    ]


class Shelved(Struct, frozen=True, kw_only=True):
    """A leader as the shelf shows it and sorts it; one that cannot be read with what is wrong."""

    file: str
    stamp: str
    name: str
    told: str
    is_whole: bool = True
    use: str = ""
    line_weight: int = 0
    length_mm: float = 0
    tippet_mm: float = 0


def leaders_page(desk: Desk, request: Request) -> Shown:
    """Show all leaders of the folder."""
    leaders = [_shelved(desk, kept) for kept in desk.leaders()]
    return page(desk, "leaders", leaders=leaders, **card_size(desk))


def picture(desk: Desk, request: Request) -> Shown:
    """Answer with the front of a leader's card, as it will be printed."""
    job, kept = desk.job(), desk.leader(request.path_params["name"])
    if kept is None or kept.recipe is None:
        return Response(status_code=404)
    try:
        front = front_of(job, kept.recipe)
    except Refused:  # which its own page tells
        size = job.card_size(None)
        front = write_svg(Face("", size.width, size.height, ()), title=kept.recipe.name)
    # Its address changes with the recipe.
    kept_long = {"cache-control": "private, max-age=31536000, immutable"}
    return Response(front, 200, kept_long, "image/svg+xml")


def copy(desk: Desk, said: Json) -> Json:
    """Write a leader once more under another name; comments go along."""
    kept, name = desk.leader(str(said["name"])), str(said["as"]).strip()
    if kept is None or kept.recipe is None:
        raise refused("there is no such leader in this folder", "load the page again")
    data = with_keys(read_bytes(str(desk.path(kept.name))), {"name": name})
    return written(desk, read_recipe(data, desk.job().practice), data)


def begin(desk: Desk, said: Json) -> Json:
    """Write a new leader of one section, to go on from."""
    practice = desk.job().practice
    metric = practice.unit in ("cm", "mm")
    length, diameter = ("100 cm", "0.50 mm") if metric else ("40 in", "0.020 in")
    row = {"length": length, "diameter": diameter, "material": "nylon"}
    draft = {"head": {"name": str(said["as"])}, "rows": [row]}
    return written(desk, recipe_in(draft, practice, unit_of(draft, practice)))


def samples(desk: Desk, said: Json) -> Json:
    """Put the invented shop's files into an empty folder."""
    if desk.leaders():
        raise refused("there are leaders here already", "load the page again")
    for name, data in sample_files():
        if desk.stamp(name) is None:
            write_whole(str(desk.path(name)), data)
    return {}


def _shelved(desk: Desk, kept: Kept) -> Shelved:
    job, stamp = desk.job(), hex(hash((kept.stamp, desk.stamp(SHOP))))
    if (recipe := kept.recipe) is None:
        assert kept.refusal is not None
        told = "\n".join(refusal_lines(kept.refusal, job.wording.language))
        return Shelved(file=kept.name, stamp=stamp, name=kept.name, told=told, is_whole=False)
    leader = desk.worked_out(kept)
    return Shelved(
        file=kept.name,
        stamp=stamp,
        name=recipe.name,
        told=title(Told(leader, job.wording)),
        use=recipe.use or "",
        line_weight=recipe.line_weight or 0,
        length_mm=float(leader.finished.high_mm),
        tippet_mm=float(leader.tippet.section.diameter.mm),
    )


def card_size(desk: Desk) -> dict[str, int]:
    """Return what a template is told of the place that a card's picture takes, in CSS pixels."""
    size = desk.job().card_size(None)
    sides = {"card_width": size.width, "card_height": size.height}
    return {name: round(points * 96 / 72) for name, points in sides.items()}
