"""Draft a dessert document from pasted lines."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from entremetry.dessert.draft import Draft, DraftRequest, draft
from entremetry.dessert.draft_line import identifier
from entremetry.errors import QuantityError, UnknownName
from entremetry.kitchen.water_weighing import water_volume
from entremetry.store.files import read_text
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_moulds, built_in_shapes


def draft_text(request: DraftRequest) -> Draft:
    """Draft a document; see `entremetry.dessert.draft`."""
    return draft(request, open_larder(), built_in_shapes())


def draft_file(
    source: Path,
    *,
    name: str,
    pieces: int,
    mould: str | None,
    holds: str | None,
    like: str,
    measures: str | None,
    answers: Mapping[str, str],
) -> Draft:
    """Draft a document from a text file of pasted lines.

    Raises
    ------
    EntremetryError
        If the file cannot be read, or no mould is said, or it is unknown.
    """
    return draft_text(
        DraftRequest(
            name=name,
            pieces=pieces,
            mould=chosen_mould(mould, holds, like),
            text=read_text(source, what="text of pasted lines"),
            measures=measures,
            answers=answers,
        )
    )


def chosen_mould(mould: str | None, holds: str | None, like: str) -> str | dict[str, Any]:
    """The mould as a document writes it: an id of the shelf, or one weighed with water.

    Raises
    ------
    QuantityError
        If neither is said, or the volume is none.
    UnknownName
        If the shelf has no such mould.
    """
    if holds:
        water_volume(holds)
        return _measured(holds, like)
    if not mould:
        raise QuantityError("no mould", "the id of a mould, or what a cavity holds of water")
    if mould not in built_in_moulds():
        raise UnknownName("mould", mould, built_in_moulds())
    return mould


def _measured(holds: str, like: str) -> dict[str, Any]:
    shapes = built_in_shapes()
    if like not in shapes:
        raise UnknownName("mould", like, shapes)
    return {
        "id": f"weighed-{identifier(holds)}",
        "name": f"Mould that holds {holds} of water",
        "shape": {"kind": "measured", "holds": holds, "like": dict(shapes[like])},
        "cavities": built_in_moulds()[like].cavities,
    }
