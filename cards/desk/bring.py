"""Leaders brought in: from a table, a photo, a PDF or the text of a code."""

from starlette.requests import Request
from starlette.routing import BaseRoute

from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Shown, page, shown


def routes() -> list[BaseRoute]:
    """Return the routes of this screen."""
    return [shown("/bring", bring_page)]


def bring_page(desk: Desk, request: Request) -> Shown:
    """Show the screen."""
    return page(desk, "bring")
