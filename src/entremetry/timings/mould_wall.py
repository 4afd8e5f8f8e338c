"""Thin layers between the food and what is around it: a mould's wall, a base under the piece."""

from __future__ import annotations

from entremetry.dessert.placement import BasePlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.mould import Mould
from entremetry.physics.conduction.surroundings import Wall
from entremetry.timings.component_food import material_of

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

AIR_GAP = (
    0.2e-3  # m of still air on the whole between two solids laid together, our_own: a crumb is
)
# rough, and 50 to 150 W/(m2 K) are told of moulded food on plates (from_memory), 0.16 to 0.5 mm
LAID = AIR_GAP / 0.024  # m2 K/W

SILICONE = Wall(thickness=2.0e-3, conductivity=0.235, heat_capacity=1.5e6)
WARM, COLD = 277.15, 263.15  # K, between which a base under the piece warms up


def mould_wall(mould: Mould) -> Wall:
    """Wall of a mould by its material; its own thickness if that is stated."""
    thickness, conductivity, heat_capacity = MATERIALS[mould.material]
    return Wall(
        thickness=mould.wall or thickness,
        conductivity=conductivity,
        heat_capacity=heat_capacity,
    )


def base_under(reckoning: Reckoning) -> Wall | None:
    """The base that a piece stands on with its whole foot, as a layer; None if it has none.

    The piece was set when it came onto the base, so there is air between them.
    """
    for placement in reckoning.dessert.document.placement:
        if isinstance(placement, BasePlacement) and placement.sits == "under":
            material = material_of(reckoning, placement.component)
            warm, cold = material.enthalpy(WARM), material.enthalpy(COLD)
            return Wall(
                thickness=placement.thickness,
                conductivity=float(material.conductivity(COLD)),
                heat_capacity=float(warm - cold) / (WARM - COLD),
                contact=LAID,
            )
    return None
