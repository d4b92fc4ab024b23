"""What the rack makes, what is to be bought, and tapers proposed from it."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/rack", rack_page)]


def rack_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(desk, "rack")
