"""What each kind of step does to the masses and the air in its bowl."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.formula.density import liquid_volume, volume
from entremetry.formula.foam import KEPT, aerate_to, fold, whip
from entremetry.formula.loss import (
    bake,
    evaporate,
    leave_behind,
    reduce_to_brix,
    reduce_to_mass,
    take_out,
    take_up,
    trim,
)
from entremetry.formula.mix import Mix
from entremetry.method.bowl import Bowl
from entremetry.method.cooking import Fold, Heated, Simmer, Soak, Strain, Whip
from entremetry.method.ledger import Ledger
from entremetry.method.portion import Portion
from entremetry.method.shaping import Bake, Cut
from entremetry.method.step import AnyStep
from entremetry.words import say, say_later

SOAKING_FACTOR = 5.0  # a soaked sheet takes up about five times its mass: common_practice
CREAM_OVERRUN = 238.0 / 120.0 - 1.0  # heavy cream, one US cup fluid and whipped: usda_sr28
LIQUID_SHARE = 0.55  # water and alcohol from which a line can soak another: our own rule
CREAM_FAT = 0.25  # milk fat from which a mix is taken for cream
STEAMING = 353.15  # K; from here on the loss of water is worth a word
BOILED_OFF = say_later("water boiled off")
BOILED_DOWN = 378.15  # K; a syrup this hot has lost most of its water


def effect(step: AnyStep, bowl: Bowl, portions: Mapping[str, Portion], ledger: Ledger) -> Bowl:
    """Bowl after the step, with every gain and loss booked.

    Raises
    ------
    BalanceError
        If the step takes more than there is, or asks for what cannot be reached.
    """
    match step:
        case Soak():
            return _soak(step, bowl, portions, ledger)
        case Heated():
            return bowl.with_mix(_heat(step, bowl.mix, ledger))
        case Strain():
            return _strain(step, bowl, portions, ledger)
        case Whip():
            return bowl.with_mix(_whip(step, bowl.mix, ledger))
        case Fold():
            return bowl.with_mix(_fold(step, bowl.mix, ledger))
        case Bake():
            return bowl.with_mix(_bake(step, bowl.mix, ledger))
        case Cut(trim=float()):
            return _cut(step, bowl, ledger)
    return bowl


def left_behind(step: AnyStep, bowl: Bowl, ledger: Ledger) -> Bowl:
    """Bowl without what the step leaves in pan, bowl or bag."""
    if step.left_behind is None:
        return bowl
    mass = step.left_behind.of(bowl.mix.mass)
    return lose(bowl, mass, say("left in pan, bowl or bag"), ledger)


def lose(bowl: Bowl, mass: float, reason: str, ledger: Ledger, **why: str) -> Bowl:
    """Bowl without `mass` [kg] of everything in it."""
    after = leave_behind(bowl.mix, mass)
    ledger.book(after.mass - bowl.mix.mass, reason, **why)
    return bowl.thinned_to(after)


def _soak(step: Soak, bowl: Bowl, portions: Mapping[str, Portion], ledger: Ledger) -> Bowl:
    soaked = {name: portions[name] for name in step.what if name in portions}
    dry = sum(portion.mass for portion in soaked.values())
    water = _soaking_water(step, soaked, dry, ledger)
    for name, portion in soaked.items():
        share = water * portion.mass / dry if dry > 0.0 else 0.0
        ledger.soaking_water[name] = ledger.soaking_water.get(name, 0.0) + share
    source = "" if step.water is not None else "common_practice"
    ledger.book(water, say("water taken up in soaking"), _whose_water(step), source)
    return bowl.with_mix(take_up(bowl.mix, water))


def _whose_water(step: Soak) -> str:
    if step.water is not None:
        return say("the water of the method, all of it goes along")
    factor = f"{SOAKING_FACTOR:g}"
    return say("{factor} times the mass of the dry gelatine, an assumption", factor=factor)


def _soaking_water(step: Soak, soaked: Mapping[str, Portion], dry: float, ledger: Ledger) -> float:
    if step.water is not None:
        return step.water
    if soaked and all(portion.is_gelatine for portion in soaked.values()):
        gelatine = say(
            "the gelatine takes up {factor} times its mass of water, which is added to "
            "the mass of the component (common practice, no source); state the water to be exact",
            factor=f"{SOAKING_FACTOR:g}",
        )
        ledger.assume(gelatine, "common_practice")
        return SOAKING_FACTOR * dry
    if not any(_is_liquid(portion) for portion in soaked.values()):
        ledger.assume(say("no soaking water is stated, none is counted"))
    return 0.0


def _is_liquid(portion: Portion) -> bool:
    parts = portion.constituents
    return parts.water + parts.alcohol > LIQUID_SHARE * portion.mass


def _heat(step: Heated, mix: Mix, ledger: Ledger) -> Mix:
    after = mix
    if step.evaporates is not None:
        after = evaporate(mix, step.evaporates.of(mix.mass))
    elif step.to_mass is not None:
        after = reduce_to_mass(mix, step.to_mass)
    elif isinstance(step, Simmer) and step.to_brix is not None:
        after = reduce_to_brix(mix, step.to_brix)
    else:
        _mention_steam(step, ledger)
    ledger.book(after.mass - mix.mass, say(BOILED_OFF))
    return after


def _mention_steam(step: Heated, ledger: Ledger) -> None:
    hot = step.temperature or 0.0
    if hot >= BOILED_DOWN:
        syrup = say(
            "at {celsius} °C a syrup has lost most of its water, but the method states "
            "no evaporation and none is counted; weigh the pan and state it",
            celsius=f"{hot - 273.15:.0f}",
        )
        ledger.assume(syrup)
    elif isinstance(step, Simmer) or hot >= STEAMING:
        steam = say(
            "no evaporation is stated, none is counted; weigh the pan before and after to know it"
        )
        ledger.assume(steam)


def _strain(step: Strain, bowl: Bowl, portions: Mapping[str, Portion], ledger: Ledger) -> Bowl:
    still_there = dict(bowl.still_there)
    mix = bowl.mix
    for name in step.removes:
        part = portions[name].constituents * still_there.pop(name)
        after = take_out(mix, part)
        reason = say("{name} taken out", name=portions[name].name)
        ledger.book(after.mass - mix.mass, reason)
        mix = after
    bowl = Bowl(mix=mix, still_there=still_there)
    if step.holds_back is None:
        return bowl
    return lose(bowl, step.holds_back, say("held back by the sieve"), ledger)


def _whip(step: Whip, mix: Mix, ledger: Ledger) -> Mix:
    if step.overrun is not None:
        return whip(mix, step.overrun)
    if step.density is not None:
        return aerate_to(mix, step.density)
    if mix.constituents.milk_fat >= CREAM_FAT * mix.mass:
        cream = say(
            "cream is taken to whip to {percent} % overrun, as a cup of heavy "
            "cream that weighs 238 g fluid and 120 g whipped; weigh a known volume to be exact",
            percent=f"{CREAM_OVERRUN * 100:.0f}",
        )
        ledger.assume(cream, "usda_sr28")
        return whip(mix, CREAM_OVERRUN)
    airless = say(
        "neither overrun nor density is stated, no air is counted, so the true volume is larger; "
        "weigh a known volume and state the density"
    )
    ledger.assume(airless)
    return mix


def _fold(step: Fold, mix: Mix, ledger: Ledger) -> Mix:
    if step.kept is None and mix.gas > 0.0:
        folding = say(
            "folding keeps {percent} % of the air (0.85 to 0.95, from memory)",
            percent=f"{KEPT * 100:.0f}",
        )
        ledger.assume(folding, "from_memory", everywhere=True)
    return fold(mix, kept=KEPT if step.kept is None else step.kept)


def _bake(step: Bake, mix: Mix, ledger: Ledger) -> Mix:
    if step.loss is None:
        oven = say("no bake loss is stated, none is counted; weigh before and after the oven")
        ledger.assume(oven)
    baked = bake(mix, step.loss or 0.0)
    ledger.book(baked.mass - mix.mass, say("water lost in the oven"))
    space = max(volume(mix) - liquid_volume(baked), 0.0)
    return Mix(constituents=baked.constituents, gas=space)


def _cut(step: Cut, bowl: Bowl, ledger: Ledger) -> Bowl:
    after = trim(bowl.mix, step.trim or 0.0)
    ledger.book(after.mass - bowl.mix.mass, say("trimmed off"))
    return bowl.thinned_to(after)
