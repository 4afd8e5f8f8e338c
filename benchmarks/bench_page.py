"""A dessert page under 20 clients at once, against a page that says only 'ok'."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from http.client import HTTPConnection
from pathlib import Path
from statistics import median

from figure import Figure, seconds

CLIENTS = 20
COMMAND = str(Path(sys.executable).parent / "entremetry")
PLAIN = str(Path(__file__).with_name("plain_page.py"))


@contextmanager
def served(command: list[str]) -> Iterator[str]:
    """Start a server that prints its address first; give host and port, then end it."""
    with tempfile.TemporaryDirectory() as home:
        environment = {**os.environ, "ENTREMETRY_HOME": home, "PYTHONUNBUFFERED": "1"}
        with subprocess.Popen(
            command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        ) as server:
            try:
                assert server.stdout is not None
                yield server.stdout.readline().strip().removeprefix("http://").rstrip("/")
            finally:
                server.terminate()
                server.communicate(timeout=10)


def fetched(host: str, path: str) -> str:
    """Body of one page, which must be there."""
    connection = HTTPConnection(host, timeout=30)
    try:
        connection.request("GET", path)
        answer = connection.getresponse()
        body = answer.read().decode("utf-8")
    finally:
        connection.close()
    if answer.status != 200:
        raise RuntimeError(f"{path} answered {answer.status}")
    return body


def dessert_page(host: str) -> str:
    """Path of the first dessert that the library links to."""
    links: list[str] = re.findall(r'href="(/[^"?#]+)"', fetched(host, "/"))
    return next(link for link in links if "dessert" in link and "static" not in link)


def median_answer(host: str, path: str, rounds: int) -> float:
    """Median time of an answer while `CLIENTS` clients ask `rounds` times each."""
    fetched(host, path)

    def client(_: int) -> list[float]:
        return [seconds(lambda: fetched(host, path)) for _ in range(rounds)]

    with ThreadPoolExecutor(CLIENTS) as clients:
        return median(time for times in clients.map(client, range(CLIENTS)) for time in times)


def measure(rounds: int = 10) -> Figure:
    """Time the page that shows a dessert with its section and quantities."""
    with served([COMMAND, "serve", "--port", "0", "--no-browser"]) as host:
        path = dessert_page(host)
        page = median_answer(host, path, rounds)
    with served([sys.executable, PLAIN]) as host:
        plain = median_answer(host, "/", rounds)
    return Figure(
        name=f"{path} under {CLIENTS} clients",
        seconds=page,
        reference="a page that says only 'ok'",
        reference_seconds=plain,
        target=0.100,
    )
