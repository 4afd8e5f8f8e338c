"""A published page opened from a folder: what its reader changes, against the whole library."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from demo_pages import demo_page
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.publish.cold_tables import in_mould, minutes
from entremetry.publish.reader_model import MASS_ERROR, TIME_ERROR
from entremetry.publish.typography import grams, hours, millilitres
from entremetry.quantities import format_mass, format_volume
from entremetry.quantities.rounding import fixed
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import reckoned, surroundings

DOME = "blackcurrant-vanilla-dome"
LARGEST = 500_000  # bytes
Choice = dict[str, Any]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Pages of all demo desserts."""
    place = tmp_path_factory.mktemp("pages")
    for name in demo_texts():
        (place / f"{name}.html").write_text(demo_page(name), encoding="utf-8")
    return place


@pytest.fixture
def opened(browser: Browser, folder: Path) -> Iterator[Callable[..., Page]]:
    """Function that opens a page from the disk; a complaint or a request elsewhere fails."""
    complaints: list[str] = []
    contexts = []

    def open_(name: str = DOME, **settings: Any) -> Page:
        context = browser.new_context(locale="en-GB", timezone_id="Europe/Paris", **settings)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: complaints.append(f"script: {error}"))
        page.on(
            "console",
            lambda message: complaints.append(message.text) if message.type == "error" else None,
        )
        page.on(
            "request",
            lambda request: (
                None if request.url.startswith("file:") else complaints.append(request.url)
            ),
        )
        page.goto((folder / f"{name}.html").as_uri())
        return page

    yield open_
    for context in contexts:
        context.close()
    assert not complaints, "\n".join(complaints)


def choice(shape: str, **sizes: float) -> Choice:
    """What the form would say, sizes in metres."""
    return {
        "shape": shape,
        "sizes": sizes,
        "holds": 0,
        "pieces": 7,
        "gelatine": "",
        "bloom": 0,
        "measures": "us",
    }


def grid(count: int) -> list[Choice]:
    """Moulds of every shape within what kitchens have, the same on every run."""
    draw = random.Random(20)

    def between(low: float, high: float) -> float:
        return math.exp(draw.uniform(math.log(low), math.log(high)))

    makers: list[Callable[[], Choice]] = [
        lambda: choice("hemisphere", diameter=between(0.03, 0.25)),
        lambda: choice("cylinder", diameter=between(0.03, 0.30), height=between(0.015, 0.12)),
        lambda: (
            lambda d: choice(
                "cone", diameter=d, base=d * between(0.4, 1.0), height=between(0.02, 0.12)
            )
        )(between(0.04, 0.16)),
        lambda: choice(
            "box", length=between(0.03, 0.4), width=between(0.03, 0.12), height=between(0.02, 0.1)
        ),
        lambda: choice("log", length=between(0.2, 0.6), width=between(0.03, 0.15)),
    ]
    return [makers[number % len(makers)]() for number in range(count)]


def document(asked: Choice) -> MouldDocument:
    """The same mould as a document."""
    sizes = {name: f"{1e3 * size:.9f} mm" for name, size in asked["sizes"].items()}
    if "base" in sizes:
        sizes["base_diameter"] = sizes.pop("base")
    shape = {"kind": asked["shape"], **sizes}
    return MouldDocument.model_validate({"id": "own", "name": "Own", "shape": shape})


def computed(page: Page, asked: list[Choice]) -> list[dict[str, Any]]:
    """What the page computes for many choices, in one go."""
    found = page.evaluate("all => all.map((each) => window.entremetry.compute(each))", asked)
    return list(found)


def reckoning_of(name: str) -> Reckoning:
    return reckoned(demo_texts()[name], name, surroundings(None, "kitchen"))


