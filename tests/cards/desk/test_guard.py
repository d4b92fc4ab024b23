"""Who may ask of the desk, and what no question can do: each tried on a desk that is served."""

import asyncio
import json
import os
import random
import re
import shutil
import socket
import sys
from collections.abc import Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import httpx
import pytest
from starlette.routing import Route

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk import guard
from tagend.cards.desk.app import app_of
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.draft import draft_of
from tagend.cards.desk.guard import Guard
from tagend.cards.desk.leader import base_of
from tests.cards.desk.conftest import SAMPLES, Served
from tests.tree import ROOT


@pytest.fixture
def client(shop_folder: Served) -> Iterator[httpx.Client]:
    """A client that came by the right address, as a browser on this page asks."""
    headers = {"origin": shop_folder.origin, "sec-fetch-site": "same-origin"}
    with httpx.Client(base_url=shop_folder.origin, headers=headers, timeout=20) as client:
        client.get(shop_folder.address)
        yield client


def routes(method: str) -> list[Route]:
    """Return the desk's own routes of a method, whatever screens it has."""
    there = [each for each in app_of(Desk(SAMPLES)).routes if isinstance(each, Route)]
    return [route for route in there if method in (route.methods or ())]


def address(route: Route, name: str = "sandbar-eight.toml") -> str:
    return re.sub(r"\{\w+(:\w+)?\}", name, route.path)


def state(folder: Path) -> dict[str, tuple[int, int]]:
    there = ((str(path), path.lstat()) for path in folder.rglob("*"))
    return {path: (found.st_mtime_ns, found.st_size) for path, found in there}


def test_the_right_address_gives_a_cookie_and_goes_out_of_sight(shop_folder: Served) -> None:
    with httpx.Client() as client:
        entered = client.get(shop_folder.address)
        assert (entered.status_code, entered.headers["location"]) == (303, "/")
        cookie = entered.headers["set-cookie"].lower()
        assert "httponly" in cookie
        assert "samesite=strict" in cookie
        secret = shop_folder.address.rpartition("=")[2]
        page = client.get(shop_folder.origin)
        assert page.status_code == 200
        assert secret not in page.text + str(page.headers)


def test_only_this_machine_can_reach_it(served: Served) -> None:
    port = int(urlsplit(served.origin).port or 0)
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect(("192.0.2.1", 9))  # RFC 5737: nobody; nothing is sent
        own = probe.getsockname()[0]
    if own.startswith("127."):
        pytest.skip("this machine has no other address")
    with pytest.raises(OSError, match="refused"), socket.create_connection((own, port), 5):
        pass


STRANGE: Mapping[str, dict[str, str]] = {
    "another name that leads here": {"host": "evil.example:{port}"},
    "a name below localhost": {"host": "evil.localhost:{port}"},
    "no port": {"host": "127.0.0.1"},
    "an empty host": {"host": ""},
    "another site": {"sec-fetch-site": "cross-site"},
    "another port of this machine": {"sec-fetch-site": "same-site"},
    "no cookie": {"cookie": ""},
    "a wrong secret": {"cookie": "tagend-{port}=wrong"},
    "a secret that is no ASCII": {"cookie": "tagend-{port}=\xe9"},
}
STRANGE_POSTS: Mapping[str, dict[str, str]] = {
    "another page": {"origin": "http://evil.example"},
    "another port": {"origin": "http://127.0.0.1:1"},
    "https": {"origin": "https://127.0.0.1:{port}"},
    "a page without an origin": {"origin": "null"},
    "no origin at all": {"origin": ""},
}


@pytest.mark.parametrize("why", STRANGE)
def test_whoever_else_asks_is_refused(client: httpx.Client, shop_folder: Served, why: str) -> None:
    before = state(shop_folder.folder)
    headers = filled(STRANGE[why], client)
    assert client.get("/", headers=headers).status_code in (400, 403, 421)
    assert client.post("/begin", json={"as": "x"}, headers=headers).status_code in (400, 403, 421)
    assert state(shop_folder.folder) == before


