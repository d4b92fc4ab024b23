"""Names that would be scripts, pages elsewhere that reach for the desk, and a desk killed."""

import itertools
import json
import multiprocessing
import random
import re
import sys
import threading
from collections.abc import Iterator
from contextlib import suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from multiprocessing.connection import Connection
from pathlib import Path

import httpx
import pytest
from playwright.sync_api import Browser, Response

from tagend.cards.base.toml_file import read_toml
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.draft import draft_of
from tagend.cards.desk.leader import base_of
from tagend.cards.desk.server import serve
from tagend.cards.recipe.recipe_file import read_recipe
from tests.cards.desk.conftest import SAMPLES, Served
from tests.cards.desk.test_guard import routes
from tests.cards.desk.test_leader_screen import Opened
from tests.written import PRACTICE

EVIL = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</script><script>alert(1)</script>",
    "'-alert(1)-'{{ 7 * 7 }}${alert(1)}",
    "<!-- <svg onload=alert(1)>",
)
PATHS = [route.path for route in routes("GET") if not re.search("[{.]", route.path)]


@pytest.fixture
def evil_folder(bench_folder: Served) -> Served:
    """A folder whose leaders, file names and shop are called so."""
    sample = (SAMPLES / "sandbar-eight.toml").read_text().partition("[[variant]]")[0]
    lines = [line for line in sample.splitlines() if not line.startswith(("name", "use", "note"))]
    for number, name in enumerate(map(json.dumps, EVIL)):
        head = [f"name = {name}", f"use = {name}", f"note = {name}"]
        variant = ["[[variant]]", f"name = {name}", 'butt = "60 in"']
        text = "\n".join([*head, *lines, *variant])
        (bench_folder.folder / f"evil-{number}.toml").write_text(text)
    if sys.platform != "win32":
        (bench_folder.folder / "<img src=x onerror=alert(1)>.toml").write_text("[[section]]\n<b>")
    shop = bench_folder.folder / "shop.toml"
    lines = [line for line in shop.read_text().splitlines() if not line.startswith("name")]
    shop.write_text("\n".join([f"name = {json.dumps(EVIL[0])}", *lines]))
    return bench_folder


@pytest.mark.parametrize("path", [*PATHS, *(f"/leader/evil-{n}.toml" for n in range(len(EVIL)))])
def test_a_name_that_would_be_a_script_is_only_shown(
    evil_folder: Served, opened: Opened, path: str
) -> None:
    page = opened(evil_folder)  # fails on any word of the browser's console
    page.goto(evil_folder.origin + path)
    page.wait_for_load_state("networkidle")
    made = "main script:not([type='application/json']), img[src='x'], [onerror], [onload]"
    assert page.locator(made).count() == 0
    if path == "/":
        for name in EVIL:
            assert page.get_by_text(name, exact=True).count() > 0


TRIES = """<!doctype html><title>elsewhere</title>
<img src="{desk}/picture/sandbar-eight.toml" id="img">
<link rel="stylesheet" href="{desk}/static/desk.css">
<script src="{desk}/static/desk.js"></script>
<iframe src="{desk}/" name="framed"></iframe>
<iframe name="answer"></iframe>
<form method="post" action="{desk}/begin" enctype="text/plain" target="answer">
<input name='{{"as":"stolen","x":"' value='"}}'></form>
<script>
const got = window.got = [];
const body = JSON.stringify({{ as: "stolen" }});
const json = {{ "content-type": "application/json" }};
const blind = {{ mode: "no-cors" }};
const post = {{ method: "POST", body }};
const tries = [
  ["/", {{}}], ["/", blind], ["/begin", post], ["/begin", {{ ...post, headers: json }}],
  ["/begin", {{ ...post, ...blind }}], ["/bring/look?name=x", {{ ...post, ...blind }}],
];
(async () => {{
  for (const [path, how] of tries) {{
    try {{
      const answer = await fetch("{desk}" + path, {{ credentials: "include", ...how }});
      got.push(await answer.text() || answer.type);
    }} catch {{ got.push("refused"); }}
  }}
  navigator.sendBeacon("{desk}/end", "{{}}");
  document.forms[0].submit();
  open("{desk}/");
  await new Promise((done) => {{
    const socket = new WebSocket("{desk}/".replace("http", "ws"));
    socket.onopen = () => done(got.push("open"));
    socket.onerror = () => done();
  }});
  await new Promise((done) => setTimeout(done, 400));
  if (document.getElementById("img").naturalWidth) got.push("seen");
  document.title = "done";
}})();
</script>"""