def compared(page: Page, name: str, asked: list[Choice], *, times: bool) -> tuple[int, int]:
    """Compare page and library mould by mould; how many masses and times were compared."""
    own, masses, cold = reckoning_of(name), 0, 0
    dough = {c["id"]: c["dough"] for c in page.evaluate("window.entremetry.model.components")}
    for each, told in zip(asked, computed(page, asked), strict=True):
        other = in_mould(own, document(each).shape)
        assert told["volume"] == pytest.approx(other.dessert.mould.solid.volume, rel=1e-6)
        for component, required in other.requirements(each["pieces"]).items():
            expected = required.ready * dough[component]
            assert told["of"][component]["ready"] == pytest.approx(expected, rel=MASS_ERROR), each
            masses += 1
        if times:
            whole = minutes(other, None)
            for step, key in (("freeze-until", "freeze"), ("thaw-until", "thaw")):
                if told[key] is not None:
                    assert told[key] == pytest.approx(whole[step], rel=TIME_ERROR), each
                    cold += 1
    return masses, cold


def test_masses_and_times_of_two_hundred_moulds_are_those_of_the_library(
    opened: Callable[..., Page],
) -> None:
    masses, times = compared(opened(), DOME, grid(200), times=True)
    assert masses == 1000
    assert times > 380


@pytest.mark.parametrize("name", ["coffee-praline-ring", "pear-caramel-log"])
def test_other_desserts_follow_other_moulds_too(opened: Callable[..., Page], name: str) -> None:
    masses, times = compared(opened(name), name, grid(25), times=True)
    assert masses >= 100 and times > 40


def test_a_frame_is_cut_into_as_many_portions_as_the_library_cuts(
    opened: Callable[..., Page],
) -> None:
    name, draw = "raspberry-pistachio-bars", random.Random(3)
    asked = [
        choice(
            "box",
            length=draw.uniform(0.15, 0.6),
            width=draw.uniform(0.12, 0.4),
            height=draw.uniform(0.02, 0.05),
        )
        for _ in range(20)
    ]
    page, own = opened(name), reckoning_of(name)
    for each, told in zip(asked, computed(page, asked), strict=True):
        other = in_mould(own, document(each).shape)
        assert told["each"] == other.per_cavity
        assert told["cavities"] == other.cavities(each["pieces"])
        needed = sum(n.on_piece for n in other.needs)
        assert told["piece"] == pytest.approx(needed, rel=MASS_ERROR)


def test_numbers_are_printed_as_python_prints_them(opened: Callable[..., Page]) -> None:
    draw = random.Random(9)
    values = [10 ** draw.uniform(-7, 2) for _ in range(1500)]
    values += [n / 2e3 for n in range(400)] + [n / 2e4 for n in range(400)] + [0.0, 9.9995, 0.00995]
    page = opened()
    told = page.evaluate(
        """all => all.map((v) => {
             const e = window.entremetry;
             return [e.grams(v), e.mass(v), e.volume(v / 1e3), e.millilitres(v / 1e3),
                     e.fixed(v, 1), e.fixed(v, 0), e.hours(v * 600)];
           })""",
        values,
    )
    for value, found in zip(values, told, strict=True):
        assert found == [
            grams(value),
            format_mass(value),
            format_volume(value / 1e3),
            millilitres(value / 1e3),
            fixed(value, 1),
            fixed(value),
            hours(60.0 * (value * 600.0)),
        ], value


def test_a_mould_known_by_its_water_and_a_stronger_gelatine(opened: Callable[..., Page]) -> None:
    page = opened()
    plain = choice("hemisphere", diameter=0.05)
    water = {**plain, "holds": 75e-6}
    strong = {**plain, "gelatine": "strength", "bloom": 250}
    one, two, three = computed(page, [plain, water, strong])
    assert two["volume"] == pytest.approx(75e-6)
    assert two["freeze"] > one["freeze"]
    gelatine, swapped = one["lines"][1][0]["mass"], three["lines"][1][0]["mass"]
    assert swapped / gelatine == pytest.approx(200 / 250)
    assert three["lines"][1][2]["mass"] == one["lines"][1][2]["mass"]


