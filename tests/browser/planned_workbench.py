"""A workbench whose plans are written by hand, that can be killed and begun again."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlsplit

from entremetry.store import BenchEntry, Kind
from entremetry.store.database import open_database
from entremetry.store.library import Library
from planned_by_hand import planned, planned_text

SERVER = Path(__file__).parent / "planned_server.py"


@dataclass
class PlannedWorkbench:
    """The server and its data folder; `address` is such as http://127.0.0.1:40123/."""

    home: Path
    address: str = ""
    _server: subprocess.Popen[str] | None = field(default=None)

    def start(self) -> PlannedWorkbench:
        """Serve on a free port, or on the one before."""
        port = str(urlsplit(self.address).port or 0)
        environment = {**os.environ, "ENTREMETRY_HOME": str(self.home), "PYTHONUNBUFFERED": "1"}
        self._server = subprocess.Popen(
            [sys.executable, str(SERVER), port],
            env=environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        assert self._server.stdout is not None
        self.address = self._server.stdout.readline().strip()
        assert self.address.startswith("http://127.0.0.1:")
        return self

    def kill(self) -> None:
        """End the server as a power cut does."""
        assert self._server is not None
        self._server.kill()
        self._server.communicate()

    def keep(self, menu: str = "made") -> str:
        """Address of a plan that is kept now."""
        library = self._library()
        kept = library.plans.keep("Pear dome, Hazelnut bars", planned_text(planned(menu)))
        library.close()
        return f"{self.address}plans/{kept.id}"

    def write(self, dessert: str, text: str) -> None:
        """Keep a dessert that is not there yet."""
        library = self._library()
        if library.find(Kind.DESSERT, dessert) is None:
            library.add(Kind.DESSERT, dessert, text)
        library.close()

    def told(self, plan: str) -> list[BenchEntry]:
        """What the workbench was told of a plan."""
        library = self._library()
        entries = library.plans.entries(int(plan.rpartition("/")[2]))
        library.close()
        return list(entries)

    def _library(self) -> Library:
        return Library(open_database(self.home / "library.sqlite"))
