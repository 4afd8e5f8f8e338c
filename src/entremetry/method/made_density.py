"""The density of what was made, with its reason and how sure it is."""

from __future__ import annotations

from entremetry.formula.density import density, liquid_volume
from entremetry.formula.foam import overrun_of
from entremetry.formula.mix import Mix
from entremetry.sources.figure import Figure

MEASURED = 0.03  # a cup weighed at the bench: our own judgement
LIQUID = 0.02
AIRY = 0.08  # air lost in folding and spreading is hardly ever measured
BAKED = 0.50  # rise and shrinking in the oven are not computed
BASIS = ("choi_okos_1986",)


def measured_density(value: float) -> Figure:
    """Figure for a density that the author measured."""
    because = f"{value / 1000:.3g} g/ml, the author's own measurement"
    return Figure(value=value, unit="kg/m3", because=because, relative_error=MEASURED)


def mix_density(mix: Mix, *, dough: bool = False, sources: tuple[str, ...] = ()) -> Figure:
    """Figure for a mix that was never in the oven."""
    shares = _shares(mix)
    if mix.gas > 0.0:
        because = f"{shares}, with air of {overrun_of(mix) * 100:.0f} % overrun"
        return _computed(mix, because, AIRY, sources)
    if dough:
        because = f"{shares}; the air worked into a dough is not counted"
        return _computed(mix, because, AIRY, sources)
    return _computed(mix, f"{shares}, without air", LIQUID, sources)


def baked_density(mix: Mix, *, sources: tuple[str, ...] = ()) -> Figure:
    """Figure for something baked that nobody has weighed."""
    because = f"{_shares(mix)}; it is taken to keep the volume it had before the oven"
    return _computed(mix, because, BAKED, sources)


def with_density(mix: Mix, value: float) -> Mix:
    """Mix with as much gas as the density `value` [kg/m3] implies; none if it is denser."""
    space = mix.mass / value - liquid_volume(mix)
    return Mix(constituents=mix.constituents, gas=max(space, 0.0))


def _computed(mix: Mix, because: str, error: float, sources: tuple[str, ...]) -> Figure:
    return Figure(
        value=density(mix),
        unit="kg/m3",
        because=because,
        sources=(*BASIS, *sources),
        relative_error=error,
    )


def _shares(mix: Mix) -> str:
    share = mix.constituents * (1.0 / mix.mass if mix.mass > 0.0 else 0.0)
    named = {
        "water": share.water,
        "sugars": share.sugars,
        "fat": share.fat,
        "protein": share.protein,
        "alcohol": share.alcohol,
    }
    told = [f"{name} {part * 100:.3g} %" for name, part in named.items() if part >= 0.005]
    return "from the volumes of its constituents (" + ", ".join(told) + ")"
