"""Checks of air: cream that whips, how far, and what is left after the fold."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount
from entremetry.checks.warmth import Moment
from entremetry.method.cooking import Fold, Whip
from entremetry.words import say, say_later

CONCERN = "foam"


def _whipped_cream(each: BenchComponent) -> Iterator[tuple[Moment, float]]:
    """Steps at which cream is whipped, and the fat of what is in the bowl."""
    for moment in each.moments:
        lines = [each.lines[name] for name in moment.inside]
        fat = sum(line.constituents.fat for line in lines)
        creamy = any(
            "whippable" in line.tags and line.constituents.fat > 0.1 * line.mass for line in lines
        )
        if isinstance(moment.step, Whip) and creamy and not each.is_baked:
            yield moment, fat / sum(line.mass for line in lines)


def _fat(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for _, fat in _whipped_cream(each):
            value = 100.0 * fat
            yield Finding(
                component=each.id,
                value=value,
                error=1.0,
                fact=say("What is whipped holds {amount} fat", amount=amount(value, "%")),
            )


def _overrun(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for moment, _ in _whipped_cream(each):
            if isinstance(moment.step, Whip) and moment.step.overrun is not None:
                value = 100.0 * moment.step.overrun
                yield Finding(
                    component=each.id,
                    value=value,
                    error=10.0,
                    fact=say(
                        "The cream is whipped to an overrun of {amount}", amount=amount(value, "%")
                    ),
                )


def _density(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("mousse"):
        if not each.is_whipped or each.is_baked:
            continue
        figure = each.made.density
        value = figure.value / 1e3
        yield Finding(
            component=each.id,
            value=value,
            error=value * figure.relative_error,
            fact=say("The finished mousse has {amount}", amount=amount(value, "g/ml")),
        )


def _kept(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        stated = [
            step.kept for step in each.steps if isinstance(step, Fold) and step.kept is not None
        ]
        if stated:
            value = 100.0 * min(stated)
            yield Finding(
                component=each.id,
                value=value,
                error=5.0,
                fact=say("Folding keeps {amount} of the air", amount=amount(value, "%")),
            )


def _reheated(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("mousse", "insert"):
        folds = [n for n, moment in enumerate(each.moments) if isinstance(moment.step, Fold)]
        if not folds or each.is_baked or not each.tagged("whippable"):
            continue
        later = [moment.after for moment in each.moments[folds[0] + 1 :]]
        value = max(later, default=each.moments[folds[0]].after) - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=2.0,
            fact=say("After the fold it is never warmer than {amount}", amount=amount(value, "°C")),
        )


RULES = (
    Rule(
        id="cream-fat",
        title=say_later("The cream whips"),
        concern=CONCERN,
        band=Band(unit="%", low=30.0, high=42.0, fails_below=25.0, fails_above=52.0),
        source="mcgee_2004",
        formula=say_later("fat ÷ mass of all that is in the bowl when it is whipped"),
        look=_fat,
        too_low=Side(
            why=say_later("and below 30 % cream hardly holds air"),
            advice=say_later(
                "Use cream of 35 %, or add mascarpone until the bowl holds 33 to 36 % fat."
            ),
        ),
        too_high=Side(
            why=say_later("so rich that it turns to butter quickly"),
            advice=say_later("Thin it with cold milk to 35 %, and stop at soft ribbons."),
        ),
    ),
    Rule(
        id="cream-overrun",
        title=say_later("Whipped as far as it should be"),
        concern=CONCERN,
        band=Band(unit="%", low=50.0, high=130.0, fails_below=20.0, fails_above=216.0),
        source="bruhn_1988",
        formula=say_later("volume gained ÷ volume of the liquid, as the method states it"),
        look=_overrun,
        too_low=Side(
            why=say_later("little air for a mousse"),
            advice=say_later("Whip to soft ribbons: about twice the volume."),
        ),
        too_high=Side(
            why=say_later("more than most creams can hold"),
            advice=say_later(
                "Weigh a known cup of your cream when it is whipped and write what it gives."
            ),
        ),
    ),
    Rule(
        id="mousse-density",
        title=say_later("The mousse is light"),
        concern=CONCERN,
        band=Band(unit="g/ml", low=0.40, high=0.86, fails_below=0.25, fails_above=0.98),
        source="common_practice",
        formula=say_later("mass ÷ volume of what is ready for the mould"),
        look=_density,
        too_low=Side(
            why=say_later("so airy that it is coarse and collapses"),
            advice=say_later("Whip less, or fold a little longer."),
        ),
        too_high=Side(
            why=say_later("so dense that hardly any air is left in it"),
            advice=say_later(
                "Check the warmth of the fold, fold in three goes, whip the cream further."
            ),
        ),
    ),
    Rule(
        id="air-kept",
        title=say_later("Folding keeps the air"),
        concern=CONCERN,
        band=Band(unit="%", low=75.0, fails_below=50.0),
        source="from_memory",
        formula=say_later("air left ÷ air whipped in, as the method states it"),
        look=_kept,
        too_low=Side(
            why=say_later("so much is lost that it comes out heavy and short"),
            advice=say_later(
                "Fold in three goes with a wide spatula, the first to loosen, and then stop."
            ),
        ),
    ),
    Rule(
        id="foam-reheated",
        title=say_later("Whipped cream stays cool"),
        concern=CONCERN,
        band=Band(unit="°C", high=33.0, fails_above=42.0),
        source="common_practice",
        formula=say_later("highest temperature of the bowl once the cream is in it"),
        look=_reheated,
        too_high=Side(
            why=say_later("which melts the fat that holds the air"),
            advice=say_later("Heat before the cream goes in, never after."),
        ),
    ),
)
