"""Runs every benchmark of this folder and prints its figures."""

from __future__ import annotations

import importlib
from pathlib import Path


def names() -> list[str]:
    """Names of the benchmark modules."""
    return sorted(path.stem for path in Path(__file__).parent.glob("bench_*.py"))


def main() -> None:
    """Measure one hot path after the other."""
    for name in names():
        print(importlib.import_module(name).measure(), flush=True)


if __name__ == "__main__":
    main()
