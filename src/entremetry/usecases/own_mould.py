"""A mould of one's own between the document that writes it and the mould that is."""

from __future__ import annotations

from typing import Any

from pydantic import ValidationError

from entremetry.errors import QuantityError
from entremetry.kitchen.mould import Mould, mould
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.store.shelf import no_mesh
from entremetry.words import say


def written_mould(document: MouldDocument) -> dict[str, Any]:
    """A shape in the words of a document; lengths are in metres, so they are written in mm."""
    shape = document.shape.model_dump(exclude_none=True)
    return {
        key: f"{value * 1e3:.6g} mm" if isinstance(value, float) else value
        for key, value in shape.items()
    }


def bare_shape(shape: dict[str, Any]) -> dict[str, Any]:
    """The shape that a weighed mould is like; what has no closed form cannot be likened to."""
    if shape["kind"] == "measured":
        return dict(shape["like"])
    if shape["kind"] in ("prism", "mesh"):
        raise QuantityError(
            say("a mould like a {shape}", shape=shape["kind"]),
            say("--like with the id of a known mould"),
        )
    return shape


def made_mould(written: dict[str, Any]) -> Mould:
    """The mould that a document writes; QuantityError if it is none."""
    try:
        document = MouldDocument.model_validate(written)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        found = say("the mould '{name}'", name=written["name"])
        raise QuantityError(found, str(first["msg"])) from None
    return mould(document, read_mesh=no_mesh)
