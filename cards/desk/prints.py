"""What is printed: chosen, counted and shown before, then as a PDF."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/print", prints_page)]


def prints_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(desk, "print")
