"""Kitchens with their hours, and menus of a few desserts in some number."""

from __future__ import annotations

from importlib.resources import files

from hypothesis import strategies as st

from entremetry.usecases.plans import Course
from unit.agenda.menus import LAYERS, SHORTBREAD

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
ZONES = ("Europe/Paris", "America/New_York", "Australia/Lord_Howe", "UTC")
SERVED = ("2026-11-28 19:00", "2027-03-28 19:00", "2026-10-25 19:00", "2026-04-05 12:00")
QUICK_TEXTS = (LAYERS, SHORTBREAD)


def demo_texts() -> tuple[str, ...]:
    """The documents of the demo library."""
    folder = files("entremetry.store") / "data" / "demo"
    found = sorted((p for p in folder.iterdir() if p.name.endswith(".yaml")), key=lambda p: p.name)
    return tuple(path.read_text(encoding="utf-8") for path in found)


@st.composite
def free(draw: st.DrawFn) -> str:
    """Free hours of one stretch of a weekday."""
    start = draw(st.integers(0, 20))
    end = draw(st.integers(start + 1, 24))
    day = draw(st.sampled_from(DAYS))
    return f"{{day: {day}, start: '{start:02d}:00', end: '{end:02d}:00'}}"


@st.composite
def kitchens(draw: st.DrawFn, *, zones: tuple[str, ...] = ZONES) -> str:
    """A kitchen: its clock, its ovens, its cold, its moulds, its cooks."""
    owned = draw(st.integers(1, 3))
    lines = [
        "entremetry_kitchen: 1",
        "name: Drawn",
        f"time_zone: {draw(st.sampled_from(zones))}",
        f"hobs: {draw(st.integers(1, 4))}",
        f"ovens: [{{name: Oven, trays: {draw(st.integers(1, 3))}}}]",
        f"mixers: [{{name: Mixer, bowls: {draw(st.integers(1, 3))}}}]",
        "moulds:",
        "  - {id: hemisphere-70, name: Domes, shape: {kind: hemisphere, diameter: 70 mm}, "
        f"cavities: {draw(st.integers(4, 9))}, owned: {owned}}}",
        "  - {id: small, name: Small, shape: {kind: hemisphere, diameter: 40 mm}, "
        f"cavities: {draw(st.integers(4, 15))}}}",
    ]
    if draw(st.booleans()):
        lines.append(f"benches: {draw(st.integers(1, 2))}")
    if draw(st.booleans()):
        room, power = draw(st.integers(5, 200)), draw(st.integers(1, 20))
        lines.append(
            f"freezers: [{{name: F, temperature: -18 °C, volume: {room} l, "
            f"freezes_per_day: {power} kg}}]"
        )
    hours = draw(st.lists(free(), max_size=6))
    if hours:
        lines.append(f"people: [{{name: A, free: [{', '.join(hours)}]}}]")
    return "\n".join(lines) + "\n"


def courses(texts: tuple[str, ...], *, most: int = 24) -> st.SearchStrategy[Course]:
    """A dessert in some number, or in its own."""
    return st.builds(
        Course,
        text=st.sampled_from(texts),
        pieces=st.one_of(st.none(), st.integers(1, most)),
    )
