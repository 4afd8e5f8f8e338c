"""Concentration of the liquid in a mix."""

from __future__ import annotations

from entremetry.formula.mix import Mix


def soluble_solids(mix: Mix) -> float:
    """Mass that is taken to be dissolved in the water of a mix.

    Parameters
    ----------
    mix : Mix
        Any mix.

    Returns
    -------
    float
        Sugars, polyols, organic acids and the carbohydrate that is neither starch nor fibre. [kg]

    Notes
    -----
    The rest of the carbohydrate counts because it is what a glucose syrup holds beside its sugars
    (dextrins) and what food tables leave unnamed in fruit. Ash is left out: much of the ash of
    milk, cocoa and flour is not in solution. A purée therefore reads up to half a degree low.
    """
    parts = mix.constituents
    return parts.sugars + parts.polyols + parts.organic_acids + parts.other_carbohydrate


def brix(mix: Mix) -> float:
    """Degrees Brix of the liquid in a mix: soluble solids per hundred of the liquid, by mass.

    Parameters
    ----------
    mix : Mix
        Any mix; fat, protein, starch, fibre and ash are not part of its liquid.

    Returns
    -------
    float
        100 soluble / (soluble + water + alcohol); 0 for a mix without any. [%]

    Notes
    -----
    By mass, not by refraction. A refractometer reads alcohol as sugar, so the two part for
    mixes with spirits.
    """
    soluble = soluble_solids(mix)
    liquid = soluble + mix.constituents.water + mix.constituents.alcohol
    return 100.0 * soluble / liquid if liquid > 0.0 else 0.0
