"""Serves a workbench whose plans are written by hand; run as a script, with a port."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from entremetry.web.serving import serve
from planned_by_hand import modules

if __name__ == "__main__":
    sys.modules.update(modules())
    serve(int(sys.argv[1]), open_browser=False)
