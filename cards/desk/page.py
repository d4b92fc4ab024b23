"""What every screen shares: its template filled, its answers, and what is refused in words."""

import json
import logging
import re
from collections.abc import Callable, Mapping
from functools import cache, partial
from pathlib import Path
from typing import Any
from urllib.parse import quote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Route

from tagend.cards.desk.desk import Desk
from tagend.cards.words.desk_words import desk_words, refusal_lines, without_options
from tagend.cards.words.language import ENGLISH, Wording
from tagend.cards.words.refusal_words import told_in
from tagend.layouts.base.faults import Refused, refused

HERE = Path(__file__).parent
SCREENS = ("leaders", "rack", "print", "book", "bring", "shop")  # as the strip at the top has them

_HALVES = re.compile(rb"\\u[dD][89a-fA-F]")  # of characters, which need not be pairs

Json = Mapping[str, Any]
Shown = Response | Json


def desk_of(request: Request) -> Desk:
    """Return the desk that a request is for."""
    desk: Desk = request.app.state.desk
    return desk


def wording_here(desk: Desk) -> Wording:
    """Return the shop's wording, and English where its file cannot be read."""
    try:
        return desk.job().wording
    except Refused:
        return ENGLISH


def page(desk: Desk, screen: str, status: int = 200, **values: object) -> Response:
    """Return a screen of the desk; in its template `say` has the words of the page.

    `words` are those of all scripts, and of the screen's own.
    """
    said = desk_words(wording_here(desk).language)
    words = {**said["script"], **said.get(f"{screen}_script", {})}
    around = {"screen": screen, "screens": SCREENS, "words": words, "folder": desk.folder.name}
    return HTMLResponse(part(desk, screen, **around, **values), status)


def part(desk: Desk, template: str, **values: object) -> str:
    """Return the HTML of a template: of a part of a screen that comes later, say."""
    wording = wording_here(desk)
    said = desk_words(wording.language)
    filled = _templates().get_template(f"{template}.html")
    return filled.render(
        language=wording.language, say=partial(_say, said), term=wording.term, **values
    )


def shown(path: str, show: Callable[[Desk, Request], Shown]) -> Route:
    """Return the route of what is only looked at."""

    async def endpoint(request: Request) -> Response:
        return await _answered(show, desk_of(request), request)

    return Route(path, endpoint, name=show.__name__)


def posted(path: str, do: Callable[[Desk, Json], Shown]) -> Route:
    """Return the route of what the page's scripts ask for, with what they say as JSON."""

    async def endpoint(request: Request) -> Response:
        said = said_in(await request.body())
        return await _answered(do, desk_of(request), said)

    return Route(path, endpoint, methods=["POST"], name=do.__name__)


def said_in(data: bytes) -> Json:
    """Return what the page's scripts say, as JSON; raises `Refused`."""
    try:
        said = json.loads(data)
        if _HALVES.search(data):  # which no answer could hold
            json.dumps(said, ensure_ascii=False).encode()
    except (ValueError, RecursionError):
        said = None
    if not isinstance(said, dict):
        raise _strange()
    return said


def received(path: str, take: Callable[[Desk, str, bytes], Shown]) -> Route:
    """Return the route of a file that is dropped on the page; its name comes in the address."""

    async def endpoint(request: Request) -> Response:
        data, name = await request.body(), request.query_params.get("name", "")
        return await _answered(take, desk_of(request), name, data)

    return Route(path, endpoint, methods=["POST"], name=take.__name__)


def as_file(data: bytes, kind: str, name: str, *, keep: bool) -> Response:
    """Return the answer that is a file, to look at or to keep."""
    way = "attachment" if keep else "inline"
    said = f"{way}; filename*=UTF-8''{quote(name, safe='')}"
    return Response(data, media_type=kind, headers={"content-disposition": said})


def refusals(desk: Desk, refusal: Refused) -> list[dict[str, str]]:
    """Return what was refused in the shop's language: where, and a whole line."""
    language = wording_here(desk).language
    told = ((fault.where, told_in(language, fault)._replace(where="")) for fault in refusal.faults)
    return [{"where": where, "text": without_options(str(it), language)} for where, it in told]


async def show_refusal(request: Request, error: Exception) -> Response:
    """Answer what was refused: to a script as JSON, to a person as a page."""
    assert isinstance(error, Refused)
    desk = desk_of(request)
    if request.method == "POST":
        told = refusal_lines(error, wording_here(desk).language)
        return JSONResponse({"refused": told, "faults": refusals(desk, error)}, 422)
    return page(desk, "refused", 422, refusal=error, faults=refusals(desk, error))


async def _answered(work: Callable[..., Shown], *asked: object) -> Response:
    """Return the answer of a screen's function, beside which others go on.

    What the page never sends stumbles in it; should it be the page, the terminal tells where.
    """
    try:
        value = await run_in_threadpool(work, *asked)
        return value if isinstance(value, Response) else JSONResponse(value)
    except Refused:
        raise
    except _STUMBLED as error:
        _log.warning("%s stumbled", work.__name__, exc_info=error)
        raise _strange() from error


_log = logging.getLogger(__name__)
_STUMBLED = (ArithmeticError, AttributeError, LookupError, RecursionError, TypeError, ValueError)


def _strange() -> Refused:
    return refused("this is not what the page sends", "load the page again")


def _say(said: Mapping[str, Mapping[str, str]], key: str, **values: object) -> str:
    table, _, name = key.partition(".")
    words = said[table][name]
    return words.format(**values) if values else words


@cache
def _templates() -> Environment:
    return Environment(
        loader=FileSystemLoader(HERE / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
