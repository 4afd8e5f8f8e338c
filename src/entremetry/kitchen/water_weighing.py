"""A mould measured with water: by the jug, or on the scales."""

from __future__ import annotations

from entremetry.errors import QuantityError
from entremetry.quantities import parse_mass, parse_volume

WATER_DENSITY = 998.2  # kg/m3 at 20 °C, crc_handbook_102


def water_volume(text: str) -> float:
    """Volume that a mould holds, from '75 ml' or from '75 g', the weight of the water. [m3]

    Raises
    ------
    QuantityError
        If the text is neither a volume nor a mass.
    """
    try:
        return parse_volume(text)
    except QuantityError as no_volume:
        try:
            return parse_mass(text) / WATER_DENSITY
        except QuantityError:
            raise no_volume from None
