"""Demo desserts adapted once for all tests that look at them."""

from __future__ import annotations

from functools import cache
from typing import Any

from entremetry.adapt.rebalanced import Adapted
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.documents import read_tree
from entremetry.store.demo import demo_texts
from entremetry.usecases.adapting import Adaptation, adapt_of_text
from entremetry.usecases.batch import batch_of_text

DOME, RING, GLASS, LOG, BARS = (
    "blackcurrant-vanilla-dome",
    "coffee-praline-ring",
    "mango-coconut-lime-glass",
    "pear-caramel-log",
    "raspberry-pistachio-bars",
)


@cache
def moulded(
    demo: str, mould: str | None = None, vessel: str | None = None, pieces: int | None = None
) -> Adapted:
    """A demo dessert adapted."""
    asked = Adaptation(mould=mould, vessel=vessel, pieces=pieces)
    return adapt_of_text(demo_texts()[demo], asked)


def data(adapted: Adapted) -> dict[str, Any]:
    """The new document as plain data."""
    return dict(read_tree(adapted.text, file="document").data)


@cache
def sheet(demo: str, mould: str | None = None, vessel: str | None = None) -> BatchSheet:
    """Batch sheet of a demo dessert adapted."""
    return batch_of_text(moulded(demo, mould, vessel).text)


def placed(adapted: Adapted, component: str) -> dict[str, Any]:
    """First placement of a component in the new document."""
    found = data(adapted)["placement"]
    return dict(next(entry for entry in found if entry["component"] == component))


def steps(adapted: Adapted) -> list[str]:
    """Kinds of the steps of the new assembly."""
    return [step["step"] for step in data(adapted)["assembly"]]
