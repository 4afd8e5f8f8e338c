"""Sources of the room `labels`."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="eu_guidance_2012",
        text=(
            "European Commission, Health and Consumers Directorate-General (December 2012). "
            "Guidance document for competent authorities on the setting of tolerances for "
            "nutrient values declared on a label, table 4: rounding. Without legal status."
        ),
    ),
    Source(
        key="fda_labeling_guide_2009",
        text=(
            "US Food and Drug Administration (2009). A Food Labeling Guide, appendix H: rounding "
            "the values according to FDA rounding rules."
        ),
    ),
    Source(
        key="cfr_21_101_4",
        text=(
            "United States Code of Federal Regulations, title 21, section 101.4(a)(2): ingredients "
            "in descending order of weight; those of two per cent or less may stand at the end. "
            "From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
)
