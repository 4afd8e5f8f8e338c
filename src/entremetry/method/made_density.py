"""The density of what was made, with its reason and how sure it is."""

from __future__ import annotations

from entremetry.formula.density import density, liquid_volume
from entremetry.formula.foam import overrun_of
from entremetry.formula.mix import Mix
from entremetry.sources.figure import Figure
from entremetry.words import decimal, say, say_as

MEASURED = 0.03  # a cup weighed at the bench: our own judgement
LIQUID = 0.02
AIRY = 0.08  # air lost in folding and spreading is hardly ever measured
BAKED = 0.50  # rise and shrinking in the oven are not computed
BASIS = ("choi_okos_1986",)


def measured_density(value: float) -> Figure:
    """Figure for a density that the author measured."""
    shown = decimal(f"{value / 1000:.3g}")
    because = say("{density} g/ml, the author's own measurement", density=shown)
    return Figure(value=value, unit="kg/m3", because=because, relative_error=MEASURED)


def mix_density(mix: Mix, *, dough: bool = False, sources: tuple[str, ...] = ()) -> Figure:
    """Figure for a mix that was never in the oven."""
    shares = _shares(mix)
    if mix.gas > 0.0:
        percent = f"{overrun_of(mix) * 100:.0f}"
        because = say("{shares}, with air of {percent} % overrun", shares=shares, percent=percent)
        return _computed(mix, because, AIRY, sources)
    if dough:
        because = say("{shares}; the air worked into a dough is not counted", shares=shares)
        return _computed(mix, because, AIRY, sources)
    return _computed(mix, say("{shares}, without air", shares=shares), LIQUID, sources)


def baked_density(mix: Mix, *, sources: tuple[str, ...] = ()) -> Figure:
    """Figure for something baked that nobody has weighed."""
    because = say(
        "{shares}; it is taken to keep the volume it had before the oven", shares=_shares(mix)
    )
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
        say_as("constituent", "water"): share.water,
        say_as("constituent", "sugars"): share.sugars,
        say_as("constituent", "fat"): share.fat,
        say_as("constituent", "protein"): share.protein,
        say_as("constituent", "alcohol"): share.alcohol,
    }
    told = [
        f"{name} {decimal(f'{part * 100:.3g}')} %" for name, part in named.items() if part >= 0.005
    ]
    return say("from the volumes of its constituents ({shares})", shares=", ".join(told))
