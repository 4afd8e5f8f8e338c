"""Serves a workbench again and again, each time in a process of its own that may be killed.

Run as a script with a data folder: for each line on standard input it begins one more server,
which prints its process and then its address. All is loaded once, so that beginning is quick.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

import uvicorn

from entremetry.store import Kind, demo
from entremetry.web.app import build_app
from entremetry.web.serving import serve
from entremetry.web.temperature_warming import frozen_demo
from unit.web.conftest import Client


def load(home: Path) -> None:
    """Bring all that a server needs into this process, so that those that grow from it have it."""
    app = build_app(home)
    uvicorn.Config(app).load()
    frozen_demo()
    library = app.state.workbench.library
    for stored in library.documents(Kind.DESSERT)[:1]:
        assert Client(app).get(f"/desserts/{stored.id}/build").status == 200
    library.close()


if __name__ == "__main__":
    demo.demo_texts = dict  # nothing but the desserts of the test
    load(Path(sys.argv[1]))
    for _ in sys.stdin:
        if os.fork() == 0:
            sys.stdout.write(f"{os.getpid()}\n")
            sys.stdout.flush()
            serve(0, open_browser=False, home=Path(sys.argv[1]))
            os._exit(0)
        os.wait()
