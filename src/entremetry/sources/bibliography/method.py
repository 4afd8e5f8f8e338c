"""Sources of the room `method`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="fda_food_code",
        text=(
            "US Food and Drug Administration. Food Code: 3-302.13 (pasteurised egg in dishes that "
            "are not cooked), 3-501.14 (cooling in two stages). The 71 °C (160 °F) for egg dishes "
            "is that agency's advice to consumers."
        ),
    ),
    Source(
        key="usda_retention_2007",
        text=(
            "US Department of Agriculture (2007). USDA Table of Nutrient Retention Factors, "
            "release 6: alcohol."
        ),
    ),
)
