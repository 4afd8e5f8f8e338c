"""Every solid that can be drawn is drawn."""

from __future__ import annotations

import dataclasses

import pytest
from hypothesis import Phase, find, settings

from entremetry import shapes
from properties.strategies_shapes import SOLIDS

READ_FROM_FILES = {"MeshSolid"}


def solids() -> list[str]:
    """Public classes that tell a volume."""
    named = {name: getattr(shapes, name) for name in shapes.__all__}
    return sorted(
        name
        for name, kind in named.items()
        if dataclasses.is_dataclass(kind) and hasattr(kind, "volume_below")
    )


def test_the_solids_are_found() -> None:
    assert {"Box", "Log", "Prism", "SphericalCap"} | READ_FROM_FILES <= set(solids())


@pytest.mark.parametrize("name", sorted(set(solids()) - READ_FROM_FILES))
def test_a_public_solid_has_a_strategy(name: str) -> None:
    kind = getattr(shapes, name)
    seek = settings(max_examples=1000, phases=[Phase.generate])
    drawn = find(SOLIDS, lambda solid: isinstance(solid, kind), settings=seek)
    assert isinstance(drawn, kind)
