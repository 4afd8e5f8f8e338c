"""Mass balance, losses, aeration and concentrations of a mix, in SI units."""

from entremetry.formula.brix import brix, soluble_solids
from entremetry.formula.density import (
    ETHANOL_DENSITY,
    chocolate_density,
    density,
    liquid_density,
    liquid_volume,
    volume,
)
from entremetry.formula.foam import aerate_to, fold, overrun, overrun_of, whip
from entremetry.formula.loss import (
    bake,
    drain,
    evaporate,
    leave_behind,
    reduce_to_brix,
    reduce_to_mass,
    take_out,
    take_up,
    trim,
)
from entremetry.formula.metrics import Metrics, metrics
from entremetry.formula.mix import EMPTY, Mix, mixed
from entremetry.formula.scaling import factor_for_mass, scaled

__all__ = [
    "EMPTY",
    "ETHANOL_DENSITY",
    "Metrics",
    "Mix",
    "aerate_to",
    "bake",
    "brix",
    "chocolate_density",
    "density",
    "drain",
    "evaporate",
    "factor_for_mass",
    "fold",
    "leave_behind",
    "liquid_density",
    "liquid_volume",
    "metrics",
    "mixed",
    "overrun",
    "overrun_of",
    "reduce_to_brix",
    "reduce_to_mass",
    "scaled",
    "soluble_solids",
    "take_out",
    "take_up",
    "trim",
    "volume",
    "whip",
]
