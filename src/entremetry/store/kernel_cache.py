"""Compiled kernels on disk: those made from older sources are thrown away.

The compiler looks only at the file of a function, not at the files it takes others from.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import entremetry.physics

KERNELS = Path(entremetry.physics.__file__).parent / "conduction"
COMPILED = ("*.nbi", "*.nbc")


def drop_stale_kernels(folder: Path = KERNELS) -> int:
    """Delete every compiled kernel if one is older than a source beside it; tell how many."""
    kept = folder / "__pycache__"
    kernels = [path for pattern in COMPILED for path in kept.glob(pattern)]
    newest = max((path.stat().st_mtime for path in folder.glob("*.py")), default=0.0)
    if not kernels or min(path.stat().st_mtime for path in kernels) >= newest:
        return 0
    for path in kernels:
        path.unlink(missing_ok=True)
    return len(kernels)


@cache
def require_fresh_kernels() -> None:
    """Drop stale kernels once in the life of the program, before the first is loaded."""
    drop_stale_kernels()
