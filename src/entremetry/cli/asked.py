"""What the options of `rebalance` and `adapt` ask for."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.adapt.asking import Asked
from entremetry.adapt.swap import Swap, read_swap
from entremetry.errors import QuantityError, nearest_names
from entremetry.physics.gelatine import BloomRule

RULES = {"linear": BloomRule.LINEAR, "square-root": BloomRule.SQUARE_ROOT}


def asked(
    component: str,
    *,
    targets: Sequence[str],
    keeps: Sequence[str],
    pins: Sequence[str],
    bounds: Sequence[str],
    swaps: Sequence[str],
    rule: str,
) -> Asked:
    """What is asked of a component; QuantityError if a swap or the rule cannot be read."""
    return Asked(
        component=component,
        targets=tuple(targets),
        keeps=tuple(keeps),
        pins=tuple(pins),
        bounds=tuple(bounds),
        swaps=tuple(read_swap(text) for text in swaps),
        rule=bloom_rule(rule),
    )


def swaps(texts: Sequence[str]) -> tuple[Swap, ...]:
    """Read swaps; QuantityError if one cannot be read."""
    return tuple(read_swap(text) for text in texts)


def bloom_rule(name: str) -> BloomRule:
    """Rule by its name; QuantityError if it is none."""
    if name not in RULES:
        raise QuantityError(f"'{name}'", " or ".join(RULES), nearest_names(name, RULES))
    return RULES[name]
