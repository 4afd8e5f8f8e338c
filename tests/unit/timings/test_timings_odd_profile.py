"""A profile whose ledge is thinner than a cell: its skin finds no cell of its own."""

from __future__ import annotations

import pytest

from entremetry.physics.material import constant_material
from entremetry.shapes import Revolution
from entremetry.timings.piece_body import alone, piece_body

LEDGE = ((0.25, 0.0), (0.359375, 0.140625), (0.125, 0.203125), (0.318359375, 0.208984375))


def test_a_thin_ledge_leaves_the_volume_as_it_is() -> None:
    solid = Revolution(points=LEDGE)
    stuff = {"soft": constant_material("soft", 0.4, 2e6)}
    assert piece_body(alone(solid, "soft", "Soft"), stuff).body.volume == pytest.approx(
        solid.volume, rel=1e-3
    )
