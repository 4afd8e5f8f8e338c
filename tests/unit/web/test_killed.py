"""A workbench killed under load, again and again: what it said is kept is kept, and whole."""

from __future__ import annotations

import os
import random
import re
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from http.client import HTTPConnection, HTTPException
from pathlib import Path
from urllib.parse import urlencode, urlsplit

import pytest

from entremetry.dessert.alteration import part_at
from entremetry.store import Kind
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.web.secret import token
from unit.web.conftest import CREAM, FORM_TYPE

SERVER = Path(__file__).parent / "mortal_server.py"
KILLS = 50
WRITERS = ("one-cream", "two-cream", "three-cream")


class Writer(threading.Thread):
    """Changes one dessert again and again, and remembers the last change that was kept."""

    def __init__(self, address: str, dessert: str, secret: str, start: int) -> None:
        super().__init__()
        self.place = urlsplit(address)
        self.dessert, self.secret = dessert, secret
        self.tried = self.kept = start

    def run(self) -> None:
        while True:
            try:
                answered = self._send(self.tried + 1)
            except (OSError, HTTPException):
                return
            assert answered == 303
            self.kept = self.tried

    def _send(self, number: int) -> int:
        self.tried = number
        path = f"/desserts/{self.dessert}/build"
        page = self._ask("GET", path)[1]
        found = re.search(r'name="started_from" value="(\d+)"', page)
        assert found is not None
        fields = {"token": self.secret, "started_from": found[1], "set:about": f"change {number}"}
        return self._ask("POST", path, urlencode(fields))[0]

    def _ask(self, method: str, path: str, body: str = "") -> tuple[int, str]:
        host, port = self.place.hostname or "", self.place.port
        with closing(HTTPConnection(host, port, timeout=20)) as connection:
            connection.request(method, path, body, {"Content-Type": FORM_TYPE})
            with connection.getresponse() as answered:
                return answered.status, answered.read().decode()


@pytest.fixture
def home(tmp_path: Path, bare_library: Path) -> Path:
    """A data folder with a dessert for each writer."""
    (tmp_path / "library.sqlite").write_bytes(bare_library.read_bytes())
    with opened(tmp_path) as library:
        for dessert in WRITERS:
            library.add(Kind.DESSERT, dessert, CREAM.replace("id: plain-cream", f"id: {dessert}"))
    return tmp_path


@contextmanager
def opened(home: Path) -> Iterator[Library]:
    library = Library(open_database(home / "library.sqlite"))
    yield library
    library.close()


def number_in(text: str) -> int:
    """Number of the change that a text bears; 0 before the first."""
    about = str(part_at(text, ("about",)))
    return int(about.removeprefix("change ")) if about.startswith("change ") else 0


def test_what_was_accepted_survives_fifty_kills(home: Path) -> None:
    chance, secret = random.Random(50), token(home)
    kept = dict.fromkeys(WRITERS, 0)
    nursery = subprocess.Popen(
        [sys.executable, str(SERVER), str(home)],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert nursery.stdin is not None and nursery.stdout is not None
    for _ in range(KILLS):
        print(file=nursery.stdin, flush=True)
        process, address = int(nursery.stdout.readline()), nursery.stdout.readline().strip()
        writers = [Writer(address, dessert, secret, kept[dessert]) for dessert in WRITERS]
        for writer in writers:
            writer.start()
        until_one_is_kept(writers)
        time.sleep(chance.uniform(0.0, 0.2))
        os.kill(process, signal.SIGKILL)
        for writer in writers:
            writer.join()
        with opened(home) as library:
            for writer in writers:
                kept[writer.dessert] = as_it_was_told(library, writer)
    nursery.communicate(timeout=10)
    assert nursery.returncode == 0
    assert sum(kept.values()) >= KILLS


def until_one_is_kept(writers: Sequence[Writer]) -> None:
    """Wait until the first change of this round is kept."""
    start = [writer.kept for writer in writers]
    while [writer.kept for writer in writers] == start:
        assert any(writer.is_alive() for writer in writers)
        time.sleep(0.002)


def as_it_was_told(library: Library, writer: Writer) -> int:
    """Number of the newest change: at least what was kept, at most what was tried."""
    newest = library.document(Kind.DESSERT, writer.dessert)
    number = number_in(newest.text)
    assert writer.kept <= number <= writer.tried
    revisions = library.history(Kind.DESSERT, writer.dessert)
    assert [each.number for each in revisions] == list(range(len(revisions), 0, -1))
    texts = [library.text_at(Kind.DESSERT, writer.dessert, each.number) for each in revisions[:5]]
    numbers = [number_in(text) for text in texts]
    assert numbers == sorted(numbers, reverse=True)
    return number