@pytest.mark.parametrize("why", STRANGE_POSTS)
def test_nothing_is_done_for_another_page(
    client: httpx.Client, shop_folder: Served, why: str
) -> None:
    before = state(shop_folder.folder)
    headers = filled(STRANGE_POSTS[why], client)
    for route in routes("POST"):
        answer = client.post(address(route), json={"as": "x"}, headers=headers)
        assert answer.status_code == 403
    assert state(shop_folder.folder) == before


def filled(headers: Mapping[str, str], client: httpx.Client) -> dict[bytes, bytes]:
    port = str(client.base_url.port)
    there = {name: text.replace("{port}", port) for name, text in headers.items()}
    return {name.encode(): text.encode("latin-1") for name, text in there.items()}


def test_a_wrong_secret_in_the_address_opens_nothing(shop_folder: Served) -> None:
    for given in ("wrong", "", "%ff", "a&key=b"):
        answer = httpx.get(f"{shop_folder.origin}/?key={given}")
        assert answer.status_code == 403
        assert "set-cookie" not in answer.headers


def test_every_answer_tells_the_browser_what_it_may_load(
    client: httpx.Client, shop_folder: Served
) -> None:
    answers = [client.get(address(route)) for route in routes("GET")]
    answers += [client.get(path) for path in ("/none", "/static/desk.css", "/static/none")]
    answers += [client.post("/save", content=b"{"), httpx.get(shop_folder.origin)]
    answers += [client.get("/", headers={"host": "evil.example"}), client.put("/")]
    for answer in answers:
        policy = answer.headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "frame-ancestors 'none'" in policy
        assert "unsafe" not in policy
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.headers["cross-origin-resource-policy"] == "same-origin"
        assert "access-control-allow-origin" not in answer.headers


def test_no_page_has_a_script_or_a_style_in_it(client: httpx.Client) -> None:
    for route in routes("GET"):
        answer = client.get(address(route))
        if "html" in answer.headers.get("content-type", ""):
            inline = r"<script(?! type=\"(?:module|application/json)\")"
            assert re.findall(inline, answer.text) == []
            assert re.findall(r"<style|\sstyle=|\son\w+=|javascript:", answer.text) == []


def test_no_connection_is_held_open(client: httpx.Client) -> None:
    upgrade = {
        "connection": "Upgrade",
        "upgrade": "websocket",
        "sec-websocket-version": "13",
        "sec-websocket-key": "dGhlIHNhbXBsZSBub25jZQ==",
    }
    assert client.get("/", headers=upgrade).status_code != 101


