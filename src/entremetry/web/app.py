"""The workbench as an application: which page answers which address."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.routing import BaseRoute, Mount, Route

from entremetry.store import home_folder, open_library
from entremetry.web import (
    adapt_page,
    anew_page,
    app_manifest,
    backup_page,
    bench_page,
    build_page,
    checks_page,
    comparing_page,
    cost_page,
    dessert_page,
    edit_page,
    kitchen_page,
    label_page,
    larder_page,
    library_page,
    making_page,
    new_page,
    new_plan_page,
    plan_page,
    plans_page,
    publish_page,
    questions_page,
    reading_page,
    rebalance_page,
    recipe_page,
    revision_page,
    safe_page,
    sources_page,
    speech,
    temperatures_page,
    walk_page,
)
from entremetry.web.assets import Static
from entremetry.web.forms import posted
from entremetry.web.plan_work import PlanWork
from entremetry.web.protection import RESTORE, UPLOAD, Protection
from entremetry.web.publish_work import PublishWork
from entremetry.web.refusals import HANDLERS
from entremetry.web.secret import token
from entremetry.web.temperature_warming import begin_warming
from entremetry.web.temperature_work import TemperatureWork
from entremetry.web.upload import receiving, uploading
from entremetry.web.workbench import Workbench

DESSERT = "/desserts/{id}"
EDIT = "/desserts/{id}/edit"
BUILD = "/desserts/{id}/build"
PUBLISH = "/desserts/{id}/publish"
PLAN = "/plans/{id:int}"
WALK = "/kitchen/walk/{number:int}"
MAKING = "/plans/making/{key}"
LOOK = "/safe/look/{key}"


def build_app(home: Path | None = None) -> Starlette:
    """Open the library in a data folder and put the pages before it.

    Raises
    ------
    StoreError
        If the library cannot be opened.
    """
    folder = home_folder(home)
    app = Starlette(
        routes=routes(),
        middleware=[Middleware(speech.Speech), Middleware(Protection)],
        exception_handlers=dict(HANDLERS),
        lifespan=_lifespan,
    )
    app.state.workbench = Workbench(
        library=open_library(folder), token=token(folder), place=str(folder)
    )
    app.state.temperatures = TemperatureWork()
    app.state.plans = PlanWork()
    app.state.publications = PublishWork()
    return app


def routes() -> list[BaseRoute]:
    """Every address of the workbench; what changes something is asked by POST alone."""
    return [
        Route("/", library_page.show_library),
        Route(DESSERT, dessert_page.show_dessert),
        Route(f"{DESSERT}/card", library_page.show_card),
        Route(f"{DESSERT}/sheet", dessert_page.show_sheet),
        Route(f"{DESSERT}/page", publish_page.show_recipe),
        Route(f"{DESSERT}/section.svg", recipe_page.show_drawing),
        Route(f"{DESSERT}/print.pdf", recipe_page.show_print_sheet),
        Route(f"{DESSERT}/quantities.xlsx", recipe_page.show_quantities),
        Route(f"{DESSERT}/label", label_page.show_label),
        Route(f"{DESSERT}/adapt", adapt_page.show_adapt, methods=["GET"]),
        Route(f"{DESSERT}/adapt", posted(adapt_page.keep), methods=["POST"]),
        Route(f"{DESSERT}/cost", cost_page.show_cost, methods=["GET"]),
        Route(f"{DESSERT}/cost", posted(cost_page.save), methods=["POST"]),
        Route(f"{DESSERT}/cost/undo", posted(cost_page.undo), methods=["POST"]),
        Route(PUBLISH, publish_page.show_publish),
        Route(f"{PUBLISH}/progress", publish_page.show_progress),
        Route(f"{PUBLISH}/preview", publish_page.show_preview),
        Route(f"{PUBLISH}/all.zip", publish_page.send_all),
        Route(f"{PUBLISH}/files/{{name}}", publish_page.send_file),
        Route(f"{PUBLISH}/stop", posted(publish_page.stop), methods=["POST"]),
        Route(f"{PUBLISH}/begin", posted(publish_page.begin), methods=["POST"]),
        Route(f"{DESSERT}/checks", checks_page.show_checks),
        Route(f"{DESSERT}/diagnosis", checks_page.show_diagnosis),
        Route(f"{DESSERT}/questions", questions_page.show_questions, methods=["GET"]),
        Route(f"{DESSERT}/questions", posted(questions_page.keep), methods=["POST"]),
        Route(f"{DESSERT}/temperatures", temperatures_page.show_first),
        Route(f"{DESSERT}/temperatures/{{step:path}}", temperatures_page.show_step),
        Route(f"{DESSERT}/temperature-answers/{{step:path}}", temperatures_page.show_answer),
        Route(f"{DESSERT}/temperature-curves/{{step:path}}", temperatures_page.show_curves),
        Route(f"{DESSERT}/rebalance", rebalance_page.show_rebalance, methods=["GET"]),
        Route(f"{DESSERT}/rebalance", posted(rebalance_page.save), methods=["POST"]),
        Route(EDIT, edit_page.show_edit, methods=["GET"]),
        Route(EDIT, posted(edit_page.save), methods=["POST"]),
        Route(f"{EDIT}/{{number:int}}", revision_page.show_dessert_revision),
        Route(f"{EDIT}/undo", posted(edit_page.undo), methods=["POST"]),
        Route(f"{EDIT}/restore", posted(edit_page.restore), methods=["POST"]),
        Route(f"{EDIT}/drop-draft", posted(edit_page.throw_draft_away), methods=["POST"]),
        Route(BUILD, build_page.show_build, methods=["GET"]),
        Route(BUILD, posted(build_page.change), methods=["POST"]),
        Route(f"{BUILD}/undo", posted(build_page.undo), methods=["POST"]),
        Route(f"{BUILD}/redo", posted(build_page.redo), methods=["POST"]),
        Route(f"{DESSERT}/duplicate", posted(build_page.duplicate), methods=["POST"]),
        Route("/compare", comparing_page.show_comparison),
        Route("/new", new_page.show_new, methods=["GET"]),
        Route("/new", posted(new_page.write_new), methods=["POST"]),
        Route(UPLOAD, uploading(new_page.read_page), methods=["POST"]),
        Route("/larder", larder_page.show_larder),
        Route("/larder/found", larder_page.show_found),
        Route("/larder/{id}", larder_page.show_ingredient),
        Route("/kitchen", kitchen_page.show_kitchen, methods=["GET"]),
        Route("/kitchen", posted(kitchen_page.save), methods=["POST"]),
        Route(WALK, walk_page.show_walk, methods=["GET"]),
        Route(WALK, posted(walk_page.change), methods=["POST"]),
        Route("/kitchen/revisions/{number:int}", revision_page.show_kitchen_revision),
        Route("/kitchen/undo", posted(kitchen_page.undo), methods=["POST"]),
        Route("/kitchen/restore", posted(kitchen_page.restore), methods=["POST"]),
        Route("/kitchen/drop-draft", posted(kitchen_page.throw_draft_away), methods=["POST"]),
        Route("/plans", plans_page.show_plans),
        Route("/plans/new", new_plan_page.show_new, methods=["GET"]),
        Route("/plans/new", posted(new_plan_page.make_new), methods=["POST"]),
        Route(MAKING, making_page.show_making),
        Route(f"{MAKING}/progress", making_page.show_progress),
        Route(f"{MAKING}/stop", posted(making_page.stop), methods=["POST"]),
        Route(PLAN, plan_page.show_plan),
        Route(f"{PLAN}/sheet", plan_page.show_sheet),
        Route(f"{PLAN}/calendar.ics", plan_page.send_calendar),
        Route(f"{PLAN}/plan.json", plan_page.send_json),
        Route(f"{PLAN}/tell", posted(anew_page.tell), methods=["POST"]),
        Route(f"{PLAN}/anew", posted(anew_page.begin_anew), methods=["POST"]),
        Route(f"{PLAN}/anew/{{key}}", anew_page.show_anew),
        Route(f"{PLAN}/anew/{{key}}/take", posted(anew_page.take), methods=["POST"]),
        Route(f"{PLAN}/bench", bench_page.show_bench),
        Route(f"{PLAN}/bench/data", bench_page.send_data),
        Route(f"{PLAN}/bench/entries", posted(bench_page.note), methods=["POST"]),
        Route(f"{PLAN}/bench/worker.js", bench_page.send_worker),
        Route("/backup", backup_page.send_backup),
        Route("/safe", safe_page.show_safe),
        Route(RESTORE, receiving(safe_page.read_backup), methods=["POST"]),
        Route("/safe/aside", posted(safe_page.read_aside), methods=["POST"]),
        Route(LOOK, safe_page.show_look),
        Route(f"{LOOK}/take", posted(safe_page.take), methods=["POST"]),
        Route(f"{LOOK}/leave", posted(safe_page.leave), methods=["POST"]),
        Route(app_manifest.MANIFEST, app_manifest.send_manifest),
        Route(reading_page.WORKER, reading_page.send_worker),
        Route(reading_page.PAGES, reading_page.list_pages),
        Route(reading_page.NOTHING_KEPT, reading_page.show_nothing_kept),
        Route("/sources", sources_page.show_sources),
        Route("/language", posted(speech.choose), methods=["POST"]),
        Mount("/static", Static()),
    ]


@asynccontextmanager
async def _lifespan(app: Starlette) -> AsyncIterator[None]:
    begin_warming(app.state.temperatures)
    try:
        yield
    finally:
        app.state.plans.stop_all()
        app.state.publications.stop_all()
        app.state.workbench.library.close()
