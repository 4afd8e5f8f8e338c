"""A whole batch sheet of the largest demo, against only parsing the same file."""

from __future__ import annotations

from importlib.resources import as_file, files
from pathlib import Path

import yaml
from figure import Figure, median_seconds

from entremetry.usecases.batch import batch


def largest_demo() -> Path:
    """The longest dessert document that ships with the program."""
    folder = files("entremetry.store").joinpath("data", "demo")
    with as_file(folder) as path:
        return max(path.glob("*.yaml"), key=lambda demo: demo.stat().st_size)


def measure(rounds: int = 30) -> Figure:
    """Time the use case that the command and the workbench call."""
    path = largest_demo()
    text = path.read_text(encoding="utf-8")
    return Figure(
        name=f"batch sheet of {path.stem}",
        seconds=median_seconds(lambda: batch(path), rounds),
        reference="parsing its YAML with PyYAML in C",
        reference_seconds=median_seconds(lambda: yaml.load(text, yaml.CSafeLoader), rounds),
        target=0.050,
    )
