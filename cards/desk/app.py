"""A desk in; the app that serves its screens, each from a module of its own, out."""

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from tagend.cards.desk import bring, leader, leaders, prints, rack, shop, tying
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import HERE, Json, page, posted, show_refusal
from tagend.fonts.files import FONTS, font_path
from tagend.layouts.base.faults import Refused

_SCREENS = (leaders, leader, rack, prints, tying, bring, shop)


def app_of(desk: Desk) -> Starlette:
    """Return the app, still without its guard."""
    routes = [route for screen in _SCREENS for route in screen.routes()]
    app = Starlette(
        routes=[
            *routes,
            posted("/end", end),
            Route("/type/{font}.ttf", font_file),
            Mount("/static", _Static(directory=HERE / "static")),
        ],
        exception_handlers={Refused: show_refusal, 404: not_there},
    )
    app.state.desk = desk
    return app


def end(desk: Desk, said: Json) -> Json:
    """End the server."""
    desk.end()
    return {}


async def font_file(request: Request) -> Response:
    """Answer with one of the fonts that cards are set in."""
    font = request.path_params["font"]
    if font not in FONTS:
        return Response(status_code=404)
    return FileResponse(font_path(font), headers={"cache-control": "max-age=86400"})


async def not_there(request: Request, error: Exception) -> Response:
    """Answer for what there is none of."""
    return page(request.app.state.desk, "missing", 404)


class _Static(StaticFiles):
    """The page's own files, which the browser asks for again after an update."""

    def file_response(self, *args: object, **kwargs: object) -> Response:
        response = super().file_response(*args, **kwargs)  # type: ignore[arg-type]
        response.headers["cache-control"] = "no-cache"
        return response
