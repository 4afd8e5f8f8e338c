"""What every step of a method has in common."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict

from entremetry.method.share import Share
from entremetry.quantities.fields import Duration

MAIN = "main"


class Work(BaseModel):
    """One piece of work at the bench.

    `what` names the lines or bowls that enter at this step, `bowl` the vessel it happens in;
    `time` is how long it takes by itself, `hands_on` how long it takes the cook, `within` how
    soon after the step before it must be done, `keeps` how long what it leaves may wait for the
    next step, `left_behind` what sticks and is lost.
    """

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    id: str | None = None
    what: tuple[str, ...] = ()
    bowl: str | None = None
    note: str = ""
    time: Duration | None = None
    hands_on: Duration | None = None
    within: Duration | None = None
    keeps: Duration | None = None
    left_behind: Share | None = None
