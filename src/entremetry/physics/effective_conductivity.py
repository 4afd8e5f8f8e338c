"""Conductivity of a stuff dispersed in another: models by structure.

`continuous` and `dispersed` are the conductivities of the two phases [W/(m K)], `fraction` is the
volume fraction of the dispersed one. All are symmetric in nothing: say which phase is which.
"""

from __future__ import annotations

import numpy as np

from entremetry.physics.arrays import Floats, Numbers
from entremetry.sources.range import Range

FRACTION = Range("volume fraction", 0.0, 1.0, "m3/m3", "carson_2005")
CONDUCTIVITY = Range("conductivity", 1e-6, 1e6, "W/(m K)", "carson_2005")


def parallel(continuous: Numbers, dispersed: Numbers, fraction: Numbers) -> Floats:
    """Layers along the heat flow: no model gives more."""
    c, d, e = _checked(continuous, dispersed, fraction)
    return (1.0 - e) * c + e * d


def series(continuous: Numbers, dispersed: Numbers, fraction: Numbers) -> Floats:
    """Layers across the heat flow: no model gives less."""
    c, d, e = _checked(continuous, dispersed, fraction)
    return 1.0 / ((1.0 - e) / c + e / d)


def maxwell_eucken(continuous: Numbers, dispersed: Numbers, fraction: Numbers) -> Floats:
    """Separate spheres in a continuous phase: closed foam such as mousse or whipped cream.

    References
    ----------
    eucken_1940; carson_2005.
    """
    c, d, e = _checked(continuous, dispersed, fraction)
    return c * (2.0 * c + d - 2.0 * e * (c - d)) / (2.0 * c + d + e * (c - d))


def effective_medium(continuous: Numbers, dispersed: Numbers, fraction: Numbers) -> Floats:
    """Both phases reach through at random: open crumb.

    References
    ----------
    carson_2005.
    """
    c, d, e = _checked(continuous, dispersed, fraction)
    b = (3.0 * e - 1.0) * d + (2.0 - 3.0 * e) * c
    return 0.25 * (b + np.sqrt(b**2 + 8.0 * c * d))


def levy(continuous: Numbers, dispersed: Numbers, fraction: Numbers) -> Floats:
    """Maxwell-Eucken with Levy's fraction: ice in food.

    References
    ----------
    levy_1981, from memory; ranked best for ice by carson_2016.
    """
    c, d, e = _checked(continuous, dispersed, fraction)
    g = (c - d) ** 2 / ((c + d) ** 2 + 0.5 * c * d)
    g = np.maximum(g, 1e-12)
    a = 2.0 / g - 1.0 + 2.0 * e
    f = 4.0 * e / g / (a + np.sqrt(np.maximum(a**2 - 8.0 * e / g, 0.0)))
    return maxwell_eucken(c, d, np.minimum(f, 1.0))


def _checked(c: Numbers, d: Numbers, e: Numbers) -> tuple[Floats, Floats, Floats]:
    CONDUCTIVITY.require(c)
    CONDUCTIVITY.require(d)
    FRACTION.require(e)
    return np.asarray(c, dtype=float), np.asarray(d, dtype=float), np.asarray(e, dtype=float)
