"""A rule: what it looks at, where that should lie, and what to do if it does not."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from entremetry.checks.band import Band, Outcome
from entremetry.checks.bench import Bench
from entremetry.checks.saying import said
from entremetry.checks.verdict import Input, Verdict
from entremetry.words import say

DESSERT = "dessert"


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """Why it is bad to err on one side, and what to do about it, both to be said later."""

    why: str
    advice: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What a rule found on one component: the value and how far off it may be.

    `fact` is the sentence that says it, without its full stop; `band` stands in for that of the
    rule where the limit depends on the case; `tells_all` if the limit need not be named.
    """

    value: float
    fact: str
    component: str = DESSERT
    error: float = 0.0
    inputs: tuple[Input, ...] = ()
    band: Band | None = None
    tells_all: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One bench check. `source` is who sets the limits, `sources` who gives the formula.

    Title, formula and sides are written in English and said in a verdict, in the language that
    is spoken then; so is the fact of a finding, when it is found.
    """

    id: str
    title: str
    concern: str
    band: Band
    source: str
    formula: str
    look: Callable[[Bench], Iterable[Finding]]
    too_low: Side | None = None
    too_high: Side | None = None
    sources: tuple[str, ...] = ()

    def verdicts(self, bench: Bench) -> Iterator[Verdict]:
        """What the rule says of every component it concerns."""
        for finding in self.look(bench):
            yield self._verdict(bench, finding)

    def _verdict(self, bench: Bench, finding: Finding) -> Verdict:
        band = finding.band or self.band
        outcome = band.outcome(finding.value)
        side = self._side(band, finding.value)
        if outcome is Outcome.PASS or side is None:
            because, advice = _sound(finding, band), ""
        else:
            because = say("{fact}, {why}.", fact=finding.fact, why=say(side.why))
            advice = say(side.advice)
        return Verdict(
            id=self.id,
            title=say(self.title),
            concern=self.concern,
            component=finding.component,
            name=bench.name(finding.component),
            verdict=outcome,
            value=finding.value,
            low=finding.value - finding.error,
            high=finding.value + finding.error,
            band=band,
            because=because,
            advice=advice,
            source=self.source,
            sources=self.sources,
            formula=say(self.formula),
            inputs=finding.inputs,
        )

    def _side(self, band: Band, value: float) -> Side | None:
        return self.too_low if band.is_low(value) else self.too_high


def _sound(finding: Finding, band: Band) -> str:
    if finding.tells_all:
        return f"{finding.fact}."
    return say("{fact}, where it should be {range}.", fact=finding.fact, range=said(band))
