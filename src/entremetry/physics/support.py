"""What a piece stands on, and the heat it lets through."""

from __future__ import annotations

from enum import StrEnum


class Support(StrEnum):
    """What a piece stands on in a freezer, a fridge or a room."""

    METAL_SHELF = "metal shelf"
    WIRE_SHELF = "wire shelf"
    GLASS_SHELF = "glass shelf"
    BOARD = "board"
    BOX = "box"


CONTACT = {
    Support.METAL_SHELF: 30.0,
    Support.WIRE_SHELF: 20.0,
    Support.GLASS_SHELF: 20.0,
    Support.BOARD: 2.0,
    Support.BOX: 2.0,
}
"""Coefficient between the foot of a piece and the air of the place. [W/(m2 K)], our_own: nobody
has measured these in a kitchen; 25 to 40 on metal and next to nothing on card or in a box are
the bounds, so every time carries 30 %."""

BOXED_AIR = 5.5
"""What the air in a closed box and its walls leave of the coefficient. [W/(m2 K)], our_own: 8.5
from the piece to walls of twice its area, 8.5 from there to the air."""


def contact_coefficient(support: Support) -> float:
    """Coefficient between the foot of a piece and the place.

    Parameters
    ----------
    support : Support
        What it stands on.

    Returns
    -------
    float
        Coefficient towards the air temperature of the place. [W/(m2 K)]

    Notes
    -----
    Estimates, good to 30 % at best: the ratio between metal and board is what matters.

    References
    ----------
    our_own.
    """
    return CONTACT[support]
