"""Sources of the room `formula`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="crc_handbook_102",
        text=(
            "Rumble, J. R. (ed.) (2021). CRC Handbook of Chemistry and Physics, 102nd ed., CRC "
            "Press: Concentrative properties of aqueous solutions, after Wolf (1966), 20 °C; "
            "ethanol, density at 20 °C."
        ),
    ),
    Source(
        key="banks_2012",
        text="Banks, H. (2012). The Density of Chocolate. Sixteen bars, density and label.",
    ),
    Source(
        key="bruhn_1988",
        text=(
            "Bruhn, C. M. and Bruhn, J. C. (1988). Observations on the whipping characteristics "
            "of cream. Journal of Dairy Science 71, 857-862."
        ),
    ),
    Source(
        key="browne_1912",
        text=(
            "Browne, C. A. (1912). A Handbook of Sugar Analysis. Wiley, New York: boiling "
            "points of sugar solutions, 60 to 90 %."
        ),
    ),
)
