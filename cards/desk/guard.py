"""Who may ask: every request in; those of this page on to the app, all others refused.

A page elsewhere can send requests here, and a name of its own can be made to lead here. So a
request must name this host, come from this page, and bring the cookie that only the address with
the secret gives. What the page may load is told to the browser, and it is nothing from elsewhere.
"""

import secrets
from collections.abc import Mapping
from urllib.parse import parse_qs

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tagend.layouts.base.faults import refused

LARGEST = 64_000_000  # bytes of one request: a photo, or a shop's workbook
SECRET = "key"  # in the first address

_HEADERS: Mapping[str, str] = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; "
        "connect-src 'self'; img-src 'self' blob: data:; frame-src 'self' blob:; "
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    # With no-referrer the browser would send the origin `null` with a form of our own.
    "referrer-policy": "same-origin",
    "x-content-type-options": "nosniff",
}
_STRANGE = "This is a page for the person at this machine. Open the address that tagend printed.\n"


class Guard:
    """Wraps the app; `port` is where it listens, `secret` what the first address holds."""

    def __init__(self, app: ASGIApp, port: int, secret: str) -> None:
        self._app = app
        self._hosts = {f"{name}:{port}" for name in ("127.0.0.1", "localhost", "[::1]")}
        self._secret = secret
        self._cookie = f"tagend-{port}"  # cookies are shared between the ports of a host

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":  # nothing else is served here
            return
        refusal = self._refusal(scope)
        if refusal is not None:
            await refusal(scope, receive, _with_headers(send))
        else:
            await self._app(scope, _bounded(receive), _with_headers(send))

    def _refusal(self, scope: Scope) -> Response | None:
        """Return the answer to a request that does not reach the app."""
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        if host not in self._hosts:
            return PlainTextResponse(_STRANGE, 421)
        own_origin = headers.get("origin", "") == f"http://{host}"
        if scope["method"] not in ("GET", "HEAD") and not own_origin:
            return PlainTextResponse(_STRANGE, 403)
        if headers.get("sec-fetch-site", "none") not in ("same-origin", "none"):
            return PlainTextResponse(_STRANGE, 403)
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > LARGEST:
            return PlainTextResponse("This is too large.\n", 413)
        given = parse_qs(scope["query_string"].decode("ascii", "replace")).get(SECRET, [""])[0]
        if given and self._fits(given):
            return self._entered()
        return None if self._fits(self._brought(headers)) else PlainTextResponse(_STRANGE, 403)

    def _entered(self) -> Response:
        """Return the way on from the first address, which takes the secret out of sight."""
        answer = RedirectResponse("/", 303)
        answer.set_cookie(self._cookie, self._secret, path="/", httponly=True, samesite="strict")
        return answer

    def _brought(self, headers: Headers) -> str:
        pairs = (pair.strip().partition("=") for pair in headers.get("cookie", "").split(";"))
        return next((value for name, _, value in pairs if name == self._cookie), "")

    def _fits(self, given: str) -> bool:
        return secrets.compare_digest(given.encode(), self._secret.encode())


def _bounded(receive: Receive) -> Receive:
    """Return what hands on a request, and refuses it once more has come than a file may have."""
    left = LARGEST

    async def bounded() -> Message:
        nonlocal left
        message = await receive()
        left -= len(message.get("body", b""))
        if left < 0:
            raise refused("this is too large", f"send at most {LARGEST // 10**6} MB")
        return message

    return bounded


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in _HEADERS.items():
                headers[name] = value
            headers.setdefault("cache-control", "no-store")
        await send(message)

    return sending
