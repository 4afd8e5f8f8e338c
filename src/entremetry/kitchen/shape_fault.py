"""What is wrong with a shape, in the words of a fault: what was found, what is accepted."""

from __future__ import annotations

from entremetry.errors import EntremetryError, OutsideRange
from entremetry.words import say


def shape_fault(error: EntremetryError) -> tuple[str, str]:
    """Take 'height of the cap: found 60 mm; accepted: at most 20 mm' apart."""
    if not isinstance(error, OutsideRange) or error.told is None:
        return str(error), say("measures that make a shape")
    what, found, accepted = error.told
    return say("{what}: {found}", what=what, found=found), accepted
