"""A portion out of a frame."""

from __future__ import annotations

import pytest

from entremetry.dessert.document import PortionsDocument
from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.shapes import Box, hemisphere
from entremetry.timings.cut_portion import cut_portion

FRAME = Box(length=0.3, width=0.2, height=0.04)
SHEET = Inclusion(
    component="sponge",
    name="Sponge",
    solid=Box(length=0.3, width=0.2, height=0.01),
    low=0.0,
    is_base=True,
)
DROP = Inclusion(component="drop", name="Drop", solid=hemisphere(0.02), low=0.02)


def test_a_portion_is_as_high_and_holds_its_share() -> None:
    soft = Filled(component="mousse", name="Mousse", low=0.0, high=0.04, volume=1.8e-3)
    whole = Placed(
        cavity=FRAME,
        inclusions=(SHEET, DROP),
        filled=(soft,),
        walls=(),
        free_height=0.0,
        centred=(),
    )
    part = cut_portion(whole, PortionsDocument(length="90 mm", width="30 mm"))
    assert (part.cavity.length, part.cavity.width, part.cavity.height) == (0.09, 0.03, 0.04)
    assert part.filled[0].volume == pytest.approx(1.8e-3 * 0.0027 / 0.06)
    assert [p.component for p in part.inclusions] == ["sponge"]
    assert part.inclusions[0].solid.volume == pytest.approx(0.09 * 0.03 * 0.01)
    assert whole.inclusions == (SHEET, DROP)
