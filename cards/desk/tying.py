"""The tying book: planned, tied, labelled, recalled, put right."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/book", tying_page)]


def tying_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(desk, "book")
