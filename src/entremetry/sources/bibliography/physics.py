"""Sources of the room `physics`."""

from __future__ import annotations

from entremetry.sources.source import Source, Standing

ENTRIES: tuple[Source, ...] = (
    Source(
        key="schwartzberg_1976",
        text=(
            "Schwartzberg, H. G. (1976). Effective heat capacities for the freezing and thawing "
            "of food. Journal of Food Science 41, 152-156."
        ),
    ),
    Source(
        key="chen_1985",
        text=(
            "Chen, C. S. (1985). Thermodynamic analysis of the freezing and thawing of foods: "
            "enthalpy and apparent specific heat. Journal of Food Science 50, 1158-1162."
        ),
    ),
    Source(
        key="tchigeov_1979",
        text=(
            "Tchigeov, G. (1979). Thermophysical Processes in Food Refrigeration Technology. "
            "Food Industry, Moscow; as printed in ASHRAE Refrigeration, chapter 19, equation 5."
        ),
    ),
    Source(
        key="levy_1981",
        text=(
            "Levy, F. L. (1981). A modified Maxwell-Eucken equation for calculating the thermal "
            "conductivity of two-component solutions or mixtures. International Journal of "
            "Refrigeration 4, 223-225."
        ),
    ),
    Source(
        key="eucken_1940",
        text=(
            "Eucken, A. (1940). Allgemeine Gesetzmässigkeiten für das Wärmeleitvermögen "
            "verschiedener Stoffarten und Aggregatzustände. Forschung Gebiete Ingenieur 11, 6-20."
        ),
    ),
    Source(
        key="carson_2005",
        text=(
            "Carson, J. K., Lovatt, S. J., Tanner, D. J. and Cleland, A. C. (2005). Thermal "
            "conductivity bounds for isotropic, porous materials. International Journal of Heat "
            "and Mass Transfer 48, 2150-2158."
        ),
    ),
    Source(
        key="carson_2016",
        text=(
            "Carson, J. K., Wang, J., North, M. F. and Cleland, D. J. (2016). Effective thermal "
            "conductivity prediction of foods using composition and temperature data. Journal of "
            "Food Engineering 175, 65-73."
        ),
    ),
    Source(
        key="krischer_1978",
        text=(
            "Krischer, O. and Kast, W. (1978). Die wissenschaftlichen Grundlagen der "
            "Trocknungstechnik, 3rd ed. Springer, Berlin: vapour diffusion in moist pores. "
            "From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="beckett_2009",
        text=(
            "Beckett, S. T. (ed.) (2009). Industrial Chocolate Manufacture and Use, 4th ed. "
            "Wiley-Blackwell: useful physical constants."
        ),
    ),
    Source(
        key="wmo_8",
        text=(
            "World Meteorological Organization. Guide to Instruments and Methods of Observation, "
            "WMO-No. 8, annex 4.B: formulas for the computation of measures of humidity."
        ),
    ),
    Source(
        key="incropera_2007",
        text=(
            "Incropera, F. P., DeWitt, D. P., Bergman, T. L. and Lavine, A. S. (2007). "
            "Fundamentals of Heat and Mass Transfer, 6th ed. Wiley: table A.4, air at one "
            "atmosphere. From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="carslaw_jaeger_1959",
        text=(
            "Carslaw, H. S. and Jaeger, J. C. (1959). Conduction of Heat in Solids, 2nd ed. "
            "Clarendon Press, Oxford: sections 3.11, 7.7, 9.4 and 11.2."
        ),
    ),
    Source(
        key="douglas_1962",
        text=(
            "Douglas, J. (1962). Alternating direction methods for three space variables. "
            "Numerische Mathematik 4, 41-63."
        ),
    ),
    Source(
        key="plank_1913",
        text=(
            "Plank, R. (1913). Die Gefrierdauer von Eisblöcken. Zeitschrift für die gesamte "
            "Kälte-Industrie 20, 109-114."
        ),
    ),
    Source(
        key="pham_1986",
        text=(
            "Pham, Q. T. (1986). Simplified equation for predicting the freezing time of "
            "foodstuffs. Journal of Food Technology 21, 209-219."
        ),
    ),
    Source(
        key="cleland_earle_1984",
        text=(
            "Cleland, A. C. and Earle, R. L. (1984). Freezing time predictions for different "
            "final product temperatures. Journal of Food Science 49, 1230-1232; the factors for "
            "slab, cylinder and sphere as printed in ASHRAE Refrigeration, chapter 20."
        ),
    ),
    Source(
        key="cleland_1986",
        text=(
            "Cleland, D. J., Cleland, A. C., Earle, R. L. and Byrne, S. J. (1986). Prediction of "
            "thawing times for foods of simple shape. International Journal of Refrigeration 9, "
            "220-228. From memory; its abstract states the accuracy."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="hossain_1992",
        text=(
            "Hossain, M. M., Cleland, D. J. and Cleland, A. C. (1992). Prediction of freezing and "
            "thawing times for foods of three-dimensional irregular shape by using a "
            "semi-analytical geometric factor. International Journal of Refrigeration 15, "
            "241-246. From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="lemmon_jacobsen_2004",
        text=(
            "Lemmon, E. W. and Jacobsen, R. T. (2004). Viscosity and thermal conductivity "
            "equations for nitrogen, oxygen, argon, and air. International Journal of "
            "Thermophysics 25, 21-69. Evaluated at 101325 Pa with a public property library."
        ),
    ),
    Source(
        key="churchill_1983",
        text=(
            "Churchill, S. W. (1983). Comprehensive, theoretically based, correlating equations "
            "for free convection from isothermal spheres. Chemical Engineering Communications "
            "24, 339-352."
        ),
    ),
    Source(
        key="churchill_chu_1975",
        text=(
            "Churchill, S. W. and Chu, H. H. S. (1975). Correlating equations for laminar and "
            "turbulent free convection from a vertical plate. International Journal of Heat and "
            "Mass Transfer 18, 1323-1329."
        ),
    ),
    Source(
        key="whitaker_1972",
        text=(
            "Whitaker, S. (1972). Forced convection heat transfer correlations for flow in "
            "pipes, past flat plates, single cylinders, single spheres, and for flow in packed "
            "beds and tube bundles. AIChE Journal 18, 361-371."
        ),
    ),
    Source(
        key="lee_2016",
        text=(
            "Lee, A., Brun, P.-T., Marthelot, J., Balestra, G., Gallaire, F. and Reis, P. M. "
            "(2016). Fabrication of slender elastic shells by the coating of curved surfaces. "
            "Nature Communications 7, 11155."
        ),
    ),
    Source(
        key="takagi_huppert_2010",
        text=(
            "Takagi, D. and Huppert, H. E. (2010). Flow and instability of thin films on a "
            "cylinder and sphere. Journal of Fluid Mechanics 647, 221-238. From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
    Source(
        key="oron_1997",
        text=(
            "Oron, A., Davis, S. H. and Bankoff, S. G. (1997). Long-scale evolution of thin "
            "liquid films. Reviews of Modern Physics 69, 931-980."
        ),
    ),
    Source(
        key="jeffreys_1930",
        text=(
            "Jeffreys, H. (1930). The draining of a vertical plate. Mathematical Proceedings of "
            "the Cambridge Philosophical Society 26, 204-205."
        ),
    ),
    Source(
        key="balmforth_2006",
        text=(
            "Balmforth, N. J., Craster, R. V., Rust, A. C. and Sassi, R. (2006). Viscoplastic "
            "flow over an inclined surface. Journal of Non-Newtonian Fluid Mechanics 139, "
            "103-127. From memory."
        ),
        standing=Standing.FROM_MEMORY,
    ),
)
