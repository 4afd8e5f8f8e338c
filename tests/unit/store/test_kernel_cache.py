"""Compiled kernels and the sources they were made from."""

from __future__ import annotations

import os
from pathlib import Path

from entremetry.store.kernel_cache import drop_stale_kernels


def folder_with(tmp_path: Path, *, source_time: float, kernel_time: float) -> Path:
    source, kernel = tmp_path / "step.py", tmp_path / "__pycache__" / "march.1.nbc"
    kernel.parent.mkdir()
    for path, time in ((source, source_time), (kernel, kernel_time)):
        path.write_bytes(b"x")
        os.utime(path, (time, time))
    return tmp_path


def test_kernels_older_than_a_source_go(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, source_time=2000.0, kernel_time=1000.0)
    assert drop_stale_kernels(folder) == 1
    assert not list((folder / "__pycache__").iterdir())


def test_kernels_newer_than_all_sources_stay(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, source_time=1000.0, kernel_time=2000.0)
    assert drop_stale_kernels(folder) == 0
    assert len(list((folder / "__pycache__").iterdir())) == 1


def test_a_folder_without_kernels_is_fine(tmp_path: Path) -> None:
    assert drop_stale_kernels(tmp_path) == 0
