"""Sources of the room `dessert`."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="our_geometry",
        text=(
            "Volumes and areas by the closed forms of solid geometry (cap, frustum, torus, prism) "
            "and by numerical integration, from the inner measures as the maker or the cook "
            "states them; docs/theory/dessert.md says what each measure means."
        ),
        standing=Standing.OUR_OWN,
    ),
)
