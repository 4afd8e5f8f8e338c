"""Checks of what is written: pairs that disagree, losses, doses too small to weigh."""

from __future__ import annotations

import re
from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.dessert.slips import slips
from entremetry.words import say, say_later

CONCERN = "measures"
SCALE = 0.05e-3  # kg, half a step of a scale to 0.1 g
NUMBER = re.compile(r"-?\d+(?:[.,]\d+)?")


def _pairs(bench: Bench) -> Iterator[Finding]:
    found = slips(bench.dessert.document, bench.dessert.larder)
    if not found:
        yield Finding(
            value=0.0, fact=say("No pair of measures in the notes disagrees"), tells_all=True
        )
    for slip in found:
        value = _gap(slip.found, slip.right)
        component = slip.place.split(",")[0]
        yield Finding(
            component=component if component in bench.by_id else DESSERT,
            value=value,
            fact=say(
                "'{found}' stands in {place}, and {right} would be right",
                found=slip.found,
                place=slip.place,
                right=slip.right,
            ),
        )


def _gap(found: str, right: str) -> float:
    """By how many per cent two texts with a number differ; 100 if they cannot be compared."""
    numbers = [NUMBER.search(text.replace(",", ".")) for text in (found, right)]
    if not all(numbers):
        return 100.0
    one, other = (float(match.group()) for match in numbers if match)
    return 100.0 * abs(one - other) / abs(other) if other else 100.0


def _losses(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if each.is_baked:
            continue
        made = each.made
        value = 100.0 * made.loss / made.mass_in
        yield Finding(
            component=each.id,
            value=value,
            error=2.0,
            fact=say(
                "{amount} of what is weighed does not reach the mould", amount=amount(value, "%")
            ),
            inputs=tuple(given(change.reason, change.mass * 1e3, "g") for change in made.changes),
        )


def _doses(bench: Bench) -> Iterator[Finding]:
    required = bench.reckoning.requirements(bench.dessert.document.pieces)
    for each in bench.components:
        for name in each.tagged("gelling"):
            line = each.lines[name]
            mass = line.mass * required[each.id].factor
            if mass <= 0.0:
                continue
            value = 100.0 * SCALE / mass
            yield Finding(
                component=each.id,
                value=value,
                fact=say(
                    "{mass} of {what} can be weighed to {amount}",
                    mass=amount(mass * 1e3, "g"),
                    what=line.name,
                    amount=amount(value, "%"),
                ),
                inputs=(given(say("half a step of the scale"), SCALE * 1e3, "g"),),
            )


RULES = (
    Rule(
        id="paired-measures",
        title=say_later("Pairs of measures agree"),
        concern=CONCERN,
        band=Band(unit="%", high=0.0, fails_above=10.0),
        source="nist_sp811",
        formula=say_later("difference of the second value of a pair from the first, converted"),
        look=_pairs,
        too_high=Side(
            why=say_later("so a reader who follows the second goes wrong"),
            advice=say_later("Correct the pair, or write one measure only."),
        ),
    ),
    Rule(
        id="losses",
        title=say_later("Little is lost on the way"),
        concern=CONCERN,
        band=Band(unit="%", high=18.0, fails_above=35.0),
        source="common_practice",
        formula=say_later("(mass weighed - mass ready) ÷ mass weighed"),
        look=_losses,
        too_high=Side(
            why=say_later("much more than the usual 5 to 8 % for bowl and bag"),
            advice=say_later("Look at evaporation and at what sticks; larger batches lose less."),
        ),
    ),
    Rule(
        id="dose-can-be-weighed",
        title=say_later("The setting agent can be weighed"),
        concern=CONCERN,
        band=Band(unit="%", high=8.0, fails_above=25.0),
        source="our_own",
        formula=say_later("half a step of a scale to 0.1 g ÷ mass of the agent"),
        look=_doses,
        too_high=Side(
            why=say_later("which is rough for what decides how firm it sets"),
            advice=say_later("Weigh to 0.01 g, or make a larger batch and freeze the rest."),
        ),
    ),
)
