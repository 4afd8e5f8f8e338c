"""The wall of a mould, between the food and the air."""

from __future__ import annotations

from entremetry.kitchen.mould import Mould
from entremetry.physics.conduction.surroundings import Wall

# Thickness [m], conductivity [W/(m K)], heat capacity per volume [J/(m3 K)]: from_memory, but for
# silicone, whose conductivity of 0.22 to 0.25 was measured on sheets.
MATERIALS = {
    "silicone": (2.0e-3, 0.235, 1.5e6),
    "metal": (0.8e-3, 16.0, 3.9e6),
    "plastic": (0.5e-3, 0.2, 1.7e6),
    "glass": (2.5e-3, 1.0, 2.1e6),
    "ceramic": (5.0e-3, 1.5, 2.0e6),
    "paper": (0.4e-3, 0.12, 1.0e6),
}


def mould_wall(mould: Mould) -> Wall:
    """Wall of a mould by its material; its own thickness if that is stated."""
    thickness, conductivity, heat_capacity = MATERIALS[mould.material]
    return Wall(
        thickness=mould.wall or thickness,
        conductivity=conductivity,
        heat_capacity=heat_capacity,
    )
