"""What a mould makes: single pieces, one for several, a log, bars, a glass or a dish."""

from __future__ import annotations

from enum import StrEnum

from entremetry.kitchen.mould import Mould
from entremetry.shapes import Box, Log

SEVERAL = 350e-6  # m3; a mould that holds more is for several persons: common_practice
SHARED_VESSEL = 500e-6  # m3; a vessel that holds more is a dish for several: common_practice


class Form(StrEnum):
    """What comes out of a mould; the value is its word in a name."""

    SINGLE = "piece"
    LARGE = "cake"
    LOG = "log"
    FRAME = "bars"
    GLASS = "glass"
    DISH = "dish"

    @property
    def is_vessel(self) -> bool:
        """Whether it is served in what it was filled into."""
        return self in (Form.GLASS, Form.DISH)

    @property
    def is_cut(self) -> bool:
        """Whether one of it is shared by several."""
        return self in (Form.LARGE, Form.LOG, Form.DISH)


def form_of(mould: Mould) -> Form:
    """What a mould makes, by its shape, its size and how it is filled."""
    volume = mould.solid.volume
    if mould.vessel:
        return Form.DISH if volume > SHARED_VESSEL else Form.GLASS
    if isinstance(mould.solid, Box) and not mould.fills_upside_down:
        return Form.FRAME
    if volume <= SEVERAL:
        return Form.SINGLE
    return Form.LOG if isinstance(mould.solid, Log) else Form.LARGE
