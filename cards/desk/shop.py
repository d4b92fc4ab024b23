"""The shop: what stands in its file as fields, what is typed into them kept in it."""

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute

from tagend.cards.base.toml_edit import with_keys, with_value
from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.desk import SHOP, Desk
from tagend.cards.desk.hands import choices, knots_to_learn, laps, learned
from tagend.cards.desk.leader import base_of
from tagend.cards.desk.page import (
    Json,
    Shown,
    as_file,
    page,
    posted,
    received,
    refusals,
    shown,
    wording_here,
)
from tagend.cards.desk.typed import Typed
from tagend.cards.disk.disk import read_bytes, write_whole
from tagend.cards.disk.file_lock import alone
from tagend.cards.disk.shop_file_at import logo_in, logo_of, shop_file_of
from tagend.cards.faces.block import Scale
from tagend.cards.faces.imprint import imprint_block
from tagend.cards.practice.shop_file import UNITS, Shop, common_practice
from tagend.cards.practice.shop_keys import SHOP_KEYS, new_shop_file
from tagend.cards.printing.calibration import Edge, calibration_pdf
from tagend.cards.printing.job import job_of
from tagend.cards.printing.shop_check import check_shop
from tagend.cards.recipe.recipe_text import file_name
from tagend.cards.words.language import languages
from tagend.layouts.base.faults import Refused, refused, under
from tagend.layouts.paper.face import MM, Face
from tagend.layouts.sheets.printer import KEYS as MEASURED
from tagend.layouts.svg.svg import write_svg

_CARD = 85.6 * MM  # as wide as the imprint is shown
_EDGES: tuple[Edge | None, ...] = (None, "long-edge", "short-edge")
_ENDINGS = {b"\x89PNG": ".png", b"\xff\xd8\xff": ".jpg", b"%PDF-": ".pdf"}
_TABLES = ("choice", "lap", "printer")


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [
        shown("/shop", shop_page),
        posted("/shop/save", save),
        received("/shop/logo", take_logo),
        shown("/shop/imprint.svg", imprint),
        shown("/shop/printer.pdf", printer_page),
        posted("/shop/learn", learn),
    ]


def shop_page(desk: Desk, request: Request) -> Shown:
    """Show the shop's file in its fields, also where it is wrong."""
    data, faults = _there(desk), []
    said: Mapping[str, Any] = {}
    practice, stock = common_practice(), job_of(Shop()).stock
    try:
        said = read_toml(data) if data else {}
        job = desk.job()
        practice, stock = job.practice, job.stock
    except Refused as refusal:
        faults = refusals(desk, refusal)
    wording = wording_here(desk)
    return page(
        desk,
        "shop",
        faults=faults,
        base=base_of(data),
        keys={each.key: each for each in SHOP_KEYS},
        said={key.key: str(said.get(key.key, "")) for key in SHOP_KEYS},
        languages=languages(),
        units=UNITS,
        known={
            "paper": list(stock.papers.values()),
            "card": list(stock.cards.values()),
            "labels": list(stock.labels.values()),
        },
        usual=stock.defaults,
        choices=choices(_table(said, "choice"), practice, wording),
        laps=laps(_table(said, "lap"), practice, wording),
        printer={key: str(_table(said, "printer").get(key, "")) for key in MEASURED},
        steps={"front": wording.steps("measure_front"), "back": wording.steps("measure_back")},
        knots=knots_to_learn(practice, wording),
    )


def save(desk: Desk, said: Json) -> Json:
    """Keep what was changed in the shop's file, of which all else stays as it is.

    Where the file was changed since the page has read it, nothing is written, and that is told.
    """
    path = str(desk.path(SHOP))
    with alone(path):
        was = _there(desk)
        if base_of(was) != said.get("base") and not said.get("over"):
            return {"changed": True}
        after = _with(was, said)
        if after != was:
            _check(desk, after, path)
            write_whole(path, after)
    return {"base": base_of(after)}


def _with(data: bytes, said: Json) -> bytes:
    known = {each.key for each in SHOP_KEYS}
    keys = {key: str(text).strip() or None for key, text in said.get("keys", {}).items()}
    if strange := keys.keys() - known:
        raise refused("this is not what the page sends", "load the page again", min(strange))
    if data:
        read_toml(data)  # which tells of a slip by its line
    data = with_keys(data, keys) if data else new_shop_file(keys)
    for table in _TABLES:
        for key, text in reversed(said.get(table, {}).items()):
            text = str(text).strip()
            if table == "printer" and _BARE.fullmatch(text):  # as the page's steps have it
                text = f"{text} mm"
            data = with_value(data, table, str(key), text or None)
    return data


_BARE = re.compile(r"[-−]?\d+(?:\.\d+)?")


def _check(desk: Desk, data: bytes, path: str) -> None:
    """Raise `Refused` where nothing could be printed with such a file."""
    shop = shop_file_of(data, path)
    if shop.logo is not None:
        with under("logo"):
            desk.path(str(read_toml(data)["logo"]))
        logo_of(shop)
    check_shop(shop)


def take_logo(desk: Desk, name: str, data: bytes) -> Json:
    """Keep a picture in the folder under a name that is free; return that."""
    with under("logo"):
        logo_in(data)
    stem = file_name(Path(name.replace("\\", "/")).stem or "logo").removesuffix(".toml")
    ending = next((end for start, end in _ENDINGS.items() if data.startswith(start)), ".svg")
    kept, number = f"{stem}{ending}", 2
    with alone(str(desk.path(SHOP))):  # so that no other window takes the name
        while desk.stamp(kept) is not None and read_bytes(str(desk.path(kept))) != data:
            kept, number = f"{stem}-{number}{ending}", number + 1
        if desk.stamp(kept) is None:
            write_whole(str(desk.path(kept)), data)
    return {"name": kept}


def imprint(desk: Desk, request: Request) -> Shown:
    """Answer with the name, the line and the logo as they stand on a card."""
    job = desk.job()
    block = imprint_block(job.imprint, Scale(1.0, job.fonts), _CARD)
    if not block.items:
        return Response(status_code=404)
    face = Face("imprint", _CARD, block.height, block.items)
    return Response(write_svg(face, title="imprint"), media_type="image/svg+xml")


def printer_page(desk: Desk, request: Request) -> Shown:
    """Answer with the page that shows with a ruler what the printer does."""
    typed = Typed(request.query_params)
    edge, corrected = typed.one_of("backs", _EDGES), typed.flag("corrected")
    made = calibration_pdf(desk.job(), typed.text("paper"), edge, true=corrected)
    return as_file(made, "application/pdf", "printer-check.pdf", keep=False)


def learn(desk: Desk, said: Json) -> Json:
    """Return what a knot took of the line, and under which key that would be kept."""
    return learned(desk.job().practice, desk.shop(), Typed(said))


def _there(desk: Desk) -> bytes:
    """Return what the shop's file holds; where there is none, nothing."""
    return b"" if desk.stamp(SHOP) is None else read_bytes(str(desk.path(SHOP)))


def _table(said: Mapping[str, Any], key: str) -> Mapping[str, Any]:
    table = said.get(key)
    return table if isinstance(table, Mapping) else {}
