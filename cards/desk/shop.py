"""What belongs to the shop: its name and habits, its printer, its own hands."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/shop", shop_page)]


def shop_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(desk, "shop")
