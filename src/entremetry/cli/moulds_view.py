"""Moulds as JSON and as text for a terminal."""

from __future__ import annotations

import json

from entremetry.kitchen.mould import Mould
from entremetry.quantities import format_volume


def as_json(moulds: tuple[Mould, ...]) -> str:
    """One JSON object that lists the moulds."""
    return json.dumps(
        {
            "moulds": [
                {
                    "id": mould.id,
                    "name": mould.name,
                    "size": mould.size,
                    "cavity_volume_ml": round(mould.solid.volume * 1e6, 2),
                    "cavities": mould.cavities,
                    "owned": mould.owned,
                    "vessel": mould.vessel,
                }
                for mould in moulds
            ]
        },
        ensure_ascii=False,
        indent=2,
    )


def as_text(moulds: tuple[Mould, ...]) -> str:
    """One mould a line."""
    return "\n".join(
        f"{mould.id:<18} {format_volume(mould.solid.volume):>9} × {mould.cavities:<3} {mould.name}"
        for mould in moulds
    )
