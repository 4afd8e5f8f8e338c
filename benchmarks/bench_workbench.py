"""The workbench with 500 desserts and 20 clients who build: how long a change takes.

Each client has its page open and changes a dessert of its own again and again, as the building page
does: a number of pieces, then an amount. It reads the part of the page that comes back, then thinks
for a while, as people do, not all for the same time. The figure is the 95th percentile; the
reference is the same change made by one client alone in the same run.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from random import Random
from statistics import quantiles
from urllib.parse import urlencode

from figure import Figure, seconds

from entremetry.store import Kind, open_library
from entremetry.store.demo import demo_texts

DESSERTS, CLIENTS = 500, 20
COMMAND = str(Path(sys.executable).parent / "entremetry")
PAUSES = (1.0, 3.0)  # s between the changes of one client: from, to


def fill(home: Path) -> list[str]:
    """Put so many desserts into a library; give their ids."""
    library = open_library(home)
    texts = list(demo_texts().items())
    ids = [f"{texts[k % len(texts)][0]}-{k}" for k in range(DESSERTS)]
    for k, id_ in enumerate(ids):
        name, text = texts[k % len(texts)]
        library.add(Kind.DESSERT, id_, text.replace(f"id: {name}", f"id: {id_}", 1))
    library.close()
    return ids


@contextmanager
def served(home: Path) -> Iterator[str]:
    """Serve a data folder; give host and port."""
    environment = {**os.environ, "ENTREMETRY_HOME": str(home), "PYTHONUNBUFFERED": "1"}
    command = [COMMAND, "serve", "--port", "0", "--no-browser"]
    with subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, text=True) as server:
        try:
            assert server.stdout is not None
            yield server.stdout.readline().strip().removeprefix("http://").rstrip("/")
        finally:
            server.terminate()
            server.communicate(timeout=10)


def told(host: str, method: str, path: str, body: str = "") -> tuple[HTTPResponse, str]:
    """An answer and its text."""
    connection = HTTPConnection(host, timeout=60)
    headers = {"HX-Request": "true", "Content-Type": "application/x-www-form-urlencoded"}
    try:
        connection.request(method, path, body, headers)
        answer = connection.getresponse()
        return answer, answer.read().decode("utf-8")
    finally:
        connection.close()


def asked(host: str, method: str, path: str, body: str = "") -> str:
    """Text of an answer, which must be a good one."""
    answer, text = told(host, method, path, body)
    if answer.status != 200:
        raise RuntimeError(f"{path} answered {answer.status}")
    return text


class Builder:
    """A client that builds one dessert: a number of pieces, then an amount of a line, in turn."""

    def __init__(self, host: str, id_: str) -> None:
        self.host, self.path = host, f"/desserts/{id_}/build"
        self.page = asked(host, "GET", self.path)
        self.thinking = Random(id_)
        self.made = 0

    def change(self) -> float:
        """Time from sending a changed number to having read what comes back. [s]"""
        self.made += 1
        hidden = {name: self._field(name) for name in ("token", "started_from")}
        body = urlencode({**hidden, **self._number()})
        start = time.perf_counter()
        self.page = asked(self.host, "POST", self.path, body)
        return time.perf_counter() - start

    def think(self) -> None:
        """Wait as long as a person does between two changes."""
        time.sleep(self.thinking.uniform(*PAUSES))

    def _field(self, name: str) -> str:
        return re.findall(rf'name="{name}" value="([^"]+)"', self.page)[0]

    def _number(self) -> dict[str, str]:
        """Another number of pieces, or another amount of a line that is weighed."""
        lines = re.findall(r'name="(set:[^"]+/amount)"[^>]* value="([0-9]+) g"', self.page)
        if self.made % 2 or not lines:
            return {"set:pieces": str(12 + self.made)}
        name, grams = self.thinking.choice(lines)
        return {name: f"{int(grams) + 1} g"}


def changes(builder: Builder, rounds: int) -> list[float]:
    """Times of so many changes of one dessert."""
    times = [builder.change()]
    for _ in range(rounds - 1):
        builder.think()
        times.append(builder.change())
    return times


def changes_by_the_way(builder: Builder, rounds: int) -> list[float]:
    """The same by a client who begins when it likes."""
    time.sleep(builder.thinking.uniform(0.0, max(PAUSES)))
    return changes(builder, rounds)


def looks(host: str, id_: str, path: str, rounds: int) -> list[float]:
    """Times of so many looks at a part of the page, each after a change."""
    builder, times = Builder(host, id_), []
    for _ in range(rounds):
        builder.change()
        times.append(seconds(lambda: asked(host, "GET", path)))
    return times


def timed_step(host: str, id_: str) -> str:
    """Address of what is computed for the first step of the assembly that can be timed."""
    page = told(host, "GET", f"/desserts/{id_}/temperatures")[0].headers["Location"]
    return str(page).replace("/temperatures/", "/temperature-answers/")


def percentile_95(times: list[float]) -> float:
    """95th percentile; of a single time that time."""
    return quantiles(times, n=20)[-1] if len(times) > 1 else times[0]


def measure(rounds: int = 12) -> Figure:
    """Time a change on the building page, alone and with the others."""
    with tempfile.TemporaryDirectory() as folder:
        ids = fill(Path(folder))
        with served(Path(folder)) as host:
            first = seconds(lambda: asked(host, "GET", "/"))
            print(f"the first page after the start, {DESSERTS} desserts: {first:.3f} s")
            step = timed_step(host, ids[-1])
            told(host, "GET", step)  # the solver is ready
            for name, path in (("checks", f"/desserts/{ids[-1]}/checks"), ("temperatures", step)):
                told(host, "GET", path)
                found = percentile_95(looks(host, ids[-1], path, rounds))
                print(f"{name} after a change, p95, one client: {found * 1e3:.0f} ms")
            alone = percentile_95(changes(Builder(host, ids[-1]), rounds))
            builders = [Builder(host, id_) for id_ in ids[:CLIENTS]]
            with ThreadPoolExecutor(CLIENTS) as clients:
                lists = clients.map(lambda each: changes_by_the_way(each, rounds), builders)
                together = percentile_95([each for times in lists for each in times])
    return Figure(
        name=f"a change, p95, {DESSERTS} desserts, {CLIENTS} clients",
        seconds=together,
        reference="the same by one client alone",
        reference_seconds=alone,
        target=0.150,
    )
