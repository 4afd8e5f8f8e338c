"""Sources of the room `planning`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="fisher_thompson_1963",
        text=(
            "Fisher, H. and Thompson, G. L. (1963). Probabilistic learning combinations of local "
            "job-shop scheduling rules. In: Muth, J. F. and Thompson, G. L. (eds.), Industrial "
            "Scheduling. Prentice-Hall, Englewood Cliffs, pp. 225-251 (instances ft06, ft10)."
        ),
    ),
    Source(
        key="lawrence_1984",
        text=(
            "Lawrence, S. (1984). Resource constrained project scheduling: an experimental "
            "investigation of heuristic scheduling techniques (supplement). Graduate School of "
            "Industrial Administration, Carnegie-Mellon University (instances la01 to la40)."
        ),
    ),
    Source(
        key="kolisch_sprecher_1996",
        text=(
            "Kolisch, R. and Sprecher, A. (1996). PSPLIB, a project scheduling problem library. "
            "European Journal of Operational Research 96, 205-216 (sets j30 and j60)."
        ),
    ),
    Source(
        key="schwindt_1998",
        text=(
            "Schwindt, C. (1998). Generation of resource-constrained project scheduling problems "
            "subject to temporal constraints. Report WIOR-543, University of Karlsruhe "
            "(ProGen/max; sets with minimum and maximum lags)."
        ),
    ),
    Source(
        key="bellman_1958",
        text=(
            "Bellman, R. (1958). On a routing problem. Quarterly of Applied Mathematics 16, 87-90."
        ),
    ),
)
