"""Desserts as people write them, whose parts fit: the inside of a mould is never over-full."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from hypothesis import strategies as st

from entremetry.dessert import batch_sheet, read_dessert, reckon, resolve
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.reckoning import Reckoning
from entremetry.documents import written
from entremetry.store.shelf import built_in_moulds, no_mesh
from properties.strategies_kitchen import Written, entry, millimetres
from small_larder import SMALL_LARDER

MOULDS: tuple[str, ...] = ("hemisphere-70", "ring-160", "glass-straight", "log-250", "cap-80")
FRAME = "frame-300"
PORTIONS = {"length": "90 mm", "width": "30 mm", "trim": "10 mm"}
_WEIGHED = {
    "id": "weighed",
    "name": "Weighed",
    "cavities": 8,
    "shape": {
        "kind": "measured",
        "holds": "75 ml",
        "like": {"kind": "hemisphere", "diameter": "70 mm"},
    },
}
_AMOUNT = st.integers(20, 900).map(lambda grams: f"{grams} g")
_PERCENT = st.integers(0, 9).map(lambda share: f"{share} %")
_NOTE = st.sampled_from(["", "Warm to 60 °C (150 °F).", "Gently."])


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A dessert as written, as reckoned, and its batch."""

    text: str
    reckoning: Reckoning
    sheet: BatchSheet


def formulas(*names: str) -> st.SearchStrategy[Written]:
    """Amounts of these ingredients."""
    return st.fixed_dictionaries(dict.fromkeys(names, _AMOUNT))


def pouring() -> st.SearchStrategy[list[Written]]:
    """A method that boils something away and leaves something behind."""
    boil = entry(step="simmer", evaporates=_PERCENT, note=_NOTE)
    return st.tuples(boil, entry(step="pour", left_behind=_PERCENT)).map(list)


def components() -> st.SearchStrategy[Written]:
    """All components that a placement may name; some of them may not be placed."""
    baked = st.tuples(
        entry(step="roll", thickness="4 mm"),
        entry(step="cut", trim=_PERCENT),
        entry(step="bake", at="160 °C", fan=True, loss=st.sampled_from(["0 %", "1 %"])),
    ).map(list)
    glaze = formulas("puree", "cream-35").map(
        lambda lines: lines | {"syrup": {"component": "soak", "amount": "20 g"}}
    )
    return entry(
        filling=entry(
            name="Filling",
            kind="mousse",
            density="0.6 g/ml",
            formula=formulas("puree", "cream-35"),
            method=pouring(),
        ),
        layer=entry(name="Layer", kind="mousse", formula=formulas("puree"), method=pouring()),
        heart=entry(name="Heart", kind="insert", formula=formulas("cream-35"), method=pouring()),
        base=entry(
            name="Base",
            kind="base",
            density="0.6 g/ml",
            formula=formulas("plain-flour", "caster-sugar", "cream-35"),
            method=baked,
        ),
        soak=entry(name="Soak", kind="soak", formula=formulas("water", "caster-sugar")),
        glaze=entry(name="Glaze", kind="glaze", formula=glaze, method=pouring()),
        nuts=entry(name="Nuts", kind="garnish", formula=formulas("plain-flour")),
    )


_DISC = entry(kind="disc", diameter=millimetres(20, 30), hole_diameter=millimetres(0, 9))
_RECTANGLE = entry(kind="rectangle", length=millimetres(15, 20), width=millimetres(10, 15))
_SHEET = entry(
    length="300 mm", width="200 mm", gap="3 mm", offcuts=st.sampled_from(["kept", "re-rolled"])
)
_INSIDE: Mapping[str, st.SearchStrategy[Written]] = {
    "layer": entry(component="layer", height=millimetres(2, 4), **{"as": "layer"}),
    "heart": entry(
        component="heart",
        shape=entry(kind="hemisphere", diameter=millimetres(8, 12)),
        turned=st.booleans(),
        **{"as": "insert"},
    ),
    "filling": entry(component="filling", **{"as": "filling"}),
    "base": entry(
        component="base",
        cut_out=st.one_of(_DISC, _RECTANGLE),
        thickness=millimetres(3, 5),
        sits=st.sampled_from(["inside", "under"]),
        sheet=_SHEET,
        **{"as": "base"},
    ),
}
_OUTSIDE: Mapping[str, st.SearchStrategy[Written]] = {
    "soak": entry(component="soak", on="base", mass="2 g", **{"as": "soak"}),
    "glaze": entry(component="glaze", film=millimetres(1, 2), **{"as": "coating"}),
    "nuts": entry(component="nuts", mass="3 g", **{"as": "garnish"}),
}


@st.composite
def placements(draw: st.DrawFn) -> list[Written]:
    """A filling, and any of the others around it and on it."""
    chosen = draw(st.sets(st.sampled_from(["layer", "heart", "base", "soak", "glaze", "nuts"])))
    chosen.add("filling")
    if "base" not in chosen:
        chosen.discard("soak")
    known = {**_INSIDE, **_OUTSIDE}
    return [draw(strategy) for name, strategy in known.items() if name in chosen]


def desserts(mould: Any = None) -> st.SearchStrategy[Written]:
    """Documents as plain data."""
    moulds = st.sampled_from([*MOULDS, _WEIGHED]) if mould is None else st.just(mould)
    return entry(
        entremetry=1,
        id="drawn",
        name="Drawn",
        pieces=st.integers(1, 40),
        mould=moulds,
        components=components(),
        placement=placements(),
        assembly=[{"step": "fill"}, {"step": "freeze-until", "temperature": "-18 °C"}],
    )


framed = desserts(FRAME).map(lambda document: document | {"portions": PORTIONS})


def case_of(text: str, pieces: int | None = None) -> Case:
    """Compute a text."""
    document, tree = read_dessert(text, file="drawn.yaml")
    dessert = resolve(
        document,
        tree,
        file="drawn.yaml",
        larder=SMALL_LARDER,
        moulds=built_in_moulds(),
        read_mesh=no_mesh,
    )
    reckoning = reckon(dessert, read_mesh=no_mesh)
    number = document.pieces if pieces is None else pieces
    sheet = batch_sheet(reckoning, pieces=number, measures="us", fan=None)
    return Case(text=text, reckoning=reckoning, sheet=sheet)


single = desserts().map(written)
texts: st.SearchStrategy[str] = st.one_of(desserts(), framed).map(written)

_LINES = st.one_of(
    st.sampled_from(
        [
            "240 g puree",
            "- 100 g caster sugar, sifted",
            "2 gold leaves gelatine",
            "gelatine sheet gold 4 g",
            "1 1/2 tbsp plain flour",
            "100-120 g puree",
            "about 30 g water",
            "Mousse:",
            "## Base",
            "water",
            "Stir well.",
            "Method:",
            "Soak the water for 10 min, then heat it to 60-65 °C.",
            "Assembly:",
            "Makes: 6 pieces",
            "3 cl water",
            "1 pinch of water",
        ]
    ),
    st.text("ab 12½/.,:()%-g\tél'", max_size=24),
)
pasted = st.lists(_LINES, max_size=6).map("\n".join)
"""Texts as people paste them, and texts as nobody would."""
