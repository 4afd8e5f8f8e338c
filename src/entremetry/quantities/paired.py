"""Pairs in prose that must agree: '60 °C (150 °F)' is a slip, the right value is 140 °F."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from entremetry.quantities.agreement import Disagreement, disagreement
from entremetry.quantities.mentions import Mention, pairs
from entremetry.quantities.unit import Kind, Measures

WORDS_AROUND = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class PairedSlip:
    """The second value of a pair, text[start:end], and the value that would be right."""

    start: int
    end: int
    found: str
    right: str
    because: str


def find_slips(
    text: str,
    *,
    mass_per_volume: Callable[[str], float | None] | None = None,
    measures: Measures | str | None = None,
) -> tuple[PairedSlip, ...]:
    """Return every pair whose values disagree beyond the rounding their digits imply.

    A mass beside a volume is judged only if `mass_per_volume` knows the density [kg/m³]
    of what the words before the pair, or else those behind it, are about.
    """
    slips = []
    for first, second in pairs(text):
        density = _density(text, first, second, mass_per_volume)
        wrong = disagreement(first, second, density=density, measures=measures)
        if wrong:
            slips.append(_slip(text, first, second, wrong))
    return tuple(slips)


def _slip(text: str, first: Mention, second: Mention, wrong: Disagreement) -> PairedSlip:
    """Report the second value of a pair."""
    found = text[second.start : second.end]
    said = text[first.start : first.end]
    return PairedSlip(
        start=second.start,
        end=second.end,
        found=found,
        right=wrong.right,
        because=f"{said} is {wrong.right}; {found} is {wrong.other}{wrong.taking}",
    )


def _density(
    text: str,
    first: Mention,
    second: Mention,
    mass_per_volume: Callable[[str], float | None] | None,
) -> float | None:
    """Ask for the density of what the words around a mass and a volume are about."""
    if mass_per_volume is None or {first.kind, second.kind} != {Kind.MASS, Kind.VOLUME}:
        return None
    before = text[max(first.start - WORDS_AROUND, 0) : first.start].strip()
    after = text[second.end : second.end + WORDS_AROUND].lstrip(" )").rstrip()
    return (mass_per_volume(before) if before else None) or (
        mass_per_volume(after) if after else None
    )
