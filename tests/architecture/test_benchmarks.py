"""Benchmarks are kept alive: each runs once here, and no time is looked at."""

from __future__ import annotations

import importlib
import math
from pathlib import Path

import pytest

FOLDER = Path(__file__).parents[2] / "benchmarks"
NAMES = sorted(path.stem for path in FOLDER.glob("bench_*.py"))


@pytest.mark.parametrize("name", NAMES)
def test_a_benchmark_gives_figures(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(FOLDER))
    figure = importlib.import_module(name).measure(rounds=1)
    assert math.isfinite(figure.ratio) and figure.ratio > 0
    assert figure.name in str(figure)
