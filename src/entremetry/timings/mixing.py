"""Where a mix lands when cold is folded into warm, and how warm the base must be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from entremetry.dessert.dessert import Component
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange, QuantityError
from entremetry.formula.density import liquid_density
from entremetry.formula.mix import Mix
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.cooking import Fold
from entremetry.method.shaping import Bake
from entremetry.physics import specific_enthalpy
from entremetry.physics.mixing_temperature import Part, mixing_temperature, temperature_needed
from entremetry.quantities import format_celsius, format_mass
from entremetry.timings.bowl_content import bowl_content, mix_of, steps_before, tags_of
from entremetry.timings.component_food import component_food
from entremetry.timings.place import place
from entremetry.timings.start import stated_temperature
from entremetry.timings.step_temperatures import Fact, StepTemperatures
from entremetry.timings.timed_step import TimedStep
from entremetry.words import say

CREAM_AT = 279.15  # K, 6 °C: whipped cream out of a cold bowl, common_practice
AIMED_AT = 298.15  # K, 25 °C: above the setting of gelatine, below the melting of the foam
WHIPPED = "whippable"
SOURCES = ("common_practice", "choi_okos_1986")


def mixing_answer(
    reckoning: Reckoning, timed: TimedStep, kitchen: KitchenDocument | None
) -> StepTemperatures:
    """Temperature of the mix, and what the base would need for 25 °C.

    Raises
    ------
    QuantityError
        If nothing enters at the step, or the method says nowhere how warm the base is.
    """
    component = timed.component
    if component is None:
        raise QuantityError(say("a fold in the assembly"), say("a fold in a component's method"))
    sides = _sides(reckoning, component, timed.number - 1, kitchen)
    if sides is None:
        raise QuantityError(
            say("no base of a stated temperature before '{step}'", step=timed.sentence),
            say("an earlier step that says how warm the base is, such as cool-to"),
        )
    base, added = sides
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=None,
        time=None,
        low=None,
        high=None,
        reason=say("a matter of a minute or two; what counts is where the temperature lands"),
        mostly="",
        because=say("heat kept: what the base loses is what the rest gains, melting fat included"),
        sources=SOURCES,
        assumptions=(
            say(
                "The base is at {base}, what is added at {added}; the bowl takes no heat.",
                base=format_celsius(base.temperature),
                added=format_celsius(added.temperature),
            ),
        ),
        written_time=timed.step.time,
        facts=(*_facts(base, added), *_without_melting(reckoning, timed, kitchen)),
    )


def folded_temperature(
    reckoning: Reckoning, component: Component, kitchen: KitchenDocument | None
) -> float | None:
    """Temperature of a component after its last fold [K]; None if none, or not told."""
    folds = [n for n, step in enumerate(component.steps) if isinstance(step, Fold)]
    if not folds:
        return None
    later = component.steps[folds[-1] + 1 :]
    if stated_temperature(later) is not None or any(isinstance(s, Bake) for s in later):
        return None
    sides = _sides(reckoning, component, folds[-1], kitchen)
    return None if sides is None else mixing_temperature(sides)


def _sides(
    reckoning: Reckoning,
    component: Component,
    index: int,
    kitchen: KitchenDocument | None,
    *,
    fat_melts: bool = True,
) -> tuple[Part, Part] | None:
    """Base in the bowl and what is folded in; None if the method does not tell."""
    content = bowl_content(component, index)
    warm = stated_temperature(steps_before(component, index))
    if not content.before or not content.entering or warm is None:
        return None
    whipped = WHIPPED in tags_of(reckoning, component, content.entering)
    cold = CREAM_AT if whipped else place("room", None, kitchen).temperature
    before, entering = (mix_of(reckoning, component, n) for n in (content.before, content.entering))
    return (
        _part(before, warm, component, fat_melts=fat_melts),
        _part(entering, cold, component, fat_melts=fat_melts),
    )


def _part(mix: Mix, temperature: float, component: Component, *, fat_melts: bool = True) -> Part:
    food = component_food(mix, component.kind, liquid_density(mix))
    if not fat_melts:
        food = replace(food, melting_fats={})

    def enthalpy(at: float) -> float:
        return float(specific_enthalpy(food, np.asarray(at)))

    return Part(mass=mix.mass, temperature=temperature, enthalpy=enthalpy)


def _without_melting(
    reckoning: Reckoning, timed: TimedStep, kitchen: KitchenDocument | None
) -> Iterator[Fact]:
    """What the plain sum of masses, heats and temperatures gives, for who reckons by hand."""
    if timed.component is None:
        return
    sides = _sides(reckoning, timed.component, timed.number - 1, kitchen, fat_melts=False)
    if sides is not None:
        yield Fact(
            name=say("temperature if no fat melted"),
            value=mixing_temperature(sides) - 273.15,
            unit="°C",
            because=say(
                "as one reckons by hand; the hard fat of cold cream takes up heat as it melts"
            ),
        )


def _facts(base: Part, added: Part) -> Iterator[Fact]:
    masses = say(
        "{base} of base and {added} folded in",
        base=format_mass(base.mass),
        added=format_mass(added.mass),
    )
    yield Fact(
        name=say("temperature of the mix"),
        value=mixing_temperature((base, added)) - 273.15,
        unit="°C",
        because=masses,
    )
    try:
        needed = temperature_needed((added,), base, AIMED_AT)
    except OutsideRange:
        return
    yield Fact(
        name=say("base needed for a mix of 25 °C"),
        value=needed - 273.15,
        unit="°C",
        because=say(
            "above the setting of gelatine (about 20 °C), below 30 °C where the foam melts"
        ),
    )
