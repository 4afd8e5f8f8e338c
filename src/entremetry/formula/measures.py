"""The measures that a formula can be balanced by, by name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from entremetry.errors import UnknownName
from entremetry.formula.measure import FreezingPoint, IceShare, Measure, Share
from entremetry.formula.sweetness import SWEET_PARTS
from entremetry.larder.constituents import NAMES, SUGARS
from entremetry.words import say_later

COLD = 255.15  # K, a home freezer
_ALL = dict.fromkeys(NAMES, 1.0)
_FATS = ("cocoa_butter", "milk_fat", "other_fat")
_SOLUBLE = dict.fromkeys((*SUGARS, "polyols", "organic_acids", "other_carbohydrate"), 1.0)


def _share(name: str, *parts: str, words: str, relative: float = 0.03) -> Share:
    return Share(
        name=name,
        words=words,
        unit="%",
        key=f"{name}_percent",
        relative=relative,
        absolute=0.002,
        factor=100.0,
        of=dict.fromkeys(parts or (name,), 1.0),
        per=_ALL,
    )


_MEASURES: tuple[Measure, ...] = (
    Share(
        name="gelatine",
        words=say_later("gelatine of 200 Bloom on the water"),
        unit="%",
        key="gelatine_percent",
        relative=0.05,
        absolute=0.0002,
        factor=100.0,
        of={"gelatine": 1.0},
        per={"water": 1.0},
    ),
    FreezingPoint(
        name="freezing_point",
        words=say_later("freezing point"),
        unit="°C",
        key="freezing_point_c",
        absolute=0.2,
        offset=-273.15,
    ),
    IceShare(
        name="ice",
        words=say_later("ice at -18 °C, of the free water"),
        unit="%",
        key="ice_percent",
        absolute=0.02,
        factor=100.0,
        temperature=COLD,
    ),
    Share(
        name="sweetness",
        words=say_later("sweetness, as sucrose"),
        unit="%",
        key="sweetness_percent",
        relative=0.03,
        absolute=0.002,
        factor=100.0,
        of={name: each.usual for name, each in SWEET_PARTS.items()},
        per=_ALL,
    ),
    _share("fat", *_FATS, relative=0.02, words=say_later("fat")),
    _share("milk_fat", words=say_later("milk fat")),
    _share("cocoa_butter", words=say_later("cocoa butter")),
    _share(
        "dry_solids",
        *(n for n in NAMES if n not in ("water", "alcohol")),
        relative=0.02,
        words=say_later("dry solids"),
    ),
    Share(
        name="brix",
        words=say_later("°Brix of the liquid"),
        unit="°Bx",
        key="brix_percent",
        relative=0.02,
        absolute=0.002,
        factor=100.0,
        of=_SOLUBLE,
        per={**_SOLUBLE, "water": 1.0, "alcohol": 1.0},
    ),
    _share("water", relative=0.02, words=say_later("water")),
    _share("sugars", *SUGARS, words=say_later("sugars")),
    _share("lactose", words=say_later("lactose")),
    _share("alcohol", words=say_later("alcohol")),
    _share("protein", words=say_later("protein")),
    Share(
        name="yield",
        words=say_later("yield, ready for the mould"),
        unit="g",
        key="yield_g",
        relative=0.01,
        factor=1000.0,
        of=_ALL,
        per={},
    ),
)
MEASURES: Mapping[str, Measure] = MappingProxyType({each.name: each for each in _MEASURES})
"""Name -> measure. Tolerances are our own judgement of what is not noticed (our_own)."""
USUAL = ("gelatine", "freezing_point", "sweetness", "fat", "dry_solids", "alcohol", "yield")
"""What is kept if nobody says otherwise."""


def measure_named(name: str) -> Measure:
    """The measure with this name or key, words joined by '_' or '-'.

    Raises
    ------
    UnknownName
        With the nearest names, if there is none.
    """
    plain = name.strip().casefold().replace("-", "_").replace(" ", "_")
    for measure in _MEASURES:
        if plain in (measure.name, measure.key):
            return measure
    raise UnknownName("measure of a formula", name, MEASURES)
