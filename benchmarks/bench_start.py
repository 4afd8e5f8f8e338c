"""The command's start to its first output, against a Python that does nothing."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from figure import Figure, median_seconds

COMMAND = str(Path(sys.executable).parent / "entremetry")


def first_output(command: list[str]) -> None:
    """Start a command, wait for its first byte or its end, and let it finish."""
    with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
        assert process.stdout is not None
        process.stdout.read(1)
        process.stdout.read()


def measure(rounds: int = 10) -> Figure:
    """Time `entremetry --help`."""
    return Figure(
        name="entremetry --help, to its first output",
        seconds=median_seconds(lambda: first_output([COMMAND, "--help"]), rounds),
        reference="python -c pass",
        reference_seconds=median_seconds(
            lambda: first_output([sys.executable, "-c", "pass"]), rounds
        ),
        target=0.600,
    )
