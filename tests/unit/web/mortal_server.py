"""Serves a workbench again and again, each time in a process of its own that may be killed.

Run as a script with a data folder: for each line on standard input it begins one more server,
which prints its process and then its address. All is loaded once, so that beginning is quick.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

from entremetry.store import Kind, demo, open_library
from entremetry.web import app  # noqa: F401
from entremetry.web.choosing import view
from entremetry.web.rendering import environment
from entremetry.web.serving import serve


def load(home: Path) -> None:
    """Bring all that a page needs into this process, so that those that grow from it have it."""
    library = open_library(home)
    for stored in library.documents(Kind.DESSERT)[:1]:
        view(stored.text, stored.id, {}, None)
    library.close()
    environment().get_template("build.html")


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
