"""Sources of the bench checks and of the physics that only they use."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="bubnik_1995",
        text=(
            "Bubník, Z., Kadlec, P., Urban, D. and Bruhns, M. (1995). Sugar Technologists Manual, "
            "8th ed. Bartens, Berlin, p. 164 (density); Bubník, Z. and Kadlec, P. in: Mathlouthi, "
            "M. and Reiser, P. (eds.), Sucrose (1995) (solubility)."
        ),
    ),
    Source(
        key="mathlouthi_1995",
        text=(
            "Mathlouthi, M. and Génotelle, J. (1995). Rheological properties of sucrose solutions "
            "and suspensions. In: Mathlouthi, M. and Reiser, P. (eds.), Sucrose: Properties and "
            "Applications. Blackie, London."
        ),
    ),
    Source(
        key="nbs_solubility",
        text=(
            "US National Bureau of Standards: solubility of sucrose in water, 0 to 100 °C in "
            "steps of 5 °C, as reprinted; the first printing was not seen."
        ),
    ),
    Source(
        key="nielsen_2001",
        text=(
            "Nielsen, B. R., Marr, B. U. and Hvidt, S. (2001). Correlation between sag% and "
            "rheological parameters determined for pectin gels. Carbohydrate Polymers 45, "
            "pp. 395-401 (abstract)."
        ),
    ),
    Source(
        key="boran_2010",
        text=(
            "Boran, G. et al. (2010). Rheological properties of gelatin from silver carp skin "
            "compared to commercially available gelatins. Journal of Food Science 75 (abstract)."
        ),
    ),
    Source(
        key="bender_2005",
        text=(
            "Bender, D. A. and Bender, A. E. (2005). A Dictionary of Food and Nutrition. Oxford "
            "University Press, entry 'sweeteners'."
        ),
    ),
    Source(
        key="gaman_sherrington_1990",
        text=(
            "Gaman, P. M. and Sherrington, K. B. (1990) and Emodi, A. (1982), relative sweetness, "
            "as collected in Varzakas, T. et al. (eds.), Sweeteners (2012), table 2.1."
        ),
    ),
    Source(
        key="lersch_2014",
        text=(
            "Lersch, M. (ed.) (2014). Texture: a hydrocolloid recipe collection, version 3.0: "
            "tables of what each hydrocolloid needs."
        ),
    ),
    Source(
        key="spies_hoseney_1982",
        text=(
            "Spies, R. D. and Hoseney, R. C. (1982). Effect of sugars on starch gelatinization. "
            "Cereal Chemistry 59, pp. 128-131 (abstract)."
        ),
    ),
    Source(
        key="mcgee_2004",
        text=(
            "McGee, H. (2004). On Food and Cooking: The Science and Lore of the Kitchen. Scribner, "
            "New York: chapters on milk, eggs, sauces, chocolate and sugar."
        ),
    ),
    Source(
        key="beris_1985",
        text=(
            "Beris, A. N., Tsamopoulos, J. A., Armstrong, R. C. and Brown, R. A. (1985). Creeping "
            "motion of a sphere through a Bingham plastic. Journal of Fluid Mechanics 158, "
            "pp. 219-244: a sphere stays where its weight is below 21 times the yield stress "
            "(from memory)."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="food_safety_england_2013",
        text=(
            "The Food Safety and Hygiene (England) Regulations 2013, schedule 4: chilled food at "
            "8 °C or below."
        ),
    ),
    Source(
        key="eu_89_108",
        text=(
            "Council Directive 89/108/EEC of 21 December 1988 on quick-frozen foodstuffs: "
            "-18 °C or colder at all points."
        ),
    ),
)
