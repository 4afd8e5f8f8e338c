"""What is wrong with a shape, in the words of a fault: what was found, what is accepted."""

from __future__ import annotations

import re

from entremetry.errors import EntremetryError

_TOLD = re.compile(r"(?P<what>.+): found (?P<found>.+?); accepted: (?P<accepted>.+)", re.DOTALL)


def shape_fault(error: EntremetryError) -> tuple[str, str]:
    """Take 'height of the cap: found 60 mm; accepted: at most 20 mm' apart."""
    told = _TOLD.fullmatch(str(error))
    if told is None:
        return str(error), "measures that make a shape"
    return f"{told['what']}: {told['found']}", told["accepted"]
