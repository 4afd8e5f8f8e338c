"""Quantities as people write them, and SI numbers inside.

The pydantic fields stand in `entremetry.quantities.fields`, which is not loaded from here.
"""

from entremetry.quantities.amount import Amount
from entremetry.quantities.household import Household, MeasureWeight, Method, household
from entremetry.quantities.oven import FAN_CORRECTION, is_conventional, oven_temperature
from entremetry.quantities.paired import PairedSlip, find_slips
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
from entremetry.quantities.printing import (
    format_area,
    format_celsius,
    format_density,
    format_duration,
    format_fraction,
    format_length,
    format_mass,
    format_mass_per_area,
    format_ounces,
    format_temperature,
    format_volume,
)
from entremetry.quantities.spelling import unit_named
from entremetry.quantities.table import UNITS
from entremetry.quantities.temperature import gas_mark, to_celsius, to_fahrenheit
from entremetry.quantities.unit import Kind, Measures, Unit

__all__ = [
    "FAN_CORRECTION",
    "UNITS",
    "Amount",
    "Household",
    "Kind",
    "MeasureWeight",
    "Measures",
    "Method",
    "PairedSlip",
    "Unit",
    "find_slips",
    "format_area",
    "format_celsius",
    "format_density",
    "format_duration",
    "format_fraction",
    "format_length",
    "format_mass",
    "format_mass_per_area",
    "format_ounces",
    "format_temperature",
    "format_volume",
    "gas_mark",
    "household",
    "is_conventional",
    "oven_temperature",
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
