"""How much of what sets a component there is, against the least that holds."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.verdict import Input
from entremetry.larder.ingredient import Ingredient
from entremetry.physics.gelatine import BloomRule, equivalent_mass
from entremetry.words import decimal, say, say_later

GELATINE = 0.006  # of a mousse or insert, 200 Bloom: common_practice
COCOA_BUTTER = 0.08  # common_practice
MILK_FAT = 0.16  # solid part at 4 °C of what fat there is: our_own
MILK_FAT_SOLID = 0.55  # at 4 °C: from_memory
EGG = 0.25  # of whole egg and yolk, cooked: common_practice
EGG_COOKED = 348.15  # K
STARCH = 0.03
STARCH_COOKED = 335.15  # K
AGENTS: Mapping[str, float] = {
    say_later("agar"): 0.002,
    say_later("carrageenan-kappa"): 0.002,
    say_later("carrageenan-iota"): 0.002,
    say_later("gellan"): 0.001,
    say_later("konjac"): 0.003,
    say_later("alginate"): 0.005,
    say_later("pectin-hm"): 0.004,
    say_later("pectin-liquid"): 0.03,
    say_later("pectin"): 0.007,
    say_later("chia"): 0.04,
}
"""Least dose of the other agents as a part of the component: lersch_2014, common_practice. The
first name that an ingredient's id begins with, or holds, counts; names are said in a verdict."""
GUMS = ("xanthan", "guar", "locust")
GUM = 0.006


def setting_index(each: BenchComponent) -> dict[str, float]:
    """Each thing that sets a component, in units of the least dose that holds on its own.

    Names are as they are written, for whoever reads them to say.
    """
    milk_fat = each.share.milk_fat * MILK_FAT_SOLID
    found = {
        say_later("gelatine"): each.gelatine / GELATINE,
        say_later("cocoa butter"): each.share.cocoa_butter / COCOA_BUTTER,
        say_later("milk fat"): milk_fat / MILK_FAT,
        say_later("egg"): _egg(each) / EGG,
        say_later("starch"): _starch(each) / STARCH,
        **_others(each),
    }
    return {name: value for name, value in found.items() if value >= 0.05}


def grades(each: BenchComponent) -> Iterator[Input]:
    """What a gram of each gelatine that is not of 200 Bloom stands for."""
    for ingredient in each.ingredients():
        bloom = ingredient.bloom
        if bloom is None or abs(bloom - 200.0) < 1.0:
            continue
        linear = equivalent_mass(1.0, bloom, 200.0)
        root = equivalent_mass(1.0, bloom, 200.0, BloomRule.SQUARE_ROOT)
        yield Input(
            name=say("1 g of {bloom} Bloom stands for", bloom=f"{bloom:.0f}"),
            said=say(
                "{linear} g of 200 Bloom (linear rule; {root} g by the square root)",
                linear=decimal(f"{linear:.2f}"),
                root=decimal(f"{root:.2f}"),
            ),
        )


def dose(each: BenchComponent, words: tuple[str, ...]) -> float:
    """Part of a component that ingredients with one of these words in their id make up."""
    return each.agent(_named(words))


def weeping_share(each: BenchComponent) -> float:
    """Part of what sets it that comes from gels which lose water after freezing, 0 to 1."""
    parts = setting_index(each)
    weeping = sum(parts.get(name, 0.0) for name in ("agar", "carrageenan-kappa", "starch"))
    total = sum(parts.values())
    return weeping / total if total > 0.0 else 0.0


def _others(each: BenchComponent) -> dict[str, float]:
    found: dict[str, float] = {}
    for agent, least in AGENTS.items():
        words = tuple(name for name in AGENTS if name != agent and name.startswith(agent))

        def wanted(
            ingredient: Ingredient, agent: str = agent, others: tuple[str, ...] = words
        ) -> bool:
            mine = agent in ingredient.id and "gelling" in ingredient.tags
            return mine and not any(other in ingredient.id for other in others)

        found[agent] = each.agent(wanted) / least
    gums = each.agent(_named(GUMS))
    return {**found, say_later("gum"): gums / GUM}


def _named(words: tuple[str, ...]) -> Callable[[Ingredient], bool]:
    return lambda ingredient: any(word in ingredient.id for word in words)


def _egg(each: BenchComponent) -> float:
    cooked = [
        name
        for name, line in each.lines.items()
        if line.ingredient.startswith(("egg-yolk", "egg-whole")) and each.peaks[name] >= EGG_COOKED
    ]
    return _share(each, cooked)


def _starch(each: BenchComponent) -> float:
    cooked = [
        name
        for name, line in each.lines.items()
        if "thickening" in line.tags
        and not any(gum in line.ingredient for gum in GUMS)
        and (each.peaks[name] >= STARCH_COOKED or "cold-swelling" in line.ingredient)
    ]
    return _share(each, cooked)


def _share(each: BenchComponent, names: list[str]) -> float:
    mass = sum(each.lines[name].mass for name in names)
    return mass / sum(line.mass for line in each.lines.values())