def test_the_page_follows_the_reader_and_goes_back(opened: Callable[..., Page]) -> None:
    page = opened()
    before = page.inner_text("main")
    assert "361" in page.inner_text("[data-made='1']")
    page.select_option("#shape", "box")
    page.fill("#length", "180")
    page.fill("#width", "60")
    page.fill("#height", "50")
    page.fill("#pieces", "2")
    page.select_option("#gelatine", label="Gelatine sheet platinum 250 Bloom")
    page.fill("#serve", "2026-12-24T20:00")
    page.fill("#from", "09:00")
    page.fill("#to", "18:00")
    assert page.inner_text("[data-out=holds]") == "540\u00a0ml"
    assert "2 × box, loaf or frame, 180 × 60 × 50" in page.inner_text("[data-out=cavities]")
    assert "as gelatine sheet platinum 250 Bloom" in page.inner_text("#line-1-0")
    assert "December" in page.inner_text("[data-out=start]")
    assert page.is_visible("text=In a mould of another shape")
    page.click("text=Back to the published numbers")
    expect(page.locator("html")).not_to_contain_class("other-mould")
    assert page.inner_text("main") == before


def test_what_cannot_be_is_said_and_changes_nothing(opened: Callable[..., Page]) -> None:
    page = opened()
    before = page.inner_text("[data-made='1']")
    for wrong in ("0", "2.5", "-3", ""):
        page.fill("#pieces", wrong)
        assert "whole number" in page.inner_text("[role=alert]")
        assert page.inner_text("[data-made='1']") == before


def test_the_latest_start_lies_in_free_hours(opened: Callable[..., Page]) -> None:
    page = opened()
    told = page.evaluate(
        """() => [[600, 0, 1439], [600, 540, 1080], [1200, 540, 1080], [660, 600, 1080]]
             .map(([lasts, from, to]) => {
               const d = window.entremetry.latestStart(new Date(2026, 11, 24, 20), lasts, from, to);
               return [d.getDate(), d.getHours(), d.getMinutes()];
             })"""
    )
    assert told == [[24, 10, 0], [24, 10, 0], [23, 18, 0], [23, 18, 0]]


def test_without_script_the_published_numbers_stand(opened: Callable[..., Page]) -> None:
    page = opened(java_script_enabled=False)
    assert not page.is_visible("#reader")
    assert "Blackcurrant purée" in page.inner_text("main")
    assert page.is_visible("text=How far ahead")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1280, 820, 320])
def test_the_page_has_no_barriers(
    opened: Callable[..., Page],
    barriers: Callable[[Page], list[str]],
    keep_screen: Callable[[Page, str], Path],
    width: int,
    scheme: str,
) -> None:
    page = opened(viewport={"width": width, "height": 900}, color_scheme=scheme)
    keep_screen(page, f"reader-{width}-{scheme}")
    page.select_option("#shape", "cone")
    assert barriers(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    small = page.eval_on_selector_all(
        "#reader :is(input, select, button)",
        "all => all.filter((e) => e.offsetParent && e.offsetHeight < 44).map((e) => e.id)",
    )
    assert small == []


def test_nothing_moves_while_the_page_opens(opened: Callable[..., Page]) -> None:
    page = opened()
    shifted = page.evaluate(
        """() => new Promise((done) => {
             let sum = 0;
             new PerformanceObserver((list) => {
               for (const entry of list.getEntries()) sum += entry.value;
             }).observe({ type: "layout-shift", buffered: true });
             requestAnimationFrame(() => requestAnimationFrame(() => done(sum)));
           })"""
    )
    assert shifted == 0


def test_paper_has_the_chosen_numbers_and_no_controls(opened: Callable[..., Page]) -> None:
    page = opened()
    page.fill("#pieces", "12")
    page.emulate_media(media="print")
    assert not page.is_visible("#pieces")
    assert page.is_visible(".found")
    assert page.inner_text("[data-out=pieces]") == "12 pieces"
    assert page.pdf(format="A4", prefer_css_page_size=True).count(b"/Type /Page\n") <= 2


@pytest.mark.parametrize("name", demo_texts())
def test_every_page_prints_on_two_sheets(opened: Callable[..., Page], name: str) -> None:
    sheets = opened(name).pdf(format="A4", prefer_css_page_size=True)
    assert 1 <= sheets.count(b"/Type /Page\n") <= 2


def test_every_page_is_small(folder: Path) -> None:
    for page in folder.glob("*.html"):
        assert page.stat().st_size < LARGEST
