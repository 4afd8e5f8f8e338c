"""All sources, and what this workbench is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import Response

from entremetry import __version__
from entremetry.sources import BIBLIOGRAPHY, Source, Standing
from entremetry.web.rendering import rendered
from entremetry.web.wording import STANDINGS
from entremetry.web.workbench import workbench_of
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceGroup:
    """Sources that can be trusted alike."""

    name: str
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesPage:
    """Context of sources.html."""

    template: ClassVar[str] = "sources.html"
    groups: tuple[SourceGroup, ...]
    version: str
    place: str


def show_sources(request: Request) -> Response:
    """GET /sources"""
    groups = tuple(_group(standing) for standing in Standing)
    page = SourcesPage(
        groups=tuple(group for group in groups if group.sources),
        version=__version__,
        place=workbench_of(request).place,
    )
    return rendered(request, page)


def _group(standing: Standing) -> SourceGroup:
    sources = tuple(each for each in BIBLIOGRAPHY.values() if each.standing is standing)
    name = say(STANDINGS[standing])
    return SourceGroup(name=name[:1].upper() + name[1:], sources=sources)
