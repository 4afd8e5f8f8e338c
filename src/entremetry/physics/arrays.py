"""Number arrays of this room, and reading a table of them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Floats: TypeAlias = NDArray[np.float64]
Integers: TypeAlias = NDArray[np.int64]
Flags: TypeAlias = NDArray[np.bool_]
Numbers: TypeAlias = float | Floats


def read_table(
    place: Numbers, places: Floats | Sequence[float], values: Floats | Sequence[float]
) -> Floats:
    """Value at a place between the rows of a table; constant beyond its ends."""
    return np.asarray(np.interp(np.asarray(place, dtype=float), places, values), dtype=np.float64)
