"""The command's start to its first output, against a Python that does nothing."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path
from statistics import median

from figure import Figure

COMMAND = str(Path(sys.executable).parent / "entremetry")


def seconds_to_first_byte(command: list[str]) -> float:
    """Time from the start of a command to its first byte, or to its end if it prints nothing.

    Raises
    ------
    RuntimeError
        If the command does not end well: the time of a failure says nothing.
    """
    start = time.perf_counter()
    with subprocess.Popen(
        command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout is not None
        process.stdout.read(1)
        taken = time.perf_counter() - start
        _, complaint = process.communicate()
    if process.returncode:
        raise RuntimeError(f"{command[1:]} failed: {complaint.decode(errors='replace')[-400:]}")
    return taken


def median_to_first_byte(command: list[str], rounds: int) -> float:
    """Median over `rounds` starts, after one that is not counted."""
    seconds_to_first_byte(command)
    return median(seconds_to_first_byte(command) for _ in range(rounds))


def measure(rounds: int = 10) -> Figure:
    """Time `entremetry --help`."""
    return Figure(
        name="entremetry --help, to its first output",
        seconds=median_to_first_byte([COMMAND, "--help"], rounds),
        reference="python -c pass",
        reference_seconds=median_to_first_byte([sys.executable, "-c", "pass"], rounds),
        target=0.600,
    )
