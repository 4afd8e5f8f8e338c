"""All bench checks, and what they say of a dessert."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.checks import (
    base_crispness,
    composition,
    emulsion,
    foam,
    geometry,
    glaze,
    measures,
    mechanics,
    method_order,
    other_gels,
    safety,
    setting,
    temperatures,
    timed,
)
from entremetry.checks.band import Outcome
from entremetry.checks.bench import Bench
from entremetry.checks.rule import Rule
from entremetry.checks.verdict import Verdict
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.timings.step_temperatures import StepTemperatures

CONCERNS = (
    setting,
    other_gels,
    temperatures,
    timed,
    foam,
    emulsion,
    composition,
    geometry,
    mechanics,
    base_crispness,
    glaze,
    method_order,
    safety,
    measures,
)
RULES: tuple[Rule, ...] = tuple(rule for concern in CONCERNS for rule in concern.RULES)
ORDER = (Outcome.FAIL, Outcome.CAUTION, Outcome.PASS)


def check(
    reckoning: Reckoning,
    kitchen: KitchenDocument | None = None,
    temperatures: Mapping[str, StepTemperatures] | None = None,
) -> tuple[Verdict, ...]:
    """What every rule says of a dessert: what fails first, then cautions, then what is well.

    Rules about times say nothing of a step whose temperatures are not given.
    """
    bench = Bench(reckoning=reckoning, kitchen=kitchen, temperatures=temperatures or {})
    found = [verdict for rule in RULES for verdict in rule.verdicts(bench)]
    return tuple(sorted(found, key=lambda v: ORDER.index(v.verdict)))
