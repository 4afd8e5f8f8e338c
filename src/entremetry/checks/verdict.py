"""What a bench check says: the verdict with its number, its reason and its remedy."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.checks.band import Band, Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """A number that went into a verdict, as it is read."""

    name: str
    said: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """One bench check on one component, or on the whole dessert if `component` is 'dessert'.

    `value` lies between `low` and `high` as far as we know, all in the unit of `band`. `because`
    is one plain sentence, `advice` what to do (empty if all is well), `source` the key of who
    sets the limit, `sources` the keys behind the number itself.
    """

    id: str
    title: str
    concern: str
    component: str
    name: str
    verdict: Outcome
    value: float
    low: float
    high: float
    band: Band
    because: str
    advice: str
    source: str
    sources: tuple[str, ...]
    formula: str
    inputs: tuple[Input, ...]

    @property
    def unit(self) -> str:
        """Unit of the value and of every limit."""
        return self.band.unit

    @property
    def limit(self) -> float:
        """The limit that is nearest, or crossed."""
        return self.band.limit(self.value)

    @property
    def margin(self) -> float:
        """Room that is left: above 0 passes, below -1 fails."""
        return self.band.margin(self.value)

    @property
    def is_sure(self) -> bool:
        """Whether the whole interval gives the same verdict."""
        return all(self.band.outcome(end) is self.verdict for end in (self.low, self.high))
