"""A body of any form made comparable with slab, cylinder and sphere."""

from __future__ import annotations

import math

from entremetry.errors import OutsideRange


def heat_dimensions(half: float, section: float, volume: float, biot: float) -> float:
    """Along how many dimensions heat leaves a body, as if it were an ellipsoid.

    Parameters
    ----------
    half : float
        Shortest way from its thermal centre to the surface. [m]
    section, volume : float
        Smallest cross-section through that centre [m2], and volume [m3].
    biot : float
        Biot number over `half`.

    Returns
    -------
    float
        1 for a slab, 2 for a long cylinder, 3 for a sphere, all exactly; a slab's time over it
        is the body's.

    Raises
    ------
    OutsideRange
        If one of them is not a positive number.

    References
    ----------
    hossain_1992.
    """
    if not all(0.0 < size < math.inf for size in (half, section, volume, biot)):
        raise OutsideRange("length, section, volume and Biot number of a body are positive")
    first = max(section / (math.pi * half**2), 1.0)
    second = max(3.0 * volume / (4.0 * math.pi * first * half**3), 1.0)
    beyond = ((1.0 + 2.0 / biot) / (b**2 + 2.0 * b / biot) for b in (first, second))
    return 1.0 + sum(beyond)
