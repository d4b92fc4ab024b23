"""What is printed: chosen, counted and shown before, then as a PDF."""

import hashlib
from collections.abc import Sequence
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json, Shown, as_file, page, posted, shown
from tagend.cards.desk.print_chosen import chosen_recipes, job_for, tied_on
from tagend.cards.desk.print_wishes import KINDS, ToPrint
from tagend.cards.desk.typed import Typed
from tagend.cards.disk.seal import sealed
from tagend.cards.leader.worksheet import Worksheet, worksheet
from tagend.cards.practice.shop_file import UNITS
from tagend.cards.printing.card_svg import cards_svg
from tagend.cards.printing.cards import CardWishes
from tagend.cards.printing.job import Job, Printed
from tagend.cards.printing.printed_words import left_out_lines, pages_told
from tagend.cards.recipe.recipe_text import file_name
from tagend.cards.variants.variant import variants_beside
from tagend.cards.words.desk_words import without_options
from tagend.cards.words.heed_words import heed_lines
from tagend.cards.words.language import languages
from tagend.cards.words.leader_words import Told
from tagend.layouts.base.faults import under
from tagend.layouts.svg.png import png_of
from tagend.layouts.svg.svg import sheet_svg

_KEPT = 8  # prints, for the windows that show them
_DPI = 300  # of a picture, as a printer would set it


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/print", prints_page),
        posted("/print/plan", plan),
        shown("/prints/{id}/{number:int}.svg", page_picture),
        shown("/prints/{id}/{name}.pdf", pdf),
        shown("/png/{name}", card_picture),
    ]


def prints_page(desk: Desk, request: Request) -> Shown:
    """Show the screen; `leader` and `variant` in its address are chosen."""
    job, asked = desk.job(), request.query_params
    return page(
        desk,
        "print",
        leaders=[
            {"file": kept.name, "name": kept.recipe.name, "use": kept.recipe.use or "",
             "variants": [variant.name for variant in kept.recipe.variants]}
            for kept in desk.leaders() if kept.recipe
        ],
        asked=[[name, asked.get("variant", "")] for name in asked.getlist("leader")],
        kind=asked["kind"] if asked.get("kind") in KINDS else "cards",
        kinds=[*KINDS],
        known={"paper": list(job.stock.papers.values()), "size": list(job.stock.cards.values()),
               "stock": list(job.stock.labels.values())},
        usual={"paper": job.usual["paper"], "size": job.usual["card"],
               "stock": job.usual["labels"]},
        languages=languages(),
        units=UNITS,
        has_rack=desk.rack() is not None,
    )  # fmt: skip


def plan(desk: Desk, said: Json) -> Json:
    """Return what a print would be: how much, what to heed, and where to get its pages.

    One of a leader that has an error is not made, unless the person wants it anyway.
    """
    typed, kind = Typed(said["typed"]), Typed(said).one_of("kind", [*KINDS])
    job, wording = job_for(desk, typed), desk.job().wording
    recipes = chosen_recipes(said["leaders"], desk, job, typed)
    if kind == "labels":
        recipes = tied_on(recipes, typed, wording.language)
    sheets = [worksheet(recipe, job.practice) for recipe in recipes]
    beside = variants_beside(recipes, job.practice) if kind == "cards" else ()
    heeded = [*sheets, *(worksheet(recipe, job.practice) for recipe in beside)]
    told = (Told(sheet.leader, wording, findings=sheet.findings) for sheet in heeded)
    answer: dict[str, Any] = {
        "heed": list(heed_lines(told, wording)),
        "wrong": any(sheet.is_wrong for sheet in heeded),
        "places": _places(job, typed) if kind == "labels" else None,
    }
    if answer["wrong"] and not typed.flag("anyway"):
        return answer
    printed = KINDS[kind](ToPrint(job, sheets, desk.rack(), typed))
    lines = [pages_told(printed, wording), *left_out_lines(printed, wording)]
    first, *left_out = (without_options(line, wording.language) for line in lines)
    return {
        **answer,
        "told": first,
        "left_out": left_out,
        "pages": [[sheet.width, sheet.height] for sheet in printed.sheets],
        "at": _keep(desk, printed),
        "name": _called(kind, sheets),
    }


def page_picture(desk: Desk, request: Request) -> Shown:
    """Answer with a page of a print as it will be."""
    printed, number = desk.prints.get(request.path_params["id"]), request.path_params["number"]
    if printed is None or not 1 <= number <= len(printed.sheets):
        return Response(status_code=404)
    svg = sheet_svg(printed.sheets[number - 1], title=str(number))
    # Its address changes with the print.
    kept = {"cache-control": "private, max-age=86400, immutable"}
    return Response(svg, media_type="image/svg+xml", headers=kept)


def pdf(desk: Desk, request: Request) -> Shown:
    """Answer with a print: to look at, or with `keep` in the address as a file."""
    printed = desk.prints.get(request.path_params["id"])
    if printed is None:
        return page(desk, "missing", 404)
    name = f"{request.path_params['name']}.pdf"
    keep = "keep" in request.query_params
    return as_file(sealed(printed), "application/pdf", name, keep=keep)


def card_picture(desk: Desk, request: Request) -> Shown:
    """Answer with a picture of a leader's card, of a `size` and a `variant`, as a file."""
    typed = Typed(request.query_params)
    job, variant = job_for(desk, typed), typed.text("variant") or ""
    (recipe,) = chosen_recipes([[request.path_params["name"], variant]], desk, job, Typed({}))
    sheet = worksheet(recipe, job.practice)
    wishes = CardWishes(size=typed.text("size"), taught=not typed.flag("brief"))
    png = png_of(cards_svg(job, sheet, wishes), _DPI)
    return as_file(png, "image/png", file_name(recipe.name).replace(".toml", ".png"), keep=True)


def _places(job: Job, typed: Typed) -> dict[str, object] | None:
    """Return where the labels of a sheet are, in hundredths of the sheet; of a roll nothing."""
    with under("stock"):
        sheet = job.label_sheet(typed.text("stock"))
    if sheet.on_roll:
        return None
    across, down = 100 / sheet.paper.width, 100 / sheet.paper.height
    return {
        "columns": sheet.columns,
        "width": sheet.width * across,
        "height": sheet.height * down,
        "at": [[x * across, y * down] for x, y in sheet.places],
    }


def _keep(desk: Desk, printed: Printed) -> str:
    """Keep a print for the pages that show it; return what it is found by."""
    name = hashlib.sha256(printed).hexdigest()[:24]
    desk.prints[name] = printed
    for old in list(desk.prints)[:-_KEPT]:
        desk.prints.pop(old, None)
    return name


def _called(kind: str, sheets: Sequence[Worksheet]) -> str:
    first, *more = sheets
    name = file_name(first.leader.recipe.name).removesuffix(".toml")
    return f"{name}-{kind}" if not more else f"{kind}-{len(sheets)}"
