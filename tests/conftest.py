"""Marks every test with the suite its folder belongs to, and says how properties are drawn."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

TESTS = Path(__file__).parent
SUITES = frozenset({"unit", "published", "properties", "browser", "architecture"})

settings.register_profile(
    "ci", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile(
    "fuzz",
    derandomize=False,
    deadline=None,
    max_examples=int(os.environ.get("ENTREMETRY_EXAMPLES", "2000")),
    suppress_health_check=[HealthCheck.too_slow],
    print_blob=True,
)
settings.load_profile("ci")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Give each test the marker of its suite; a test in no suite is an error."""
    for item in items:
        if TESTS in item.path.parents:
            item.add_marker(suite_of(item.path))


def suite_of(path: Path) -> str:
    """Name of the suite that a test file belongs to: the first folder below tests/."""
    suite = path.relative_to(TESTS).parts[0]
    if suite not in SUITES:
        raise pytest.UsageError(f"{path.name} lies in no suite; put it in one of {sorted(SUITES)}")
    return suite
