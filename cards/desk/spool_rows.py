"""The spools of the rack's file: shown, changed in their fields, and written with comments kept."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/rack/spools", spools_page)]


def spools_page(desk: Desk, request: Request) -> Shown:
    """Show the spools in their fields."""
    return page(desk, "rack", part="spools")
