"""Sources of the freezing point and water activity of solutions."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="murphy_koop_2005",
        text=(
            "Murphy, D. M., Koop, T. (2005). Review of the vapour pressures of ice and "
            "supercooled water for atmospheric applications. Quarterly Journal of the Royal "
            "Meteorological Society 131, 1539-1565."
        ),
    ),
    Source(
        key="norrish_1966",
        text=(
            "Norrish, R. S. (1966). An equation for the activity coefficients and equilibrium "
            "relative humidities of water in confectionery syrups. Journal of Food Technology 1, "
            "25-39. Its rule for mixtures is used; the constants here are our own fit."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="chirife_1982",
        text=(
            "Chirife, J. et al. (1982), constants of Norrish's equation for polyols, as table 3 "
            "of an open paper in PubMed Central (PMC2836749) prints them."
        ),
    ),
    Source(
        key="leighton_1927",
        text=(
            "Leighton, A. (1927). On the calculation of the freezing point of ice-cream mixes. "
            "Journal of Dairy Science 10, 300-308: milk freezes 0.55 K below water, 0.244 K of "
            "it from its salts."
        ),
    ),
)
