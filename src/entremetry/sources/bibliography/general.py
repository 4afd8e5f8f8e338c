"""Sources that every room may name."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="common_practice",
        text="Common practice of the trade, no source.",
        standing=Standing.COMMON_PRACTICE,
    ),
    Source(
        key="from_memory",
        text="Recalled by the authors, not yet checked against a printed source.",
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="our_own",
        text="Computed or measured by the authors of this program; the place says how.",
        standing=Standing.OUR_OWN,
    ),
    Source(
        key="choi_okos_1986",
        text=(
            "Choi, Y. and Okos, M. R. (1986). Effects of temperature and composition on the "
            "thermal properties of foods. In: Le Maguer, M. and Jelen, P. (eds.), Food "
            "Engineering and Process Applications, vol. 1: Transport Phenomena. Elsevier, "
            "London, pp. 93-101."
        ),
    ),
    Source(
        key="ashrae_refrigeration",
        text=(
            "ASHRAE. ASHRAE Handbook: Refrigeration, chapter 19, Thermal Properties of Foods, "
            "tables 1 and 2 (components of food, -40 to 150 °C)."
        ),
    ),
)
