"""Where the money for ingredients goes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.labels.content import Content, piece_contents, ready_contents, together


@dataclass(frozen=True, slots=True, kw_only=True)
class Waste:
    """Where the money for ingredients goes, all parts of what they cost together.

    `left_behind` stays in pans, sieves and bags; `spare` is made and on no piece: offcuts,
    trimmings, run-off and pieces more than were asked for; `taken_out` was strained out.
    """

    in_pieces: float
    left_behind: float
    spare: float
    taken_out: float


def waste(
    reckoning: Reckoning,
    required: Mapping[str, Requirement],
    pieces: int,
    per_kilogram: Mapping[str, float],
    total: float,
) -> Waste:
    """Divide the worth of all ingredients of a batch, `total`, by where it goes."""
    piece = together("piece", "piece", piece_contents(reckoning))
    in_pieces = _worth(piece, per_kilogram) * pieces
    left_behind, taken_out = _gone(reckoning, required, per_kilogram)
    return Waste(
        in_pieces=in_pieces,
        left_behind=left_behind,
        spare=max(0.0, total - in_pieces - left_behind - taken_out),
        taken_out=taken_out,
    )


def _worth(content: Content, per_kilogram: Mapping[str, float]) -> float:
    return math.fsum(mass * per_kilogram.get(name, 0.0) for name, mass in content.held.items())


def _gone(
    reckoning: Reckoning, required: Mapping[str, Requirement], per_kilogram: Mapping[str, float]
) -> tuple[float, float]:
    """Worth of what the methods leave behind, and of what they strain out."""
    ready = ready_contents(reckoning)
    left_behind = taken_out = 0.0
    for component in reckoning.dessert.components:
        factor, kept = required[component.id].factor, reckoning.makings[component.id].kept
        for line in component.lines:
            if line.ingredient is not None:
                worth = line.mass * per_kilogram.get(line.ingredient.id, 0.0)
            else:
                part = ready[str(line.component)]
                worth = _worth(part, per_kilogram) * line.mass / part.mass
            share = kept.get(line.name, 0.0)
            if share > 0.0:
                left_behind += worth * factor * (1.0 - share)
            else:
                taken_out += worth * factor
    return left_behind, taken_out
