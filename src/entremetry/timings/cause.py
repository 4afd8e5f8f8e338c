"""What makes a time uncertain, in words."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.words import say, say_later

CAUSES = {
    "coefficient": say_later("the airflow"),
    "air": say_later("the temperature around it"),
    "heat": say_later("the composition (its heat)"),
    "conductivity": say_later("the composition (its conductivity)"),
    "size": say_later("the fill"),
}
"""By the names of `physics.uncertainty`."""


def chief_cause(shares: Mapping[str, float]) -> str:
    """The input that most of an interval comes from, by the share that each has in it."""
    return say(CAUSES[max(shares, key=lambda name: shares[name])])


def with_cause(because: str, cause: str) -> str:
    """How a time was found, and what its interval comes from if that is known."""
    if not cause:
        return because
    return say("{because}; the interval comes mostly from {cause}", because=because, cause=cause)
