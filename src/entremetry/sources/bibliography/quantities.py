"""Sources of the room `quantities`."""

from __future__ import annotations

from entremetry.sources.source import Source

ENTRIES: tuple[Source, ...] = ()
