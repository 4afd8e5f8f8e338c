"""Sources of the room `larder`."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="usda_sr28",
        text=(
            "US Department of Agriculture, Agricultural Research Service. USDA National Nutrient "
            "Database for Standard Reference, Release 28 (2015, slightly revised 2016). Tables "
            "FOOD_DES, NUT_DATA and WEIGHT. Public domain."
        ),
    ),
    Source(
        key="belitz_2009",
        text=(
            "Belitz, H.-D., Grosch, W. and Schieberle, P. (2009). Food Chemistry, 4th ed. "
            "Springer, Berlin. Table 18.3 (acids and pH of fruit), table 19.7 (starch syrups)."
        ),
    ),
    Source(
        key="migoya_2008",
        text=(
            "Migoya, F. J. (2008). Frozen Desserts. Wiley, Hoboken. Table of the sugar, fat and "
            "dry cocoa of chocolates by their cocoa content."
        ),
    ),
    Source(
        key="cotterill_geiger_1977",
        text=(
            "Cotterill, O. J. and Geiger, G. S. (1977). Egg product yield trends from shell eggs. "
            "Poultry Science 56, pp. 1027-1031: shell 9.5, white 63 and yolk 27.5 % of the egg. "
            "Values as quoted in later reviews."
        ),
    ),
    Source(
        key="eu_589_2008",
        text=(
            "Commission Regulation (EC) No 589/2008, article 4: weight classes of eggs in the "
            "shell, S below 53 g, M 53 to 63 g, L 63 to 73 g, XL from 73 g. From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="eu_1169_2011",
        text=(
            "Regulation (EU) No 1169/2011 on the provision of food information to consumers, "
            "annex I (definitions), annex II (allergens), annex VII (order of ingredients, added "
            "water; from memory), annex VIII (quantities; from memory), annex XIV (energy factors) "
            "and annex XV (order of the declaration; from memory). The French words of annexes "
            "I and II as copies have them; of annex I in the consolidated version of 15 October "
            "2021."
        ),
    ),
    Source(
        key="fda_allergens_2025",
        text=(
            "US Food and Drug Administration (January 2025). Questions and Answers Regarding Food "
            "Allergens, edition 5. Guidance for industry: the nine major allergens and the tree "
            "nuts, without coconut."
        ),
    ),
    Source(
        key="ward_courts_1977",
        text=(
            "Ward, A. G. and Courts, A. (eds.) (1977). The Science and Technology of Gelatin. "
            "Academic Press, London, p. 509: gel strength in Bloom."
        ),
    ),
    Source(
        key="formula_mass",
        text=(
            "Computed from the chemical formula and the molar masses of glucose (180.16), "
            "trehalose and lactose (342.30), citric acid (192.12) and water (18.015 g/mol)."
        ),
        standing=Standing.OUR_OWN,
    ),
)
