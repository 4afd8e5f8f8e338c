"""Every kind of step, told apart by the word after `step`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated, Any, get_args

from pydantic import Field

from entremetry.method.cooking import (
    CookTo,
    CoolTo,
    Fold,
    Melt,
    Simmer,
    Soak,
    Stir,
    Strain,
    Weigh,
    Whip,
)
from entremetry.method.shaping import Bake, Cut, Fill, Place, Pour, Roll, Unmould
from entremetry.method.share import Part
from entremetry.method.waiting import FreezeUntil, GlazeAt, Hold, Rest, Serve, ThawUntil

AnyStep = (
    Weigh
    | Soak
    | Stir
    | Melt
    | Simmer
    | CookTo
    | CoolTo
    | Strain
    | Whip
    | Fold
    | Roll
    | Cut
    | Bake
    | Pour
    | Place
    | Fill
    | FreezeUntil
    | Unmould
    | GlazeAt
    | ThawUntil
    | Rest
    | Hold
    | Serve
)
Step = Annotated[AnyStep, Field(discriminator="step")]
KINDS: tuple[str, ...] = tuple(
    get_args(kind.model_fields["step"].annotation)[0] for kind in get_args(AnyStep)
)
MASSES = ("water", "to_mass", "holds_back", "evaporates", "left_behind")


def scaled_steps(steps: Sequence[AnyStep], factor: float) -> tuple[AnyStep, ...]:
    """Steps for a batch `factor` times as large: their masses grow, all else stays."""
    return tuple(_scaled(step, factor) for step in steps)


def _scaled(step: AnyStep, factor: float) -> AnyStep:
    update: dict[str, Any] = {}
    for field in MASSES:
        value = getattr(step, field, None)
        if isinstance(value, Part):
            update[field] = value.scaled(factor)
        elif value is not None:
            update[field] = value * factor
    return step.model_copy(update=update)
