"""Sources of the room `shapes`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = (
    Source(
        key="groemer_1960",
        text=(
            "Groemer, H. (1960). Über die Einlagerung von Kreisen in einen konvexen Bereich. "
            "Mathematische Zeitschrift 73, 285-294."
        ),
    ),
    Source(
        key="oler_1961",
        text=(
            "Oler, N. (1961). An inequality in the geometry of numbers. Acta Mathematica 105, "
            "19-48."
        ),
    ),
    Source(
        key="herz_1972",
        text=(
            "Herz, J. C. (1972). Recursive computational procedure for two-dimensional stock "
            "cutting. IBM Journal of Research and Development 16, 462-469."
        ),
    ),
    Source(
        key="eberly_2013",
        text=(
            "Eberly, D. (2013). Distance from a point to an ellipse, an ellipsoid, or a "
            "hyperellipsoid. Geometric Tools."
        ),
    ),
    Source(
        key="dlmf_19_33",
        text=(
            "NIST Digital Library of Mathematical Functions, section 19.33: Triaxial ellipsoids "
            "(surface area)."
        ),
    ),
    Source(
        key="friedman_packing_center",
        text="Friedman, E. Packing Center: Circles in squares, table of best known packings.",
    ),
)