@pytest.fixture
def elsewhere(served: Served) -> Iterator[int]:
    """The port of a page that is not the desk's, and would like to be."""

    class Evil(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(200)
            self.send_header("content-type", "text/html")
            self.end_headers()
            self.wfile.write(TRIES.format(desk=served.origin).encode())

        def log_message(self, *args: object) -> None:
            """Say nothing."""

    with ThreadingHTTPServer(("127.0.0.1", 0), Evil) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.server_port
        server.shutdown()


@pytest.mark.parametrize("host", ["127.0.0.1", "localhost"])
def test_a_page_elsewhere_gets_nothing_and_changes_nothing(
    shop_folder: Served, elsewhere: int, browser: Browser, host: str
) -> None:
    context = browser.new_context()
    answers: list[tuple[str, int]] = []

    def note(response: Response) -> None:
        if response.url.startswith(shop_folder.origin):
            answers.append((response.url, response.status))

    page = context.new_page()
    page.goto(shop_folder.address)  # so that the browser has the cookie
    page.goto(shop_folder.origin + "/bring", wait_until="networkidle")
    before = {path.name: path.read_bytes() for path in shop_folder.folder.iterdir()}
    context.on("response", note)
    evil = context.new_page()
    evil.goto(f"http://{host}:{elsewhere}/")
    evil.wait_for_function("document.title === 'done'", timeout=15_000)
    assert set(evil.evaluate("window.got")) == {"refused"}
    assert answers
    assert [url for url, status in answers if status != 403] == []
    assert not any("Sandbar" in frame.content() for frame in evil.frames)
    assert {path.name: path.read_bytes() for path in shop_folder.folder.iterdir()} == before
    page.goto(shop_folder.origin)  # the desk itself goes on
    assert page.locator("#shelf li").count() > 0
    context.close()


def desk_of_its_own(folder: Path, addresses: Connection) -> None:
    """Serve a folder until somebody kills it."""
    serve(Desk(folder), 0, addresses.send, browse=False)


@pytest.mark.skipif(sys.platform == "win32", reason="it forks")
def test_a_desk_killed_as_it_saves_leaves_every_leader_whole(tmp_path: Path) -> None:
    path = tmp_path / "sandbar-eight.toml"
    path.write_bytes((SAMPLES / path.name).read_bytes())
    chance, forks = random.Random(15), multiprocessing.get_context("forkserver")
    forks.set_forkserver_preload(["tests.cards.desk.test_hostile"])
    count = 0
    for _ in range(15):
        here, there = forks.Pipe()
        desk = forks.Process(target=desk_of_its_own, args=(tmp_path, there))
        desk.start()
        kill = threading.Timer(chance.random() / 10, desk.kill)
        told = max(saves(path, here.recv(), count, kill), default=count)
        desk.join()
        # The last save that was answered, or the one that was under way.
        note = read_recipe(path.read_bytes(), PRACTICE).note or ""
        count = int(note.removeprefix("Save "))
        assert count in (told, told + 1)
    assert count >= 15
    assert [kept.recipe is not None for kept in Desk(tmp_path).leaders()] == [True]


def saves(path: Path, address: str, count: int, kill: threading.Timer) -> Iterator[int]:
    """Save a leader, each time with another note, until the desk is killed; yield those told."""
    draft = dict(draft_of(read_toml(path.read_bytes())))
    base = base_of(path.read_bytes())
    origin = address.partition("/?")[0]
    with suppress(httpx.TransportError), httpx.Client(headers={"origin": origin}) as client:
        client.get(address)
        for number in itertools.count():
            if number == 1:  # when it is in full swing
                kill.start()
            draft["head"] = {**draft["head"], "note": f"Save {count + 1}"}
            said = {"name": path.name, "draft": draft, "base": base}
            base = client.post(f"{origin}/save", json=said).json()["base"]
            count += 1
            yield count
