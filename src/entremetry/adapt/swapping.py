"""All swaps of one component written into the text, ready to be balanced."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from entremetry.adapt.asking import Asked
from entremetry.adapt.behaviour import Behaviour, component_of
from entremetry.adapt.rebalanced import Change
from entremetry.adapt.swap import Swapped, require_somewhere, swapped_lines, with_swap
from entremetry.adapt.swap_cautions import cautions
from entremetry.dessert.dessert import Dessert
from entremetry.formula.gelatine_swap import agent
from entremetry.larder.constituents import NAMES
from entremetry.larder.spoken_name import ingredient_name
from entremetry.quantities import format_mass
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A text after its swaps.

    `dosed` are lines whose mass is a dose [kg], `dropped` measures that mean nothing any more,
    `came_from` the line that each line stands in for.
    """

    text: str
    changes: tuple[Change, ...] = ()
    dosed: Mapping[str, float]
    dropped: tuple[str, ...] = ()
    swapped: tuple[Swapped, ...] = ()


def swapped_text(
    text: str, asked: Asked, open_: Callable[[str], Dessert], before: Behaviour
) -> Text:
    """Write the swaps of a component into a text.

    Raises
    ------
    UnknownName
        If the component has nothing of what shall go out, or the larder nothing of what comes in.
    """
    water = float(before.state[NAMES.index("water")])
    done: list[Swapped] = []
    changes: list[Change] = []
    for swap in asked.swaps:
        dessert = open_(text)
        component = component_of(dessert, asked.component)
        found = swapped_lines(component, swap, dessert.larder, water=water, rule=asked.rule)
        require_somewhere(dessert, swap, found)
        for each in found:
            component = component_of(open_(text), asked.component)
            changes += [_change(each), *cautions(each, component)]
            text, named = with_swap(text, each, component)
            done.append(named)
    return Text(
        text=text,
        changes=tuple(changes),
        dosed=_doses(done),
        dropped=("gelatine",) if _sets_otherwise(done) else (),
        swapped=tuple(done),
    )


def _change(swapped: Swapped) -> Change:
    told = say(
        "{new} for {mass} of {old}",
        new=_together([ingredient_name(each) for each in swapped.new]),
        mass=format_mass(swapped.old_mass),
        old=ingredient_name(swapped.old),
    )
    return Change(
        component=swapped.component,
        line=swapped.line,
        kind="swap",
        text=told,
        before=swapped.old_mass,
    )


def _together(names: list[str]) -> str:
    *most, last = names
    return say("{names} and {last}", names=", ".join(most), last=last) if most else last


def _doses(swapped: list[Swapped]) -> dict[str, float]:
    """Lines of setting agents whose strength is not reckoned, so that only their dose is known."""
    return {
        name: mass
        for each in swapped
        for name, ingredient, mass in zip(each.lines, each.new, each.masses, strict=True)
        if agent(ingredient) is not None or (ingredient.bloom and agent(each.old) is not None)
    }


def _sets_otherwise(swapped: list[Swapped]) -> bool:
    """Tell whether gelatine went out and something else came in, or the other way round."""
    return any(
        bool(each.old.bloom) != any(new.bloom for new in each.new)
        for each in swapped
        if each.old.bloom or agent(each.old) is not None
    )
