"""Shapes, moulds and kitchens as people write them, with measures that make sense."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

Written = dict[str, Any]

_SQUARE = "M0 0 L40 0 L40 40 L0 40 Z"
_STANDS = ["metal shelf", "wire shelf", "board", "box", "glass shelf"]


def millimetres(low: int, high: int) -> st.SearchStrategy[str]:
    """A length between two whole millimetres."""
    return st.integers(low, high).map(lambda number: f"{number} mm")


def entry(**parts: Any) -> st.SearchStrategy[Written]:
    """A mapping of drawn and of fixed parts."""
    drawn = {
        key: part if isinstance(part, st.SearchStrategy) else st.just(part)
        for key, part in parts.items()
    }
    return st.fixed_dictionaries(drawn)


wide, narrow, low = millimetres(60, 90), millimetres(20, 40), millimetres(20, 30)
CLOSED_SHAPES: tuple[st.SearchStrategy[Written], ...] = (
    entry(kind="hemisphere", diameter=wide),
    entry(kind="cap", diameter=wide, height=low),
    entry(kind="sphere", diameter=wide),
    entry(kind="cylinder", diameter=wide, height=low),
    entry(kind="cone", diameter=wide, base_diameter=narrow, height=low),
    entry(kind="ellipsoid", length=wide, width=narrow, height=low),
    entry(kind="box", length=wide, width=wide, height=low, corner_radius=millimetres(0, 9)),
    entry(kind="log", length=wide, width=narrow),
    entry(kind="ring", diameter=wide, hole_diameter=millimetres(10, 30)),
    entry(
        kind="profile",
        points=st.lists(millimetres(5, 40), min_size=2, max_size=6).map(
            lambda radii: [
                {"radius": radius, "level": f"{index * 8} mm"} for index, radius in enumerate(radii)
            ]
        ),
    ),
)
shapes: st.SearchStrategy[Written] = st.one_of(
    *CLOSED_SHAPES,
    entry(kind="prism", outline=_SQUARE, height=low, width=wide),
    entry(
        kind="measured",
        holds=st.sampled_from(["75 ml", "1130 g", "1/2 l"]),
        like=st.one_of(*CLOSED_SHAPES),
    ),
)


def moulds(identifier: str) -> st.SearchStrategy[Written]:
    """A mould with this id."""
    return entry(
        id=identifier,
        name=f"Mould {identifier}",
        shape=shapes,
        cavities=st.integers(1, 24),
        owned=st.integers(1, 4),
        material=st.sampled_from(["silicone", "metal", "glass"]),
        fills=st.sampled_from(["upside-down", "upright", None]),
        vessel=st.booleans(),
    )


def _told_apart(people: list[Written]) -> list[Written]:
    """People with a name of their own each."""
    return [person | {"name": f"Cook {number}"} for number, person in enumerate(people, start=1)]


_CLOCK = st.integers(6, 12).map(lambda hour: f"{hour:02d}:00")
_COLD = {"stands_on": st.sampled_from(_STANDS), "volume": st.just("200 l")}
kitchens: st.SearchStrategy[Written] = entry(
    entremetry_kitchen=1,
    name="Drawn kitchen",
    measures=st.sampled_from(["us", "metric", "au", "uk"]),
    room_temperature=st.integers(15, 30).map(lambda degrees: f"{degrees} °C"),
    ovens=st.lists(entry(name="Oven", fan=st.booleans(), trays=st.integers(1, 4)), max_size=2),
    freezers=st.lists(
        entry(name="Freezer", temperature="-18 °C", blast=st.booleans(), **_COLD), max_size=2
    ),
    fridges=st.lists(
        entry(name="Fridge", temperature="39 °F", fan=st.booleans(), **_COLD), max_size=2
    ),
    hobs=st.integers(1, 6),
    mixers=st.lists(entry(name="Mixer", bowls=st.integers(1, 3)), max_size=2),
    trays=st.lists(entry(name="Tray", length=wide, width=narrow), max_size=2),
    moulds=st.one_of(st.just([]), st.tuples(moulds("one"), moulds("two")).map(list)),
    people=st.lists(
        entry(
            name="Cook",
            free=st.lists(entry(day="friday", start=_CLOCK, end="18:30"), max_size=2),
        ),
        max_size=2,
    ).map(_told_apart),
    ingredients=st.sampled_from([{}, {"puree": {"density": "1.1 g/ml", "source": "weighed"}}]),
)
