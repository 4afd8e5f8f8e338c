"""The workbench with 500 desserts and 20 clients who build: how long a change takes.

Each client changes a dessert of its own again and again, as the building page does, and reads the
part of the page that comes back; then it thinks for a while, as people do, not all for the same
time. The figure is the 95th percentile; the reference is the same
change made by one client alone in the same run.
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
from http.client import HTTPConnection
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


def asked(host: str, method: str, path: str, body: str = "") -> str:
    """Body of an answer, which must be a good one."""
    connection = HTTPConnection(host, timeout=60)
    headers = {"HX-Request": "true", "Content-Type": "application/x-www-form-urlencoded"}
    try:
        connection.request(method, path, body, headers)
        answer = connection.getresponse()
        text = answer.read().decode("utf-8")
    finally:
        connection.close()
    if answer.status != 200:
        raise RuntimeError(f"{path} answered {answer.status}")
    return text


def changes(host: str, id_: str, rounds: int) -> list[float]:
    """Times of so many changes of the number of pieces."""
    path, times, thinking = f"/desserts/{id_}/build", [], Random(id_)
    time.sleep(thinking.uniform(*PAUSES))
    page = asked(host, "GET", path)
    for k in range(rounds):
        hidden = {
            name: re.findall(rf'name="{name}" value="([^"]+)"', page)[0]
            for name in ("token", "started_from")
        }
        body = urlencode({**hidden, "set:pieces": str(12 + k)})
        start = time.perf_counter()
        page = asked(host, "POST", path, body)
        times.append(time.perf_counter() - start)
        time.sleep(thinking.uniform(*PAUSES))
    return times


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
            changes(host, ids[-1], 1)  # what the first one loads is loaded
            alone = percentile_95(changes(host, ids[-1], rounds))
            with ThreadPoolExecutor(CLIENTS) as clients:
                lists = clients.map(lambda id_: changes(host, id_, rounds), ids[:CLIENTS])
                together = percentile_95([each for times in lists for each in times])
    return Figure(
        name=f"a change, p95, {DESSERTS} desserts, {CLIENTS} clients",
        seconds=together,
        reference="the same by one client alone",
        reference_seconds=alone,
        target=0.150,
    )
