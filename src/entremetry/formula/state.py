"""A mix as a row of masses: its constituents in their order, then its gelatine.

Gelatine is counted as gelatine of 200 Bloom. A row can be added and scaled, so the measures of
a formula can be asked while its masses are still sought.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING

from entremetry.formula.freezing import HELD_BY_PROTEIN, SOLUTE_OF
from entremetry.larder.constituents import NAMES, Constituents
from entremetry.physics.solution import WATER_MOLAR_MASS

if TYPE_CHECKING:
    from entremetry.physics.arrays import Floats

PARTS = (*NAMES, "gelatine")
REFERENCE_BLOOM = 200.0


def state_of(parts: Constituents, gelatine: float = 0.0) -> Floats:
    """Row of masses. [kg]"""
    import numpy as np

    return np.array([*(getattr(parts, name) for name in NAMES), gelatine])


def constituents_of(state: Floats) -> Constituents:
    """Constituents of a row; what rounding left below nothing is nothing."""
    return Constituents(
        **{name: max(float(mass), 0.0) for name, mass in zip(NAMES, state, strict=False)}
    )


def weights(of: Mapping[str, float]) -> Floats:
    """Row of weights by which the parts of a state are added up."""
    import numpy as np

    return np.array([of.get(name, 0.0) for name in PARTS])


@cache
def dissolved_moles() -> Floats:
    """Weights that give the moles of everything dissolved. [mol/kg]"""
    return _fixed({name: 1.0 / solute.molar_mass for name, solute in SOLUTE_OF.items()})


@cache
def bent_moles() -> Floats:
    """Weights that give the moles, each times the root of its Norrish constant. [mol/kg]"""
    return _fixed(
        {name: solute.norrish**0.5 / solute.molar_mass for name, solute in SOLUTE_OF.items()}
    )


@cache
def water_moles() -> Floats:
    """Weights that give the moles of water that can freeze. [mol/kg]"""
    per_mole = 1.0 / WATER_MOLAR_MASS
    return _fixed({"water": per_mole, "protein": -HELD_BY_PROTEIN * per_mole})


def _fixed(of: Mapping[str, float]) -> Floats:
    """Weights that are shared and therefore cannot be written to."""
    row = weights(of)
    row.flags.writeable = False
    return row
