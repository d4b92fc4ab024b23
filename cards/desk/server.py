"""The folder and a port in; its page served on this machine alone, until a person ends it."""

import secrets
import socket
import webbrowser
from collections.abc import Callable
from contextlib import suppress

import uvicorn

from tagend.cards.desk.app import app_of
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.guard import SECRET, Guard
from tagend.layouts.base.faults import refused

_HERE = "127.0.0.1"


def serve(desk: Desk, port: int, tell: Callable[[str], None], *, browse: bool) -> None:
    """Serve the desk until Ctrl-C or its own button; `tell` is given the address with its secret.

    Raises `Refused` where the port cannot be had; 0 is any that is free.
    """
    with _listening(port) as listening:
        port, secret = listening.getsockname()[1], secrets.token_urlsafe(32)
        app = Guard(app_of(desk), port, secret)
        server = uvicorn.Server(
            uvicorn.Config(
                app,
                log_config=None,
                access_log=False,
                server_header=False,
                lifespan="off",
                ws="none",
                timeout_graceful_shutdown=2,
            )
        )
        desk.end = lambda: setattr(server, "should_exit", True)
        address = f"http://{_HERE}:{port}/?{SECRET}={secret}"
        tell(address)
        if browse:
            webbrowser.open(address)  # the socket listens already, so that nobody comes too early
        with suppress(KeyboardInterrupt):  # Ctrl-C is how it ends
            server.run(sockets=[listening])


def _listening(port: int) -> socket.socket:
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    # So that the port of a desk that has just ended can be had again.
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((_HERE, port))
        listening.listen()
    except OSError as error:
        listening.close()
        raise refused(
            f"port {port} cannot be had: {error.strerror}", "name another, or 0 for any", "--port"
        ) from None
    return listening
