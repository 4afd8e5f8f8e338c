"""One step of a demo, from its file to the answer with its interval, against reading the file."""

from __future__ import annotations

from importlib.resources import as_file, files

import yaml
from figure import Figure, median_seconds

from entremetry.usecases.temperatures import temperatures

DEMO, STEP = "blackcurrant-vanilla-dome.yaml", "assembly-6"


def measure(rounds: int = 10) -> Figure:
    """Time the thawing of the demo dome, with its low and its high end."""
    with as_file(files("entremetry.store").joinpath("data", "demo", DEMO)) as path:
        text = path.read_text(encoding="utf-8")
        return Figure(
            name="thawing of the demo dome, with interval",
            seconds=median_seconds(lambda: temperatures(path, step=STEP), rounds),
            reference="parsing its YAML with PyYAML in C",
            reference_seconds=median_seconds(lambda: yaml.load(text, yaml.CSafeLoader), rounds),
            target=0.150,
        )
