"""A fresh command from its start to the first byte of a batch sheet, against a bare Python."""

from __future__ import annotations

import sys

from bench_batch import largest_demo
from bench_start import COMMAND, median_to_first_byte
from figure import Figure


def measure(rounds: int = 10) -> Figure:
    """Time `entremetry batch` on the largest demo, imports and all."""
    return Figure(
        name="entremetry batch, to its first output",
        seconds=median_to_first_byte([COMMAND, "batch", str(largest_demo())], rounds),
        reference="python -c pass",
        reference_seconds=median_to_first_byte([sys.executable, "-c", "pass"], rounds),
        target=0.600,
    )
