"""Drawings as dots."""

from __future__ import annotations

import struct

from entremetry.publish.picture import png

RED = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" viewBox="0 0 20 10">'
    '<rect width="20" height="10" fill="#c00"/></svg>'
)


def test_a_picture_is_as_wide_as_asked_and_keeps_its_proportions() -> None:
    picture = png(RED, 300)
    assert picture.startswith(b"\x89PNG")
    assert struct.unpack(">II", picture[16:24]) == (300, 150)
