"""All bench checks of the largest demo with its temperatures known, against parsing its file."""

from __future__ import annotations

import yaml
from bench_batch import largest_demo
from figure import Figure, median_seconds

from entremetry.checks.registry import check
from entremetry.errors import EntremetryError
from entremetry.timings.answer import answer
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.timings.timed_step import timed_steps
from entremetry.usecases.batch import reckoned, surroundings


def measure(rounds: int = 30) -> Figure:
    """Time the rules alone: making, placing and temperatures are there already."""
    path = largest_demo()
    text = path.read_text(encoding="utf-8")
    reckoning = reckoned(text, str(path), surroundings(None, "kitchen"))
    known: dict[str, StepTemperatures] = {}
    for step in timed_steps(reckoning.dessert):
        try:
            known[step.id] = answer(reckoning, step.id, None)
        except EntremetryError:
            continue
    return Figure(
        name=f"bench checks of {path.stem}",
        seconds=median_seconds(lambda: check(reckoning, None, known), rounds),
        reference="parsing its YAML with PyYAML in C",
        reference_seconds=median_seconds(lambda: yaml.load(text, yaml.CSafeLoader), rounds),
        target=0.300,
    )
