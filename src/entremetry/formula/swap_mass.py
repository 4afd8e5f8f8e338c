"""What an ingredient weighs in the place of another, before anything is balanced."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.formula.gelatine_swap import agent, in_place_of, usual_dose
from entremetry.larder.ingredient import Ingredient
from entremetry.physics.gelatine import BloomRule

LEAST_PART = 0.05  # of the old mass, so that each new ingredient has a share to be balanced from


def starting_masses(
    old: Ingredient,
    mass: float,
    new: Sequence[Ingredient],
    *,
    water: float,
    rule: BloomRule = BloomRule.LINEAR,
) -> tuple[float, ...]:
    """Masses from which the balance of a swap starts. [kg]

    A gelatine is converted by Bloom, another setting agent dosed on the `water` [kg] of the
    component, a sweetener taken by its dry solids, anything else weight for weight; several
    ingredients in the place of one are mixed to resemble it.
    """
    if len(new) > 1:
        return _resembling(old, mass, new)
    return (_in_place(old, mass, new[0], water, rule),)


def _in_place(
    old: Ingredient, mass: float, new: Ingredient, water: float, rule: BloomRule
) -> float:
    if old.bloom is not None and new.bloom is not None:
        return in_place_of(mass, old, new).by(rule)
    dose = usual_dose(new, rule)
    if dose is not None and (old.bloom is not None or agent(old) is not None):
        return dose * water
    if _sweetens(old) and _sweetens(new):
        return mass * old.composition.dry_solids / new.composition.dry_solids
    return mass


def _sweetens(ingredient: Ingredient) -> bool:
    """Whether it is chosen for its sugar alone."""
    parts = ingredient.composition
    return "sweetener" in ingredient.tags and parts.fat < 0.01 and parts.dry_solids > 0.5


def _resembling(old: Ingredient, mass: float, new: Sequence[Ingredient]) -> tuple[float, ...]:
    """Masses of several that come nearest to the composition of one."""
    import numpy as np
    from scipy.optimize import nnls

    from entremetry.formula.state import state_of

    wanted = state_of(old.composition)
    shares, _ = nnls(np.array([state_of(each.composition) for each in new]).T, wanted)
    return tuple(mass * max(float(share), LEAST_PART) for share in shares)
