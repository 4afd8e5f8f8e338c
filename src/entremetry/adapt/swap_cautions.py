"""What a swap asks of the author beside other masses."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from entremetry.adapt.rebalanced import Change
from entremetry.adapt.swap import Swapped
from entremetry.dessert.dessert import Component
from entremetry.formula.gelatine_swap import AGAR_DOSE, agent, dry_part, in_place_of
from entremetry.larder.ingredient import Ingredient
from entremetry.physics.gelatine import SETTING
from entremetry.physics.gels import AGAR, Gel
from entremetry.quantities import format_celsius, format_mass

LEAST_WHIPPING_FAT = 0.30  # kg/kg of milk fat: common_practice
HYDRATED = 0.5  # part that is gelatine below which it brings its own water


def cautions(swapped: Swapped, component: Component) -> tuple[Change, ...]:
    """Every caution of one swapped line."""
    return tuple(
        Change(component=swapped.component, line=swapped.line, kind="caution", text=text)
        for rule in RULES
        for text in rule(swapped, component)
    )


def _both_bloom_rules(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if swapped.old.bloom is None or new.bloom is None:
            continue
        both = in_place_of(swapped.old_mass, swapped.old, new)
        yield (
            f"{format_mass(swapped.old_mass)} of {swapped.old.name} are "
            f"{format_mass(both.linear)} of {new.name} by the rule of the trade (mass times "
            f"Bloom) and {format_mass(both.square_root)} by gel strength (root of Bloom); the "
            "two rules are both in print, so let a spoonful set in the cold first"
        )


def _soaking(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if swapped.old.bloom is None or new.bloom is None:
            continue
        if dry_part(new) < HYDRATED <= dry_part(swapped.old):
            yield f"{new.name} brings its own water: take the soaking out of the method"
        elif dry_part(swapped.old) < HYDRATED <= dry_part(new):
            yield f"{new.name} must be soaked first, in about five times its mass of cold water"
        elif ("weigh-only" in new.tags) != ("weigh-only" in swapped.old.tags):
            yield (
                "powder drinks up all the water it is soaked in, sheets are soaked in plenty and "
                "wrung out: state the soaking water in the method"
            )


def _another_setting_agent(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        gel = agent(new)
        if gel is None or swapped.old.bloom is None:
            continue
        yield _dose(new, gel)
        yield (
            f"the method changes: boil the liquid with {new.name} (above "
            f"{format_celsius(gel.hydrates_at)}) for a minute or two before anything else, and "
            f"fold while it is warmer than {format_celsius(gel.sets.high)}, for it sets between "
            f"{format_celsius(gel.sets.low)} and {format_celsius(gel.sets.high)}"
        )
        if gel.melts is not None and gel.melts.low > SETTING.melts_by:
            yield f"it does not melt in the mouth: it melts from {format_celsius(gel.melts.low)}"
        if gel.weeps:
            yield "its gel loses water after it has been frozen and thawed: make a small trial"
        if gel.needs:
            yield f"{new.name} sets only with {gel.needs}"


def _dose(new: Ingredient, gel: Gel) -> str:
    if gel is AGAR:
        return (
            f"{new.name} is dosed at {AGAR_DOSE * 100:g} % of the water; cooks use 0.2 to 0.9 %, "
            "and its strength cannot be reckoned from that of gelatine: let a spoonful set first"
        )
    low, high = gel.dose.low * 100.0, gel.dose.high * 100.0
    return f"{new.name} is dosed in the middle of {low:g} to {high:g} % of the water"


def _gelatine_for_another(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if new.bloom is not None and agent(swapped.old) is not None:
            yield (
                f"{new.name} is dosed as 1.6 % of 200 Bloom on the water; soak it, dissolve it at "
                "50 to 60 °C and do not boil it"
            )


def _whipping(swapped: Swapped, component: Component) -> Iterator[str]:
    whipped = {name for step in component.steps if step.step == "whip" for name in step.what}
    if not {swapped.line, *swapped.lines} & whipped or "whippable" not in swapped.old.tags:
        return
    fat = sum(n.composition.fat * m for n, m in zip(swapped.new, swapped.masses, strict=True))
    part = fat / sum(swapped.masses)
    if len(swapped.new) == 1 and "whippable" not in swapped.new[0].tags:
        yield f"{swapped.new[0].name} does not whip, and the method whips it"
    elif part < LEAST_WHIPPING_FAT:
        yield (
            f"what is whipped now has {part * 100:.0f} % fat; below "
            f"{LEAST_WHIPPING_FAT * 100:.0f} % cream hardly holds air"
        )


def _raw_fruit(swapped: Swapped, component: Component) -> Iterator[str]:
    sets = any(ln.ingredient is not None and ln.ingredient.bloom for ln in component.lines)
    for new in swapped.new:
        if sets and "proteolytic" in new.tags:
            yield f"{new.name} digests gelatine unless it has been heated to 85 °C throughout"


def _allergens(swapped: Swapped, component: Component) -> Iterator[str]:
    there = frozenset[str]().union(*(new.allergens_eu for new in swapped.new))
    brought = sorted(there - swapped.old.allergens_eu)
    if brought:
        yield f"new allergens: {', '.join(brought).replace(':', ': ')}"


def _vegan(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if "vegan" in swapped.old.tags and "vegan" not in new.tags:
            yield f"{new.name} is of animal origin, {swapped.old.name} is not"


RULES: tuple[Callable[[Swapped, Component], Iterator[str]], ...] = (
    _both_bloom_rules,
    _soaking,
    _another_setting_agent,
    _gelatine_for_another,
    _whipping,
    _raw_fruit,
    _allergens,
    _vegan,
)
