"""A workbench of its own for each test, asked without any network."""

from __future__ import annotations

import asyncio
import re
import shutil
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from html import unescape
from pathlib import Path
from urllib.parse import urlencode

import pytest
from starlette.applications import Starlette
from starlette.types import Message, Scope

from entremetry.store import Kind
from entremetry.store.database import open_database
from entremetry.web.app import build_app
from planned_by_hand import modules
from unit.web.marked_language import speak_marked

PORT = 4321
HOST = f"127.0.0.1:{PORT}"
FORM_TYPE = "application/x-www-form-urlencoded"

CREAM = """\
entremetry: 1
id: plain-cream
name: Plain cream
about: Nothing but cream & sugar.
pieces: 6
mould: cylinder-60
components:
  cream:
    name: Set cream
    kind: mousse
    formula:
      cream-35: 500 g
      caster-sugar: 50 g
      gelatine-powder-200: {amount: 8 g, note: bloomed <well>}
    density: 0.9 g/ml
placement:
  - {component: cream, as: filling}
"""


@dataclass(frozen=True)
class Reply:
    """What came back."""

    status: int
    headers: Mapping[str, str]
    body: bytes

    @property
    def html(self) -> str:
        """Body as it was sent."""
        return self.body.decode("utf-8")

    @property
    def words(self) -> str:
        """What a person reads: no tags, single blanks."""
        text = re.sub(r"<(script|style)\b.*?</\1>|<[^>]+>", " ", self.html, flags=re.DOTALL)
        return " ".join(unescape(text).split())


@dataclass
class Client:
    """Asks an application as a browser on this machine would."""

    app: Starlette
    headers: dict[str, str] = field(default_factory=lambda: {"host": HOST})

    def get(self, path: str, **headers: str) -> Reply:
        return self.ask("GET", path, headers=headers)

    def post(self, path: str, fields: Mapping[str, str], **headers: str) -> Reply:
        """Send a form with the token that the workbench gave out."""
        token = self.app.state.workbench.token
        return self.send(path, {"token": token, **fields}, **headers)

    def send(self, path: str, fields: Mapping[str, str], **headers: str) -> Reply:
        """Send a form exactly as it is."""
        body = urlencode(fields).encode()
        return self.ask("POST", path, body, {"content_type": FORM_TYPE, **headers})

    def ask(
        self, method: str, path: str, body: bytes = b"", headers: Mapping[str, str] | None = None
    ) -> Reply:
        named = {name.replace("_", "-"): value for name, value in (headers or {}).items()}
        sent = {**self.headers, "content-length": str(len(body)), **named}
        return asyncio.run(self._ask(method, path, body, sent))

    async def _ask(self, method: str, path: str, body: bytes, headers: dict[str, str]) -> Reply:
        place, _, query = path.partition("?")
        scope: Scope = {
            "type": "http",
            "asgi": {"version": "3.0"},
            "http_version": "1.1",
            "method": method,
            "scheme": "http",
            "path": place,
            "raw_path": place.encode(),
            "root_path": "",
            "query_string": query.encode(),
            "headers": [(n.encode(), v.encode("latin-1")) for n, v in headers.items()],
            "client": ("127.0.0.1", 50000),
            "server": ("127.0.0.1", PORT),
        }
        messages: list[Message] = []
        parts = [body[at : at + 65536] for at in range(0, len(body), 65536)] or [b""]

        async def receive() -> Message:
            if not parts:
                return {"type": "http.disconnect"}
            part = parts.pop(0)
            return {"type": "http.request", "body": part, "more_body": bool(parts)}

        async def send(message: Message) -> None:
            messages.append(message)

        await self.app(scope, receive, send)
        start, rest = messages[0], messages[1:]
        return Reply(
            status=start["status"],
            headers={n.decode().lower(): v.decode() for n, v in start["headers"]},
            body=b"".join(message.get("body", b"") for message in rest),
        )


@pytest.fixture(scope="session")
def bare_library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A library file that is up to date and empty, made once."""
    place = tmp_path_factory.mktemp("bare") / "library.sqlite"
    open_database(place).close()
    return place


@pytest.fixture
def empty(tmp_path: Path, bare_library: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Client]:
    """A workbench with nothing in it."""
    monkeypatch.delenv("ENTREMETRY_STORE", raising=False)
    monkeypatch.setattr("entremetry.store.demo.demo_texts", dict)
    monkeypatch.setattr("entremetry.web.publish_page.AT_ONCE", 60.0)  # s, for a busy machine
    shutil.copy(bare_library, tmp_path)
    app = build_app(tmp_path)
    yield Client(app)
    app.state.workbench.library.close()


@pytest.fixture
def client(empty: Client) -> Client:
    """A workbench with one plain dessert."""
    empty.app.state.workbench.library.add(Kind.DESSERT, "plain-cream", CREAM)
    return empty


@pytest.fixture
def planner(client: Client, monkeypatch: pytest.MonkeyPatch) -> Client:
    """A workbench with one plain dessert, whose plans are written by hand."""
    for name, module in modules().items():
        monkeypatch.setitem(sys.modules, name, module)
    return client


@pytest.fixture
def marked(planner: Client, monkeypatch: pytest.MonkeyPatch) -> Client:
    """A workbench that speaks a language in which every message is marked."""
    speak_marked(monkeypatch)
    return planner
