"""The bench: one page that goes on without the network, and what it is told and tells."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from entremetry.agenda.agenda import AgendaTask
from entremetry.publish.agenda_json import task_object
from entremetry.publish.typography import typeset
from entremetry.store import BenchEntry
from entremetry.usecases.kept_plans import PlanAtBench
from entremetry.web.assets import FOLDER, address
from entremetry.web.bench_words import bench_words
from entremetry.web.forms import Form
from entremetry.web.plan_page import asked_plan
from entremetry.web.plan_telling import told_from_bench
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of
from entremetry.web.worker_script import SHARED, worker_script
from entremetry.words import speaking

WORKER = "bench_worker.js"
MARKED = ("workbench.css", "bench.css", "bench.js", "mark.svg")
MODULES = (
    "bench_awake.js",
    "bench_keeping.js",
    "bench_sound.js",
    "bench_state.js",
    "bench_view.js",
    "bench_words.js",
)
FONTS = ("vendor/young-serif-5.3.0.woff2", "vendor/figtree-5.3.0.woff2")


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchPage:
    """Context of bench.html; `words` are the messages of its scripts, as JSON."""

    template: ClassVar[str] = "bench.html"
    id: int
    name: str
    words: str


def show_bench(request: Request) -> Response:
    """GET /plans/{id}/bench"""
    found = asked_plan(request)
    return rendered(request, BenchPage(id=found.kept.id, name=found.kept.name, words=bench_words()))


def send_data(request: Request) -> Response:
    """GET /plans/{id}/bench/data: the plan as it was made, and what was told since."""
    return JSONResponse(bench_object(asked_plan(request)))


def note(request: Request, form: Form) -> Response:
    """POST /plans/{id}/bench/entries: keep one entry; one that comes again counts once."""
    plan = request.path_params["id"]
    kept = workbench_of(request).library.plans.note(plan, told_from_bench(form))
    return JSONResponse(entry_object(kept))


def send_worker(request: Request) -> Response:
    """GET /plans/{id}/bench/worker.js: keeps the bench of this plan, and nothing else."""
    bench = f"/plans/{request.path_params['id']}/bench"
    files = [bench, f"{bench}/data", *static_files()]
    return worker_script(WORKER, scope=bench, BENCH=bench, FILES=files, VERSION=version())


@cache
def version() -> str:
    """Mark of everything that the bench is made of."""
    names = (*MARKED, *MODULES, *FONTS, SHARED, WORKER, "../templates/bench.html")
    digest = hashlib.sha256(b"".join((FOLDER / name).read_bytes() for name in names))
    return digest.hexdigest()[:12]


def static_files() -> tuple[str, ...]:
    """Addresses of the files that the page loads."""
    plain = (f"/static/{name}" for name in (*MODULES, *FONTS))
    return (*(address(name) for name in MARKED), *plain)


def bench_object(found: PlanAtBench) -> dict[str, object]:
    """What the bench goes by."""
    agenda = found.made
    with speaking(found.language):
        tasks = [_typeset(task) for task in agenda.tasks]
    return {
        "plan": found.kept.id,
        "language": found.language,
        "made_at": found.kept.made_at.isoformat(),
        "zone": agenda.zone,
        "served": [
            {"name": each.name, "pieces": each.pieces, "at": each.at.isoformat()}
            for each in agenda.served
        ],
        "tasks": tasks,
        "told": [entry_object(entry) for entry in found.told],
    }


def _typeset(task: AgendaTask) -> dict[str, object]:
    amounts = [typeset(amount) for amount in task.amounts]
    return {**task_object(task), "text": typeset(task.text), "amounts": amounts}


def entry_object(entry: BenchEntry) -> dict[str, object]:
    """An entry as the bench keeps it."""
    return {
        "key": entry.key,
        "what": entry.what,
        "task": entry.task,
        "minutes": entry.minutes,
        "at": entry.at.isoformat(),
    }