def test_what_is_too_large_is_refused_by_its_word_and_by_its_chunks(
    client: httpx.Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(guard, "LARGEST", 100_000)
    assert client.post("/save", content=b"x" * 100_001).status_code == 413
    chunks = (b"x" * 1000 for _ in range(200))
    answer = client.post("/bring/look", content=chunks)
    assert answer.status_code == 422
    assert "too large" in answer.json()["refused"][0]


NAMES = (
    "../secret.toml",
    "%2e%2e%2fsecret.toml",
    "..%2fsecret.toml",
    "..%5csecret.toml",
    "%2fetc%2fpasswd",
    ".hidden.toml",
    "nul%00.toml",
    "out.toml",
    "loop.toml",
    "folder.toml",
    "%ff.toml",
    "x" * 255 + ".toml",
    "%ED%A0%80.toml",
)


@pytest.fixture
def strange_folder(shop_folder: Served) -> Served:
    """A folder that somebody has filled with traps; beside it lies a leader that is secret."""
    folder = shop_folder.folder
    secret = (folder / "sandbar-eight.toml").read_text().replace("Sandbar", "Secret")
    (folder.parent / "secret.toml").write_text(secret)
    (folder / ".hidden.toml").write_text(secret)
    (folder / "folder.toml").mkdir()
    if sys.platform != "win32":
        (folder / "out.toml").symlink_to(folder.parent / "secret.toml")
        (folder / "loop.toml").symlink_to("loop.toml")
        os.mkfifo(folder / "pipe.toml")
        (folder / os.fsdecode(b"\xff.toml")).write_text(secret)
    return shop_folder


@pytest.mark.parametrize("name", NAMES)
def test_no_name_leads_out_of_the_folder(
    strange_folder: Served, client: httpx.Client, name: str
) -> None:
    for route in routes("GET"):
        if "{" in route.path:
            answer = client.get(address(route, name))
            assert answer.status_code in (404, 422), route.path
            assert "Secret" not in answer.text
    plain = httpx.URL(f"http://x/{name}").path.lstrip("/").encode(errors="replace").decode()
    before = state(strange_folder.folder.parent)
    for path in ("/save", "/copy"):
        said = {"name": plain, "as": "y", "draft": {"head": {"name": "x"}, "rows": []}}
        answer = client.post(path, json=said)
        assert answer.status_code == 422, path
    assert state(strange_folder.folder.parent) == before


def test_the_traps_of_a_folder_spoil_no_screen(
    strange_folder: Served, client: httpx.Client
) -> None:
    for path in ("/", "/rack", "/print", "/book", "/bring", "/shop"):
        answer = client.get(path)
        assert answer.status_code == 200, path
        assert "Secret" not in answer.text


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
@pytest.mark.parametrize("name", ["shop.toml", "rack.toml", "book.db"])
def test_the_shops_own_files_are_no_links_out(
    shop_folder: Served, client: httpx.Client, name: str
) -> None:
    outside = shop_folder.folder.parent / name
    outside.write_text('name = "Secret"\n')
    (shop_folder.folder / name).unlink(missing_ok=True)
    (shop_folder.folder / name).symlink_to(outside)
    for path in ("/", "/rack", "/print", "/book", "/shop"):
        assert "Secret" not in client.get(path).text
    assert outside.read_text() == 'name = "Secret"\n'


@pytest.mark.parametrize("key", ["logo", "font"])
@pytest.mark.parametrize("where", ["../secret.png", "/etc/hostname", "link.png"])
def test_a_shops_picture_lies_in_its_folder(
    shop_folder: Served, client: httpx.Client, key: str, where: str
) -> None:
    outside = shop_folder.folder.parent / "secret.png"
    outside.write_bytes((SAMPLES / "wrack-line.png").read_bytes())
    if where == "link.png":
        (shop_folder.folder / where).symlink_to(outside)
    (shop_folder.folder / "shop.toml").write_text(f'name = "Wrack line"\n{key} = "{where}"\n')
    answer = client.get("/picture/sandbar-eight.toml")
    assert answer.status_code == 422
    assert key in answer.text
    art = shop_folder.folder / "art"
    art.mkdir()
    (art / "logo.png").write_bytes(outside.read_bytes())
    (shop_folder.folder / "shop.toml").write_text('name = "Wrack line"\nlogo = "art/logo.png"\n')
    assert client.get("/picture/sandbar-eight.toml").status_code == 200


KEYS = sorted(
    {
        key
        for module in (ROOT / "cards" / "desk").glob("*.py")
        for key in re.findall(r"""(?:\[|get\()"(\w+)\"""", module.read_text())
    }
)
SAMPLE = b"""
name = "Short two"
[[section]]
length = "20 in"
diameter = "0.020 in"
material = "nylon"
[[section]]
length = "20 in"
diameter = "0.015 in"
material = "nylon"
[[variant]]
name = "in wind"
butt = "30 in"
"""
FORMULAS = (SAMPLES / "formulas.csv").read_bytes()
TEXTS = ("", "sandbar-eight.toml", "../x.toml", "x\0y", "1/0", "²", "nan", "<b>", "1" * 5000)
NUMBERS = (0, -1, 2**63, 10**400, 1.5, float("nan"), float("inf"))


def likely() -> dict[str, Any]:
    """Return what each of the routes may be sent, all in one."""
    return {
        "name": "short-two.toml",
        "as": "Mudflat nine",
        "draft": json.loads(json.dumps(draft_of(read_toml(SAMPLE)))),
        "base": base_of(SAMPLE),
        "variant": "in wind",
        "seen": [],
        "text": SAMPLE.decode(),
        "texts": [SAMPLE.decode()],
        "recipe": SAMPLE.decode(),
        "columns": {"Use": ["note", "", ""]},
        "units": {"length": "in"},
        "material": "nylon",
        "answers": {
            "file": "a.columns.toml",
            "table": "a.csv",
            "columns": {"Use": ""},
            "units": {"length": "in"},
            "material": "nylon",
        },
        "leaders": [["short-two.toml", ""], ["short-two.toml", "in wind"]],
        "typed": {"copies": "1"},
        "kind": "bench",
        "counts": {"short-two.toml": "2"},
        "rack": True,
        "rows": [{"was": 0, "label": "n20", "material": "nylon", "diameter": "0.020 in"}],
        "keys": {"tape": "1/4 in"},
        "state": "used",
        "numbers": [1],
        "entry": 1,
        "on": "2026-05-31",
    }


def anything(chance: random.Random, depth: int = 0) -> Any:
    """Return any value that JSON can say, under the keys that the desk looks for."""
    kind = chance.randrange(10 if depth < 3 else 7)
    if kind == 0:
        return chance.choice([None, True, False])
    if kind == 1:
        return chance.choice(NUMBERS)
    if kind < 7:
        return chance.choice([*TEXTS, chance.choice(KEYS), chance.randbytes(9).decode("latin-1")])
    values = [anything(chance, depth + 1) for _ in range(chance.randrange(4))]
    return values if kind == 7 else {chance.choice(KEYS): value for value in values}


def spoiled(value: Any, chance: random.Random) -> Any:
    """Return the same with another value in one place, or without one that was there."""
    if not value or not isinstance(value, list | dict) or not chance.randrange(5):
        return anything(chance)
    if isinstance(value, list):
        place = chance.randrange(len(value))
        return [*value[:place], spoiled(value[place], chance), *value[place + 1 :]]
    key = chance.choice([*value, chance.choice(KEYS)])
    rest = {other: value[other] for other in value if other != key}
    return {**rest, key: spoiled(value.get(key), chance)} if chance.randrange(4) else rest


DEEP = (b"[" * 99_999, b'{"a":' * 99_999)
ODD = (*DEEP, b"", b"{", b"[]", b"null", b"\xff", b"{}", b'{"as":"\\ud800"}')


@pytest.mark.parametrize("route", routes("POST"), ids=address)
def test_what_the_page_never_sends_is_refused_in_words(
    bench: Path, tmp_path: Path, route: Route
) -> None:
    """Some values of chance, the same each time, and none is the desk's undoing."""
    folder = shutil.copytree(bench, tmp_path / "bench")
    (folder / "short-two.toml").write_bytes(SAMPLE)
    chance = random.Random(route.path)
    # A file that was dropped is read in a process of its own, which takes its time.
    count = 15 if "received" in route.endpoint.__qualname__ else 60
    values = [spoiled(spoiled(likely(), chance), chance) for _ in range(count)]
    bodies = [*ODD, *(json.dumps(value).encode() for value in values)]
    bodies += [body + b"\n" + FORMULAS for body in bodies[:20]]  # as a file comes
    for status, is_same in asked(folder, address(route), bodies):
        assert status == 200 or 400 <= status < 500
        assert status == 200 or is_same


def asked(folder: Path, path: str, bodies: list[bytes]) -> list[tuple[int, bool]]:
    """Return the same from a thread: where a browser is driven, this one has a loop already."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(lambda: asyncio.run(answers(folder, path, bodies))).result()


async def answers(folder: Path, path: str, bodies: list[bytes]) -> list[tuple[int, bool]]:
    """Return each answer's status, and whether the folder was left as it had been."""
    app = Guard(app_of(Desk(folder)), 80, "secret")
    transport = httpx.ASGITransport(app, raise_app_exceptions=False)
    headers = {
        "cookie": "tagend-80=secret",
        "origin": "http://localhost:80",
        "host": "localhost:80",
    }
    found = []
    async with httpx.AsyncClient(
        transport=transport, base_url="http://localhost", headers=headers
    ) as client:
        for body in bodies:
            before = state(folder)
            answer = await client.post(f"{path}?name=x.csv", content=body)
            found.append((answer.status_code, state(folder) == before))
    return found
