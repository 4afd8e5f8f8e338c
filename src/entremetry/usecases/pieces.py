"""How many pieces may be asked for."""

from __future__ import annotations

from entremetry.dessert.document import MAX_PIECES
from entremetry.errors import QuantityError
from entremetry.words import say


def require_pieces(number: int) -> None:
    """Raise QuantityError unless a batch may have so many pieces."""
    if not 1 <= number <= MAX_PIECES:
        raise QuantityError(
            say("{number} pieces", number=number), say("1 to {most} pieces", most=MAX_PIECES)
        )
