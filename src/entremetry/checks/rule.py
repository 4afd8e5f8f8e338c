"""A rule: what it looks at, where that should lie, and what to do if it does not."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from entremetry.checks.band import Band, Outcome
from entremetry.checks.bench import Bench
from entremetry.checks.saying import said
from entremetry.checks.verdict import Input, Verdict

DESSERT = "dessert"


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """Why it is bad to err on one side, and what to do about it."""

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
    """One bench check. `source` is who sets the limits, `sources` who gives the formula."""

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
        should = "" if finding.tells_all else f", where it should be {said(band)}"
        if outcome is Outcome.PASS or side is None:
            because, advice = f"{finding.fact}{should}.", ""
        else:
            because, advice = f"{finding.fact}, {side.why}.", side.advice
        return Verdict(
            id=self.id,
            title=self.title,
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
            formula=self.formula,
            inputs=finding.inputs,
        )

    def _side(self, band: Band, value: float) -> Side | None:
        return self.too_low if band.is_low(value) else self.too_high
