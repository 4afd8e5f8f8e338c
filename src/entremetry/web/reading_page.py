"""Reading without the workbench: its worker, what it keeps unasked, and the page for the rest."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from functools import cache
from itertools import islice
from operator import attrgetter
from typing import TYPE_CHECKING, ClassVar

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from entremetry import __version__
from entremetry.publish.page_words import spoken as say
from entremetry.store import Kind
from entremetry.usecases.library import KITCHEN, desserts
from entremetry.web.assets import FOLDER, address
from entremetry.web.rendering import page_text, rendered
from entremetry.web.workbench import workbench_of
from entremetry.web.worker_script import worker_script
from entremetry.words import current

if TYPE_CHECKING:
    from entremetry.store.library import Library

WORKER = "/worker.js"
PAGES = "/worker/pages"
NOTHING_KEPT = "/worker/nothing-kept"
MOST_DESSERTS = 12
MOST_WHOLE = 4  # of which the recipe page is kept as well; each is some seconds of work
MOST_PLANS = 6
KINDS = ("*.css", "*.js", "mark.svg")
WORKERS = "*_worker.js"
UNMARKED = "bench_*.js"  # the bench keeps its own


@dataclass(frozen=True, slots=True, kw_only=True)
class Readable:
    """An address whose answer is the same while its state is; `part` of a page, or a page."""

    address: str
    state: str
    part: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingKept:
    """Context of nothing_kept.html: the page in place of one that was never read."""

    template: ClassVar[str] = "nothing_kept.html"


def send_worker(request: Request) -> Response:
    """GET /worker.js: keeps the pages that were read."""
    page = page_text(NothingKept(), token="", path=NOTHING_KEPT)
    mark = hashlib.sha256(page.encode()).hexdigest()[:12]
    return worker_script(
        "reading_worker.js", FILES=static_files(), WORDS=words(), VERSION=f"{__version__}-{mark}"
    )


def list_pages(request: Request) -> Response:
    """GET /worker/pages: what is worth keeping before it was read."""
    return JSONResponse([asdict(page) for page in pages(workbench_of(request).library)])


def show_nothing_kept(request: Request) -> Response:
    """GET /worker/nothing-kept"""
    return rendered(request, NothingKept())


def words() -> dict[str, str]:
    """What the worker says."""
    return {
        "language": current().tag,
        "kept": say("Kept copy from {time}; the workbench does not answer.", time="{time}"),
        "silent": say("The workbench does not answer."),
        "again": say("Try again"),
        "recipe": say("recipe page"),
        "needs": say("This needs the workbench."),
    }


@cache
def static_files() -> tuple[str, ...]:
    """Addresses of all that a page loads."""
    found = {place.name for kind in KINDS for place in FOLDER.glob(kind)}
    apart = {place.name for kind in (WORKERS, UNMARKED) for place in FOLDER.glob(kind)}
    carried = (place for place in (FOLDER / "vendor").iterdir() if place.suffix != ".txt")
    marked = (address(name) for name in sorted(found - apart))
    return (*marked, *(f"/static/vendor/{place.name}" for place in sorted(carried)))


def pages(library: Library) -> Iterator[Readable]:
    """Yield what a cook reads, the dearest last: desserts changed last, plans made last."""
    kitchen = library.find(Kind.KITCHEN, KITCHEN)
    cooked_in = kitchen.revision.changed_at.isoformat() if kitchen else ""
    state = f"{__version__} {current().code} {cooked_in}"
    every = sorted(desserts(library), key=attrgetter("revision.changed_at"), reverse=True)
    plans = library.plans.all()
    states = {
        f"/desserts/{dessert.id}": f"{state} {dessert.revision.changed_at.isoformat()}"
        for dessert in every[:MOST_DESSERTS]
    }
    last = every[0].revision.changed_at.isoformat() if every else ""
    yield Readable(address="/", state=f"{state} {len(every)} {last}")
    yield Readable(
        address="/plans", state=f"{state} {[plan.made_at.isoformat() for plan in plans]}"
    )
    for place, mark in states.items():
        yield Readable(address=place, state=mark)
        yield Readable(address=f"{place}/checks?mould=", state=mark, part=True)
    for plan in plans[:MOST_PLANS]:
        for place in (f"/plans/{plan.id}", f"/plans/{plan.id}/sheet"):
            yield Readable(address=place, state=f"{state} {plan.made_at.isoformat()}")
    for place in ("/kitchen", "/larder", "/sources"):
        yield Readable(address=place, state=state)
    for place, mark in islice(states.items(), MOST_WHOLE):
        yield Readable(address=f"{place}/checks?times=yes&mould=", state=mark, part=True)
        yield Readable(address=f"{place}/page", state=mark)
