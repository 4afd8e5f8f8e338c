"""Swaps through a whole dessert: every component that holds the old ingredient is rebalanced."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.adapt.asking import Asked
from entremetry.adapt.rebalanced import Adapted, Change, Rebalanced
from entremetry.adapt.rebalancing import Open, rebalanced_text
from entremetry.adapt.swap import Swap, require_somewhere, swapped_lines
from entremetry.dessert.dessert import Component, Dessert
from entremetry.physics.gelatine import BloomRule


def adapted_text(
    text: str, swaps: Sequence[Swap], open_: Open, *, rule: BloomRule = BloomRule.LINEAR
) -> Adapted:
    """Write swaps into every formula of a document that they concern.

    Raises
    ------
    EntremetryError
        If the document cannot be made, or a swap names what is not there.
    """
    dessert = open_(text)
    wanted = _wanted(dessert, swaps)
    done: list[Rebalanced] = []
    for component_id, concerned in wanted.items():
        if concerned:
            asked = Asked(component=component_id, swaps=concerned, rule=rule)
            result = rebalanced_text(text, asked, open_)
            done.append(result)
            text = result.text
    changes: list[Change] = [change for each in done for change in each.changes]
    return Adapted(text=text, changes=tuple(changes), components=tuple(done))


def _wanted(dessert: Dessert, swaps: Sequence[Swap]) -> dict[str, tuple[Swap, ...]]:
    """The swaps that concern each component, in its order."""
    wanted: dict[str, tuple[Swap, ...]] = {component.id: () for component in dessert.components}
    for swap in swaps:
        found = [
            component.id for component in dessert.components if _concerns(swap, component, dessert)
        ]
        require_somewhere(dessert, swap, found)
        for component_id in found:
            wanted[component_id] = (*wanted[component_id], swap)
    return wanted


def _concerns(swap: Swap, component: Component, dessert: Dessert) -> bool:
    return bool(swapped_lines(component, swap, dessert.larder, water=1.0, rule=BloomRule.LINEAR))
