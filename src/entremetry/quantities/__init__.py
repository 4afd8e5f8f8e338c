"""Quantities as people write them, and SI numbers inside."""

from entremetry.quantities.amount import Amount
from entremetry.quantities.parsing import (
    parse_amount,
    parse_area,
    parse_density,
    parse_duration,
    parse_fraction,
    parse_length,
    parse_mass,
    parse_mass_per_area,
    parse_temperature,
    parse_temperature_difference,
    parse_volume,
)
from entremetry.quantities.spelling import unit_named
from entremetry.quantities.table import UNITS
from entremetry.quantities.temperature import gas_mark, to_celsius, to_fahrenheit
from entremetry.quantities.unit import Kind, Measures, Unit

__all__ = [
    "UNITS",
    "Amount",
    "Kind",
    "Measures",
    "Unit",
    "gas_mark",
    "parse_amount",
    "parse_area",
    "parse_density",
    "parse_duration",
    "parse_fraction",
    "parse_length",
    "parse_mass",
    "parse_mass_per_area",
    "parse_temperature",
    "parse_temperature_difference",
    "parse_volume",
    "to_celsius",
    "to_fahrenheit",
    "unit_named",
]
