"""What a swap asks of the author beside other masses."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from entremetry.adapt.rebalanced import Change
from entremetry.adapt.swap import Swapped
from entremetry.dessert.dessert import Component
from entremetry.formula.gelatine_swap import AGAR_DOSE, agent, dry_part, in_place_of
from entremetry.labels.language_words import allergen_code
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.physics.gelatine import SETTING
from entremetry.physics.gels import AGAR, Gel
from entremetry.quantities import format_celsius, format_mass
from entremetry.words import decimal, say, say_later

LEAST_WHIPPING_FAT = 0.30  # kg/kg of milk fat: common_practice
NEEDS = {
    needs: needs
    for needs in (
        say_later("calcium"),
        say_later("potassium or milk"),
        say_later("sugar and acid"),
    )
}
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
        yield say(
            "{mass} of {old} are {linear} of {new} by the rule of the trade (mass times Bloom) and "
            "{root} by gel strength (root of Bloom); the two rules are both in print, so let a "
            "spoonful set in the cold first",
            mass=format_mass(swapped.old_mass),
            old=ingredient_name(swapped.old),
            linear=format_mass(both.linear),
            new=ingredient_name(new),
            root=format_mass(both.square_root),
        )


def _soaking(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if swapped.old.bloom is None or new.bloom is None:
            continue
        if dry_part(new) < HYDRATED <= dry_part(swapped.old):
            yield say(
                "{name} brings its own water: take the soaking out of the method",
                name=ingredient_name(new),
            )
        elif dry_part(swapped.old) < HYDRATED <= dry_part(new):
            yield say(
                "{name} must be soaked first, in about five times its mass of cold water",
                name=ingredient_name(new),
            )
        elif ("weigh-only" in new.tags) != ("weigh-only" in swapped.old.tags):
            yield say(
                "powder drinks up all the water it is soaked in, sheets are soaked in plenty and "
                "wrung out: state the soaking water in the method"
            )


def _another_setting_agent(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        gel = agent(new)
        if gel is None or swapped.old.bloom is None:
            continue
        yield _dose(new, gel)
        yield say(
            "the method changes: boil the liquid with {name} (above {hydrates}) for a minute or "
            "two before anything else, and fold while it is warmer than {high}, for it sets "
            "between {low} and {high}",
            name=ingredient_name(new),
            hydrates=format_celsius(gel.hydrates_at),
            low=format_celsius(gel.sets.low),
            high=format_celsius(gel.sets.high),
        )
        if gel.melts is not None and gel.melts.low > SETTING.melts_by:
            low = format_celsius(gel.melts.low)
            yield say("it does not melt in the mouth: it melts from {temperature}", temperature=low)
        if gel.weeps:
            yield say("its gel loses water after it has been frozen and thawed: make a small trial")
        if gel.needs:
            needs = say(NEEDS[gel.needs])
            yield say("{name} sets only with {needs}", name=ingredient_name(new), needs=needs)


def _dose(new: Ingredient, gel: Gel) -> str:
    if gel is AGAR:
        return say(
            "{name} is dosed at {dose} % of the water; cooks use 0.2 to 0.9 %, and its strength "
            "cannot be reckoned from that of gelatine: let a spoonful set first",
            name=ingredient_name(new),
            dose=decimal(f"{AGAR_DOSE * 100:g}"),
        )
    return say(
        "{name} is dosed in the middle of {low} to {high} % of the water",
        name=ingredient_name(new),
        low=decimal(f"{gel.dose.low * 100.0:g}"),
        high=decimal(f"{gel.dose.high * 100.0:g}"),
    )


def _gelatine_for_another(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if new.bloom is not None and agent(swapped.old) is not None:
            yield say(
                "{name} is dosed as 1.6 % of 200 Bloom on the water; soak it, dissolve it at "
                "50 to 60 °C and do not boil it",
                name=ingredient_name(new),
            )


def _whipping(swapped: Swapped, component: Component) -> Iterator[str]:
    whipped = {name for step in component.steps if step.step == "whip" for name in step.what}
    if not {swapped.line, *swapped.lines} & whipped or "whippable" not in swapped.old.tags:
        return
    fat = sum(n.composition.fat * m for n, m in zip(swapped.new, swapped.masses, strict=True))
    part = fat / sum(swapped.masses)
    if len(swapped.new) == 1 and "whippable" not in swapped.new[0].tags:
        yield say(
            "{name} does not whip, and the method whips it", name=ingredient_name(swapped.new[0])
        )
    elif part < LEAST_WHIPPING_FAT:
        yield say(
            "what is whipped now has {fat} % fat; below {least} % cream hardly holds air",
            fat=f"{part * 100:.0f}",
            least=f"{LEAST_WHIPPING_FAT * 100:.0f}",
        )


def _raw_fruit(swapped: Swapped, component: Component) -> Iterator[str]:
    sets = any(ln.ingredient is not None and ln.ingredient.bloom for ln in component.lines)
    for new in swapped.new:
        if sets and "proteolytic" in new.tags:
            yield say(
                "{name} digests gelatine unless it has been heated to 85 °C throughout",
                name=ingredient_name(new),
            )


def _allergens(swapped: Swapped, component: Component) -> Iterator[str]:
    there = frozenset[str]().union(*(new.allergens_eu for new in swapped.new))
    brought = sorted(there - swapped.old.allergens_eu)
    if brought:
        yield say("new allergens: {names}", names=", ".join(map(allergen_code, brought)))


def _vegan(swapped: Swapped, component: Component) -> Iterator[str]:
    for new in swapped.new:
        if "vegan" in swapped.old.tags and "vegan" not in new.tags:
            yield say(
                "{name} is of animal origin, {old} is not",
                name=ingredient_name(new),
                old=ingredient_name(swapped.old),
            )


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
